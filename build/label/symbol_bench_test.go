package label_test

import (
	"fmt"
	"testing"

	"doorpocket/build/label"
)

// A fleet has tens of thousands of labels.
func BenchmarkNewSymbol(b *testing.B) {
	for i := range b.N {
		if _, err := label.NewSymbol(fmt.Sprintf("HTTPS://GUIDE.LANTERNFOLD.EXAMPLE/RW/G%d/", i%99+1), label.LevelQ); err != nil {
			b.Fatal(err)
		}
	}
}
