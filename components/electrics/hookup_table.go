package electrics

import (
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
	singles, err := judgeAll(settings(all))
	if err != nil {
		return table.Result{}, err
	}
	parts, err := judgeAll(largest(all))
	if err != nil {
		return table.Result{}, err
	}
	pairs, err := choosePairs(parts)
	if err != nil {
		return table.Result{}, err
	}
	result := table.Result{Lacks: lacks}
	for _, j := range singles {
		result.Rows = append(result.Rows, j.row(table.Cell{Uses: j.uses}))
	}
	for _, p := range pairs {
		result.Rows = append(result.Rows, p.row(table.Cell{Uses: p.uses}))
	}
	return withEverything(result, parts)
}

// withEverything adds the last row. Two appliances at once are a pair already.
func withEverything(result table.Result, parts []judged) (table.Result, error) {
	for i := range result.Lacks {
		result.Lacks[i].Reason += "; so everything at once is not worked out either"
	}
	if len(result.Lacks) > 0 || len(parts) < 3 {
		return result, nil
	}
	sum := load{}
	for _, part := range parts {
		sum = together(sum, part.load)
	}
	j, err := judge(sum)
	if err != nil {
		return table.Result{}, err
	}
	result.Rows = append(result.Rows, j.row(table.Cell{Word: "everything"}))
	return result, nil
}

// settings lists every setting of the appliances.
func settings(all []appliance) []load {
	var loads []load
	for _, a := range all {
		loads = append(loads, a.settings...)
	}
	return loads
}

// largest lists each appliance at its largest setting, where that is known.
func largest(all []appliance) []load {
	var loads []load
	for _, a := range all {
		if a.whole {
			loads = append(loads, a.settings[0])
		}
	}
	return loads
}

func judgeAll(loads []load) ([]judged, error) {
	var all []judged
	for _, l := range loads {
		j, err := judge(l)
		if err != nil {
			return nil, err
		}
		all = append(all, j)
	}
	return all, nil
}

// row is the row of a load that is named in the first cell.
func (j judged) row(name table.Cell) table.Row {
	row := table.Row{name, {Quantity: j.shown()}, {Quantity: quantity.Of(j.current)}}
	for _, v := range j.on {
		row = append(row, v.cell())
	}
	return row
}
