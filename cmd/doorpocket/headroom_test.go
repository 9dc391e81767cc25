package main

import "testing"

func TestGrowth(t *testing.T) {
	for _, c := range []struct {
		kept uint64
		want int
	}{
		{0, mostGrowth},
		{1 << 20, mostGrowth},
		{headroom / 4, 400},
		{headroom, 100},
		{headroom * 4 / 3, 75},
		{headroom * 2, 50},
		{headroom * 100, leastGrowth},
	} {
		if got := growth(c.kept); got != c.want {
			t.Errorf("%d bytes kept: %d %%, want %d", c.kept, got, c.want)
		}
	}
}
