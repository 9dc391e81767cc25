package vehicle

import (
	"errors"
	"strconv"
	"testing"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func TestTyreLoadPublished(t *testing.T) {
	c := published.Get(t, published.Read(t, "vehicle"), "load-index")
	for _, row := range c.Rows {
		index, err := strconv.Atoi(row["index"])
		if err != nil {
			t.Fatal(err)
		}
		if got, err := TyreLoad(index); err != nil || got != published.Value[quantity.Kilograms](t, row, "load") {
			t.Errorf("%d carries %g kg, %v; expected %s (%s)", index, float64(got), err, row["load"], c.Source)
		}
	}
}

// Each index carries between one and four percent more than the one before it,
// so no row of the list is lost or stands twice.
func TestTyreLoadRises(t *testing.T) {
	last := quantity.Kilograms(0)
	for index := lowestIndex; index <= highestIndex; index++ {
		got, err := TyreLoad(index)
		if err != nil {
			t.Fatal(err)
		}
		if more := float64(got/last) - 1; last > 0 && !(more > 0.01 && more < 0.04) {
			t.Errorf("index %d carries %g kg after %g kg", index, float64(got), float64(last))
		}
		last = got
	}
}

func TestAxleCapacity(t *testing.T) {
	for _, c := range []struct {
		index, tyres int
		want         quantity.Kilograms
	}{{118, 2, 2640}, {109, 2, 2060}, {112, 4, 4480}, {60, 8, 2000}} {
		if got, err := AxleCapacity(c.index, c.tyres); err != nil || got != c.want {
			t.Errorf("%d tyres of %d carry %g kg, %v; expected %g kg", c.tyres, c.index, float64(got), err, float64(c.want))
		}
	}
}

func TestLoadIndexRefuses(t *testing.T) {
	for _, index := range []int{-1, 0, lowestIndex - 1, highestIndex + 1} {
		if got, err := TyreLoad(index); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("TyreLoad(%d) gives %g, %v", index, float64(got), err)
		}
		if got, err := AxleCapacity(index, 2); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("AxleCapacity(%d, 2) gives %g, %v", index, float64(got), err)
		}
	}
	for _, tyres := range []int{-2, 0, 1, 3} {
		if got, err := AxleCapacity(118, tyres); !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("AxleCapacity(118, %d) gives %g, %v", tyres, float64(got), err)
		}
	}
}
