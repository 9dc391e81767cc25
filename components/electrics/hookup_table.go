package electrics

import (
	"slices"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// HookUpLoadTable lists the mains appliances of the van one by one: a row for
// each at every setting, the largest appliance first. The rows can be ticked and
// added up, and the sum is held against every pitch of the van's region.
//
// Columns: use, power, pitch. Pitch is the smallest one on which the appliance
// stays on by itself, empty where there is none.
func HookUpLoadTable(in table.Input) (table.Result, error) {
	s, err := supplyOf(in)
	if err != nil {
		return table.Result{}, err
	}
	all, lacks := appliances(in)
	result := table.Result{Lacks: lacks}
	for _, a := range all {
		for _, setting := range a.settings {
			j, err := s.judge(setting)
			if err != nil {
				return table.Result{}, err
			}
			row := table.Row{{Uses: j.uses, Tick: a.group}, {Quantity: j.stated}, {}}
			if i := slices.Index(j.on, StaysOn); i >= 0 {
				row[2].Quantity = quantity.Of(s.pitches[i])
			}
			result.Rows = append(result.Rows, row)
		}
	}
	if len(all) > 0 {
		result.Tick = s.tick()
	}
	return result, nil
}

// HookUpTogetherTable says what can be on together on a pitch of 230 V, and
// after how long too much of it trips: first what runs by itself, then that with
// every sensible choice of large appliances, from the smallest power to the
// largest, last everything at once.
//
// Where one load cannot be reckoned with there are no rows: each would count
// too little.
//
// Columns: use, then one a pitch: six, ten, thirteen, sixteen. A van for another
// voltage has no rows.
func HookUpTogetherTable(in table.Input) (table.Result, error) {
	return togetherTable(in, supplies[0])
}

// HookUpTogether120VTable says the same for pitches of 120 V.
//
// Columns: use, then one a pitch: fifteen, twenty, thirty.
func HookUpTogether120VTable(in table.Input) (table.Result, error) {
	return togetherTable(in, supplies[1])
}

func togetherTable(in table.Input, s supply) (table.Result, error) {
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
	found, err := s.combine(all)
	if err != nil {
		return table.Result{}, err
	}
	var result table.Result
	for _, c := range found {
		result.Rows = append(result.Rows, c.row(c.name))
	}
	if len(all) == 0 || slices.ContainsFunc(found, func(c combination) bool { return len(c.uses) == len(all) }) {
		return result, nil
	}
	return s.withEverything(result, all)
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
	row := table.Row{name}
	for _, v := range j.on {
		row = append(row, v.cell())
	}
	return row
}
