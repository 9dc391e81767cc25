package render

import (
	"cmp"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/components/table"
)

func (f filler) table(id, alt string) (string, bool) {
	t := f.Page.Tables[id]
	if t == nil {
		return "", false
	}
	view := tableView{W: f.van.w, ID: "x-" + strings.ReplaceAll(id, "/", "-"), Caption: t.Caption, Many: len(t.Heads) > 5, Sources: t.Sources}
	if alt != "" {
		view.Caption = alt
	}
	for _, a := range t.Assumptions {
		view.Assumptions = append(view.Assumptions, f.html(a))
	}
	for i, head := range t.Heads {
		cell := tableCell{Text: head}
		if t.Numeric[i] {
			cell.Class = numeric
		}
		view.Heads = append(view.Heads, cell)
	}
	for _, row := range t.Rows {
		view.Rows = append(view.Rows, f.van.w.tableRowOf(t, row))
	}
	if t.Tick != nil {
		view.Tick = f.van.tickData(t.Tick)
		f.van.ticked = true
	}
	return string(f.van.part("table", view)), true
}

var tones = map[table.Tone]string{table.Good: "good", table.Doubtful: "doubtful", table.Bad: "bad"}

// numeric is the class of cells with numbers, which stand below each other.
const numeric = "n"

// tableRowOf is a row as the template writes it. A row that can be ticked has
// its numbers, one for each column that is added up; an empty cell adds nothing.
func (w *Words) tableRowOf(t *guide.Table, row []guide.Cell) tableRow {
	var r tableRow
	for i, c := range row {
		cell := w.cellOf(c)
		if t.Numeric[i] {
			cell.Class = strings.TrimSpace(numeric + " " + cell.Class)
		}
		r.Cells = append(r.Cells, cell)
	}
	if len(r.Cells) > 0 {
		r.Head, r.Cells = r.Cells[0], r.Cells[1:]
	}
	if t.Tick != nil && len(row) > t.Tick.Column && row[0].Tick != "" && row[t.Tick.Column].Number != "" {
		r.Tick = row[0].Tick
		var numbers []string
		for _, i := range summed(t.Tick) {
			numbers = append(numbers, cmp.Or(row[i].Number, "0"))
		}
		r.Value = strings.Join(numbers, " ")
	}
	return r
}

// cellOf is a cell in its colour. A quantity of two parts, such as "2 h 30 min",
// may be broken between them, so that a table of times fits a phone.
func (w *Words) cellOf(c guide.Cell) tableCell {
	cell := tableCell{Text: w.Apart(c.Text), Class: tones[c.Tone]}
	if parts := strings.Split(c.Text, noBreak); len(parts) == 4 {
		cell.Text = parts[0] + noBreak + parts[1] + " " + parts[2] + noBreak + parts[3]
		cell.Text = w.Apart(cell.Text)
		cell.Class = strings.TrimSpace("parts " + cell.Class)
	}
	return cell
}

const noBreak = "\u00a0"
