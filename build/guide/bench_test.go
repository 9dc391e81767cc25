package guide_test

import (
	"testing"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/content"
)

// What all tables of one van cost, once the library is read: worked out and put
// into words.
func BenchmarkTables(b *testing.B) {
	lib, _ := components.Load(components.Embedded())
	fleet, found := spec.Load(content.Fleet(), "", lib)
	if found.HasErrors() {
		b.Fatal(found)
	}
	kit := guide.NewKit(&fleet.Operator, "en")
	for _, v := range fleet.Vans {
		b.Run(v.Name, func(b *testing.B) {
			for b.Loop() {
				kit.Tables(v)
			}
		})
	}
}
