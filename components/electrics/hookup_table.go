package electrics

import (
	"slices"

	"doorpocket/components/table"
)

// HookUpLoadTable says what can be on together on a pitch of 230 V, and after
// how long too much of it trips. First comes a row for every appliance at every
// setting by itself, the largest appliance first; then the sensible
// combinations, from the smallest to the largest, each with what runs by itself
// anyway; last everything at once. The rows of the appliances can be ticked and
// added up.
//
// Where one load cannot be reckoned with there are no rows: each would count
// too little.
//
// Columns: use, power, then one a pitch: six, ten, thirteen, sixteen. A van for
// another voltage has no rows.
func HookUpLoadTable(in table.Input) (table.Result, error) { return loadTable(in, supplies[0]) }

// HookUpLoad120VTable says the same for pitches of 120 V.
//
// Columns: use, power, then one a pitch: fifteen, twenty, thirty.
func HookUpLoad120VTable(in table.Input) (table.Result, error) { return loadTable(in, supplies[1]) }

func loadTable(in table.Input, s supply) (table.Result, error) {
	own, err := supplyOf(in)
	if err != nil || own.option != s.option {
		return table.Result{}, err
	}
	all, lacks := appliances(in)
	if len(lacks) > 0 {
		for i := range lacks {
			lacks[i].Reason += "; the whole table is left out, because every row would count too little"
		}
		return table.Result{Lacks: lacks}, nil
	}
	result, err := s.alone(all)
	if err != nil {
		return table.Result{}, err
	}
	found, err := s.combine(all)
	if err != nil {
		return table.Result{}, err
	}
	for _, c := range found {
		result.Rows = append(result.Rows, c.row(c.name))
	}
	if len(all) < 2 || slices.ContainsFunc(found, func(c combination) bool { return len(c.uses) == len(all) }) {
		return result, nil
	}
	return s.withEverything(result, all)
}

// alone makes the rows of the appliances and what is needed to add them up.
func (s supply) alone(all []appliance) (table.Result, error) {
	var result table.Result
	for _, a := range all {
		for _, setting := range a.settings {
			j, err := s.judge(setting)
			if err != nil {
				return table.Result{}, err
			}
			result.Rows = append(result.Rows, j.row(table.Cell{Uses: j.uses, Tick: a.group}))
		}
	}
	if len(all) > 1 {
		result.Tick = s.tick()
	}
	return result, nil
}

// withEverything adds the last row: each appliance at its largest.
func (s supply) withEverything(result table.Result, all []appliance) (table.Result, error) {
	var loads []load
	for _, a := range all {
		loads = append(loads, a.settings[0])
	}
	j, err := s.judge(together(loads...))
	if err != nil {
		return table.Result{}, err
	}
	result.Rows = append(result.Rows, j.row(table.Cell{Word: "everything"}))
	return result, nil
}

// row is the row of a load that is named in the first cell.
func (j judged) row(name table.Cell) table.Row {
	row := table.Row{name, {Quantity: j.shown()}}
	for _, v := range j.on {
		row = append(row, v.cell())
	}
	return row
}
