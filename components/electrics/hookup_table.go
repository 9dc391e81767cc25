package electrics

import (
	"fmt"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// HookUpLoadTable says what can be on together. First comes a row for every
// appliance at every setting, the largest appliance first; then up to twelve
// pairs of appliances, each at its largest setting, those first of which the
// rows before do not tell what they do together; last everything at once.
//
// An appliance with a setting that cannot be reckoned with is in no pair, and
// everything at once is then left out: the sum would be too small.
//
// Columns: use, power, current, six, ten, sixteen.
func HookUpLoadTable(in table.Input) (table.Result, error) {
	all, lacks := appliances(in)
	result := table.Result{Lacks: lacks}
	for _, a := range all {
		for _, setting := range a.settings {
			if err := addRow(&result, setting); err != nil {
				return table.Result{}, err
			}
		}
	}
	parts, err := wholeParts(all)
	if err != nil {
		return table.Result{}, err
	}
	pairs, err := choosePairs(parts)
	if err != nil {
		return table.Result{}, err
	}
	for _, p := range pairs {
		if err := addRow(&result, p.load); err != nil {
			return table.Result{}, err
		}
	}
	return result, addEverything(&result, parts)
}

// wholeParts judges each appliance at its largest setting, as far as that is
// known.
func wholeParts(all []appliance) ([]judged, error) {
	var parts []judged
	for _, a := range all {
		if !a.whole {
			continue
		}
		j, err := judge(a.largest())
		if err != nil {
			return nil, err
		}
		parts = append(parts, j)
	}
	return parts, nil
}

// addEverything adds the last row. Two appliances at once are a pair already.
func addEverything(result *table.Result, parts []judged) error {
	if len(result.Lacks) > 0 {
		for i := range result.Lacks {
			result.Lacks[i].Reason += "; so everything at once is not worked out either"
		}
		return nil
	}
	if len(parts) < 3 {
		return nil
	}
	var loads []load
	for _, part := range parts {
		loads = append(loads, part.load)
	}
	sum := together(loads...)
	sum.uses = nil // the row says so in a word
	return addRow(result, sum)
}

// addRow adds the row of a load; one without uses is everything at once.
func addRow(result *table.Result, l load) error {
	current, err := Current(l.power)
	if err != nil {
		return fmt.Errorf("%v: %w", l.uses, err)
	}
	on, err := verdictsOn(current)
	if err != nil {
		return fmt.Errorf("%v: %w", l.uses, err)
	}
	row := table.Row{{Uses: l.uses}, {Quantity: l.shown()}, {Quantity: quantity.Of(current)}}
	if len(l.uses) == 0 {
		row[0].Word = "everything"
	}
	for _, v := range on {
		row = append(row, v.cell())
	}
	result.Rows = append(result.Rows, row)
	return nil
}

// shown gives the power as the van states it, or worked out for a sum.
func (l load) shown() quantity.Quantity {
	if l.stated.Valid() {
		return l.stated
	}
	return quantity.Of(l.power)
}
