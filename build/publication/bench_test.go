package publication_test

import (
	"testing"

	"doorpocket/build/guide"
	"doorpocket/build/render"
	"doorpocket/layouts"
)

// What one van costs once the library and the layouts are read: putting its
// guide together, and rendering it.
func BenchmarkVan(b *testing.B) {
	fleet, problems := demo()
	if problems != "" {
		b.Fatal(problems)
	}
	r, err := render.New(layouts.Files())
	if err != nil {
		b.Fatal(err)
	}
	kit := guide.NewKit(&fleet.Operator, "en")
	b.Run("guide", func(b *testing.B) {
		for b.Loop() {
			kit.Build(fleet.Vans[0])
		}
	})
	g, _ := kit.Build(fleet.Vans[0])
	b.Run("render", func(b *testing.B) {
		for b.Loop() {
			if _, err := r.Van(g); err != nil {
				b.Fatal(err)
			}
		}
	})
}
