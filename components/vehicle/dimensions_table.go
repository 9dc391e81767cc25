package vehicle

import (
	"strings"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// measured is one size of the van: the fact that states it, where it goes, and
// what it must agree with.
type measured struct {
	fact     string
	required bool
	into     func(*Size) *quantity.Metres
	check    func(Size) error // nil for nothing to agree with
}

// sizes are the rows of the table in their order: what a bridge, a ferry and a
// narrow lane ask comes first.
var sizes = []measured{
	{"height", true, func(s *Size) *quantity.Metres { return &s.Height }, nil},
	{"length", true, func(s *Size) *quantity.Metres { return &s.Length }, nil},
	{"width", true, func(s *Size) *quantity.Metres { return &s.Width }, nil},
	{"width_mirrors", false, func(s *Size) *quantity.Metres { return &s.WidthMirrors }, Size.CheckMirrors},
	{"wheelbase", true, func(s *Size) *quantity.Metres { return &s.Wheelbase }, Size.CheckWheelbase},
	{"front_overhang", false, func(s *Size) *quantity.Metres { return &s.FrontOverhang }, Size.CheckOverhang},
}

// DimensionsTable shows the size of the van in metres and in feet and inches.
// A size that is optional and not stated has no row. One that contradicts
// another is a lack: of the two, the table keeps the one on which more depends.
//
// Columns: what, metres, feet. Both round up, as the declaration of the table
// says, so that the van never seems to fit where it does not.
func DimensionsTable(in table.Input) (table.Result, error) {
	var result table.Result
	size, problems := sizeOf(in.Self)
	for _, m := range sizes {
		err := problems[m.fact]
		if err == nil && m.check != nil {
			err = m.check(size)
		}
		if err != nil {
			use := table.Use{Fitted: in.Self.Name, Fact: m.fact}
			result.Lacks = append(result.Lacks, table.Lack{Use: use, Reason: err.Error()})
			continue
		}
		stated, ok := in.Self.Fact(m.fact)
		if !ok {
			continue // optional
		}
		length := table.Cell{Quantity: stated.Quantity}
		result.Rows = append(result.Rows, table.Row{{Word: strings.ReplaceAll(m.fact, "_", "-")}, length, length})
	}
	return result, nil
}

// sizeOf reads what the van states of its size, and the reasons why a size that
// is stated or required cannot be shown.
func sizeOf(f table.Fitted) (Size, map[string]error) {
	var size Size
	problems := map[string]error{}
	for _, m := range sizes {
		stated, ok := f.Fact(m.fact)
		if !ok && !m.required {
			continue
		}
		stated.Name = m.fact // also where nothing is stated, for the message
		length, err := calc.Take[quantity.Metres](stated)
		if err != nil {
			problems[m.fact] = err
			continue
		}
		*m.into(&size) = length
	}
	return size, problems
}
