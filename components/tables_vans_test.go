package components_test

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// manyVans are vans that have anything the library allows, always the same ones.
var manyVans = sync.OnceValue(func() [][]table.Fitted {
	systems, random := unchecked().Systems(), rand.New(rand.NewPCG(1, 2))
	var vans [][]table.Fitted
	for range 300 {
		var all []table.Fitted
		for _, s := range systems {
			all = append(all, anyFitted(random, s))
		}
		if random.IntN(4) > 0 { // places are not always stated
			for i := range all {
				all[i].Along = quantity.Of(quantity.Metres(7 * random.Float64()))
			}
		}
		// Most vans have a part of what there is.
		vans = append(vans, slices.DeleteFunc(all, func(f table.Fitted) bool { return random.IntN(3) == 0 }))
	}
	return vans
})

// resultsOfManyVans works out a table for every page of those vans that may show
// it.
func resultsOfManyVans(t *testing.T, lib *components.Library, id string) []table.Result {
	t.Helper()
	work := components.Calculations()[id]
	var results []table.Result
	for _, all := range manyVans() {
		for _, f := range all {
			if s := lib.System(f.System); !slices.Contains(s.Tables, id) {
				continue
			}
			result, err := work(table.Input{Self: f, All: all})
			if err != nil {
				t.Fatalf("%s for %s: %v", id, f.Name, err)
			}
			results = append(results, result)
		}
	}
	return results
}

// anyFitted fits a system with values anywhere in their ranges, often at the
// ends. Facts that may be absent sometimes are.
func anyFitted(random *rand.Rand, s *components.System) table.Fitted {
	f := table.Fitted{Name: s.ID, System: s.ID}
	for _, name := range slices.Sorted(maps.Keys(s.Constants)) {
		f.Constants = append(f.Constants, table.Fact{Name: name, Quantity: s.Constants[name].Value.Quantity})
	}
	for _, d := range s.Facts {
		if !d.Always() && random.IntN(3) == 0 {
			continue
		}
		stated := table.Fact{Name: d.Name, Role: d.Role}
		switch d.Type.Kind {
		case fact.Quantity:
			stated.Quantity = anyQuantity(random, d)
		case fact.Choice:
			stated.Option = d.Of[random.IntN(len(d.Of))]
		case fact.Count:
			stated.Count = anyCount(random, d)
		}
		f.Facts = append(f.Facts, stated)
	}
	return f
}

func anyCount(random *rand.Rand, d fact.Decl) int {
	low, high := 1, 9
	if !d.Low.IsZero() {
		low = d.Low.Count
	}
	if !d.High.IsZero() {
		high = d.High.Count
	}
	return low + random.IntN(high-low+1)
}

func anyQuantity(random *rand.Rand, d fact.Decl) quantity.Quantity {
	if d.Low.IsZero() || d.High.IsZero() {
		u := quantity.SI(d.Type.Dimension)
		q, _ := quantity.New(300*random.Float64()+1, u)
		return q
	}
	unit := d.Low.Quantity.Unit()
	low, _ := d.Low.Quantity.In(unit)
	high, _ := d.High.Quantity.In(unit)
	part := random.Float64()
	if random.IntN(3) == 0 {
		part = math.Round(part)
	}
	q, _ := quantity.New(low+part*(high-low), unit)
	return q
}
