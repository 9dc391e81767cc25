package vehicle

import (
	"fmt"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// massesSystem and bodySystem are the systems that state the limits and the
// sizes of a van.
const (
	massesSystem = "vehicle/masses"
	bodySystem   = "vehicle/body"
)

// indexed is one axle as the tyres' own facts describe it.
type indexed struct {
	index string // fact: load index of its tyres
	limit string // fact of the masses: the most it may carry
}

var indexedAxles = []indexed{
	{"front_load_index", "front_axle"},
	{"rear_load_index", "rear_axle"},
}

// LoadIndexTable shows what the tyres of each axle carry beside the limit of
// that axle. Of the two the smaller counts, and a limit above what the tyres
// carry is said in words. A van that states no load index has no rows; where
// only one of its axles has one, the other is a lack.
//
// Columns: axle, together, limit, verdict. What tyres carry rounds down, the
// limit up.
func LoadIndexTable(in table.Input) (table.Result, error) {
	var result table.Result
	if !stated(in.Self, "front_load_index", "rear_load_index") {
		return result, nil
	}
	for _, axle := range indexedAxles {
		row, err := loadIndexRow(in, axle)
		if err != nil {
			use := table.Use{Fitted: in.Self.Name, Fact: axle.index}
			result.Lacks = append(result.Lacks, table.Lack{Use: use, Reason: err.Error()})
			continue
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

// stated reports whether a fitted system states any of some facts.
func stated(f table.Fitted, names ...string) bool {
	for _, name := range names {
		if _, ok := f.Fact(name); ok {
			return true
		}
	}
	return false
}

func loadIndexRow(in table.Input, axle indexed) (table.Row, error) {
	index, ok := in.Self.Fact(axle.index)
	if !ok {
		return nil, fmt.Errorf("%s is not stated", axle.index)
	}
	word, tyres := axleWheels(in, axle)
	carry, err := AxleCapacity(index.Count, tyres)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", axle.index, err)
	}
	row := table.Row{{Word: word}, {Quantity: quantity.Of(carry)}}
	return append(row, againstLimit(in, axle, carry)...), nil
}

// axleWheels names an axle with its wheels and counts its tyres. Two axles are
// one where the body states the gap between them.
func axleWheels(in table.Input, axle indexed) (word string, tyres int) {
	if axle.limit == "front_axle" {
		return "front", 2
	}
	wheels, _ := in.Self.Fact("rear_wheels")
	twin := wheels.Option == "twin"
	switch pair := rearPair(in); {
	case pair && twin:
		return "rear-pair-twin", 8
	case pair:
		return "rear-pair", 4
	case twin:
		return "rear-twin", 4
	}
	return "rear", 2
}

// rearPair reports whether the van has two rear axles.
func rearPair(in table.Input) bool {
	for _, body := range in.Of(bodySystem) {
		if stated(body, "rear_axle_gap") {
			return true
		}
	}
	return false
}

// againstLimit gives the cells of the limit and of the verdict.
func againstLimit(in table.Input, axle indexed, carry quantity.Kilograms) table.Row {
	limit, ok := axleLimit(in, axle.limit)
	if !ok {
		return table.Row{{}, {Word: "no-limit", Tone: table.Doubtful}}
	}
	verdict := table.Cell{Word: "carried", Tone: table.Good}
	if carry < limit {
		verdict = table.Cell{Word: "too-little", Tone: table.Bad}
	}
	return table.Row{{Quantity: quantity.Of(limit)}, verdict}
}

// axleLimit reads the limit of an axle from the masses of the van.
func axleLimit(in table.Input, name string) (quantity.Kilograms, bool) {
	for _, masses := range in.Of(massesSystem) {
		if limit, err := take[quantity.Kilograms](masses, name); err == nil {
			return limit, true
		}
	}
	return 0, false
}
