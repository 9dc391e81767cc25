package vehicle

import (
	"fmt"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// PayloadCasesTable shows what is left to load, and what stands on each axle, in
// cases from the driver alone to everything at once. Where a place along the van
// or the load of the front axle is not stated, the axles are left empty and a
// lack says what is missing; the whole van is reckoned all the same. A van whose
// masses contradict each other has no rows.
//
// Columns: case, verdict, left, front, rear. Loads round up, what is left rounds
// down; nothing left is empty, and the verdict says it in words.
func PayloadCasesTable(in table.Input) (table.Result, error) {
	v, err := ladenVan(in)
	if err != nil {
		use := table.Use{Fitted: in.Self.Name, Fact: "max"}
		return table.Result{Lacks: []table.Lack{{Use: use, Reason: err.Error()}}}, nil
	}
	var result table.Result
	for _, c := range v.cases() {
		row, err := v.caseRow(c)
		if err != nil {
			return table.Result{}, err
		}
		result.Rows = append(result.Rows, row)
	}
	result.Lacks = v.lacks
	return result, nil
}

// laidOn is one case of the table: its word and the van with it.
type laidOn struct {
	word string
	load load
}

// stages are what the cases add one after the other once everybody is on, by
// the words of the items.
var stages = []struct {
	word  string
	items []string
}{
	{"luggage", []string{houseItem, luggageItem}},
	{"gas", []string{gasItem}},
	{"cycles", []string{bicycleItem}},
	{"awning", []string{awningItem}},
}

// cases are the ways to load the van. From the row with everybody on, each holds
// all that stands above it; the full water tanks take the place of the water
// for the road.
func (v *laden) cases() []laidOn {
	now, items := v.always(), v.items()
	cases := []laidOn{{"driver", now}}
	people := v.people()
	for n := 2; n <= people; n++ {
		now = now.plus(sumOf(items, personWord(n)))
		if n == 2 {
			cases = append(cases, laidOn{"two", now})
		}
	}
	if people > 2 {
		cases = append(cases, laidOn{"everybody", now})
	}
	for _, s := range stages {
		if more := sumOf(items, s.items...); more.mass > 0 {
			now = now.plus(more)
			cases = append(cases, laidOn{s.word, now})
		}
	}
	for _, word := range []string{travelWaterItem, freshWaterItem} {
		if more := sumOf(items, word); more.mass > 0 {
			cases = append(cases, laidOn{word, now.plus(more)})
		}
	}
	return cases
}

// sumOf adds up the items with any of some words. Nothing has a known place.
func sumOf(items []item, words ...string) load {
	sum := load{known: true}
	for _, it := range items {
		for _, word := range words {
			if it.word == word {
				sum = sum.plus(it.load)
			}
		}
	}
	return sum
}

func (v *laden) caseRow(c laidOn) (table.Row, error) {
	left, err := Left(v.limits.whole, c.load.mass)
	if err != nil {
		return nil, err
	}
	if c.load.known && !(c.load.axles.Front > 0 && c.load.axles.Rear > 0) {
		c.load.known = false
		v.lack(v.in.Self.Name, "front_ready", fmt.Errorf("one axle would carry nothing, so front_ready or a place along the van is wrong"))
	}
	row := table.Row{{Word: c.word}, v.verdict(c.load), {}, {}, {}}
	if left >= 1 { // less than a kilogram is nothing
		row[2].Quantity = quantity.Of(left)
	}
	if c.load.known {
		row[3].Quantity, row[4].Quantity = quantity.Of(c.load.axles.Front), quantity.Of(c.load.axles.Rear)
	}
	return row, nil
}
