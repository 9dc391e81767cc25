package vehicle

import (
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// PayloadTable lists what can be loaded one by one, with what each puts on the
// axles. The rows can be ticked and added up, and the sums are held against what
// is left of the limits of the van and of its axles. The driver and a full fuel
// tank are taken off before. Lacks are those of PayloadCasesTable.
//
// Columns: what, mass, front, rear. All round up; what takes load off an axle is
// negative. A part of less than a kilogram that is taken off is left empty.
func PayloadTable(in table.Input) (table.Result, error) {
	v, err := ladenVan(in)
	if err != nil {
		use := table.Use{Fitted: in.Self.Name, Fact: "max"}
		return table.Result{Lacks: []table.Lack{{Use: use, Reason: err.Error()}}}, nil
	}
	always, items := v.always(), v.items()
	known := always.known
	var result table.Result
	for _, it := range items {
		row := table.Row{{Word: it.word, Tick: it.group}, {Quantity: quantity.Of(it.load.mass)}, {}, {}}
		if it.load.known {
			row[2].Quantity, row[3].Quantity = onAxle(it.load.axles.Front), onAxle(it.load.axles.Rear)
		}
		known = known && it.load.known
		result.Rows = append(result.Rows, row)
	}
	result.Tick = v.tick(always, known)
	result.Lacks = v.lacks
	return result, nil
}

// onAxle is a load on an axle, absent where it would round up to nothing.
func onAxle(mass quantity.Kilograms) quantity.Quantity {
	if mass > -1 && mass <= 0 {
		return quantity.Quantity{}
	}
	return quantity.Of(mass)
}

// tick gives what is left of each limit, and what a sum of loads means for it.
// The axles are left out where not all loads on them are known.
func (v *laden) tick(always load, known bool) *table.Tick {
	t := &table.Tick{Column: "mass", Limits: []table.Limit{v.limit("whole", "mass", v.limits.whole, always.mass)}}
	if known && v.limits.front > 0 {
		t.Limits = append(t.Limits, v.limit("front", "front", v.limits.front, always.axles.Front))
	}
	if known && v.limits.rear > 0 {
		t.Limits = append(t.Limits, v.limit("rear", "rear", v.limits.rear, always.axles.Rear))
	}
	return t
}

func (v *laden) limit(word, column string, most, already quantity.Kilograms) table.Limit {
	left := most - already
	return table.Limit{Word: word, Column: column, Left: quantity.Of(left), Steps: []table.Step{
		{Upto: quantity.Of(left - v.doubt(most)), Word: "fits", Tone: table.Good},
		{Upto: quantity.Of(left), Word: "close", Tone: table.Doubtful},
		{Word: "too-much", Tone: table.Bad},
	}}
}
