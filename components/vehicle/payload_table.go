package vehicle

import (
	"fmt"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// Below these parts of a limit, what is left of it is too little to trust: the
// mass of the papers may be out by 5 %, and on a scale people weigh more or less
// than what they count with.
//
// Source: Regulation (EU) 1230/2012 as quoted, tolerance on the mass in running
// order; common practice.
const (
	paperDoubt quantity.Fraction = 0.05
	scaleDoubt quantity.Fraction = 0.02
)

// PayloadTable shows what is left to load, and what stands on each axle, in
// cases from the driver alone to everything at once. Where places along the van
// or the load of the front axle are not stated, the axles are left empty and a
// lack says what is missing; the whole van is reckoned all the same. A van whose
// masses contradict each other has no rows.
//
// Columns: case, total, left, front, rear, verdict. Loads round up, what is left
// rounds down; nothing left is empty, and the verdict says it in words.
func PayloadTable(in table.Input) (table.Result, error) {
	v, err := ladenVan(in)
	if err != nil {
		use := table.Use{Fitted: in.Self.Name, Fact: "max"}
		return table.Result{Lacks: []table.Lack{{Use: use, Reason: err.Error()}}}, nil
	}
	var result table.Result
	for _, c := range v.cases() {
		row, err := v.row(c)
		if err != nil {
			v.lack(in.Self.Name, "max", err)
			continue
		}
		result.Rows = append(result.Rows, row)
	}
	result.Lacks = v.lacks
	return result, nil
}

func (v *laden) row(c laidOn) (table.Row, error) {
	left, err := Left(v.limits.whole, c.load.total)
	if err != nil {
		return nil, err
	}
	row := table.Row{{Word: c.word}, {Quantity: quantity.Of(c.load.total)}, {}, {}, {}, {}}
	if left >= 1 { // less than a kilogram is nothing
		row[2].Quantity = quantity.Of(left)
	}
	if c.load.known && !(c.load.axles.Front > 0 && c.load.axles.Rear > 0) {
		c.load.known = false
		v.lack(v.in.Self.Name, "front_ready", fmt.Errorf("one axle would carry nothing, so front_ready or a place along the van is wrong"))
	}
	if c.load.known {
		row[3].Quantity, row[4].Quantity = quantity.Of(c.load.axles.Front), quantity.Of(c.load.axles.Rear)
	}
	row[5] = v.verdict(c.load)
	return row, nil
}

// verdict says which limits a load is above, whether it is near one, or that it
// is within those that are known.
func (v *laden) verdict(l load) table.Cell {
	over := l.total > v.limits.whole
	front := l.known && v.limits.front > 0 && l.axles.Front > v.limits.front
	rear := l.known && v.limits.rear > 0 && l.axles.Rear > v.limits.rear
	if word := overWord(over, front, rear); word != "" {
		return table.Cell{Word: word, Tone: table.Bad}
	}
	if v.near(l) {
		return table.Cell{Word: "near", Tone: table.Doubtful}
	}
	if l.known && v.limits.front > 0 && v.limits.rear > 0 {
		return table.Cell{Word: "within", Tone: table.Good}
	}
	return table.Cell{Word: "within-whole"}
}

func overWord(whole, front, rear bool) string {
	switch {
	case whole && front && rear:
		return "over-all"
	case whole && front:
		return "over-whole-front"
	case whole && rear:
		return "over-whole-rear"
	case front && rear:
		return "over-axles"
	case whole:
		return "over-whole"
	case front:
		return "over-front"
	case rear:
		return "over-rear"
	}
	return ""
}

// near reports whether less is left of a limit than the sum can be wrong by.
func (v *laden) near(l load) bool {
	doubt := paperDoubt
	if v.weighed {
		doubt = scaleDoubt
	}
	close := func(mass, limit quantity.Kilograms) bool {
		return limit > 0 && limit-mass < limit*quantity.Kilograms(doubt)
	}
	return close(l.total, v.limits.whole) || l.known && (close(l.axles.Front, v.limits.front) || close(l.axles.Rear, v.limits.rear))
}
