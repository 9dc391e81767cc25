package compare

import (
	"maps"
	"math"
	"slices"
	"strconv"

	"doorpocket/build/guide"
)

// tables tells which numbers of a thing's tables moved, and by how much.
func (h *hirers) tables(p couple) {
	if p.old == nil || p.new == nil {
		return // that the page comes or goes says it
	}
	before, after := h.old.Page(p.old.Name), h.new.Page(p.new.Name)
	ids := map[string]bool{}
	for id := range before.Tables {
		ids[id] = true
	}
	for id := range after.Tables {
		ids[id] = true
	}
	for _, id := range slices.Sorted(maps.Keys(ids)) {
		was, now := before.Tables[id], after.Tables[id]
		c := about(Table, h.new, p.new)
		c.Table = id
		switch {
		case was == nil:
			c.What = now.Caption
			c.Text = h.voice.Say("change_table_new", "table", c.What)
		case now == nil:
			c.What = was.Caption
			c.Text = h.voice.Say("change_table_gone", "table", c.What)
		default:
			c.What = now.Caption
			c.Text = h.voice.Say("change_table", "table", c.What)
			c.Parts = h.rows(was, now)
			if len(c.Parts) == 0 {
				continue
			}
		}
		h.add(c)
	}
}

// keyed gives names their number where they stand several times.
func keyed(names []string) []string {
	seen := map[string]int{}
	keys := make([]string, len(names))
	for i, name := range names {
		seen[name]++
		keys[i] = name + "\x00" + strconv.Itoa(seen[name])
	}
	return keys
}

// firsts are the first cells of the rows.
func firsts(t *guide.Table) []string {
	var all []string
	for _, row := range t.Rows {
		all = append(all, row[0].Text)
	}
	return all
}

// rows tells what of two tables with the same meaning differs.
func (h *hirers) rows(was, now *guide.Table) []Part {
	oldRows, newRows := keyed(firsts(was)), keyed(firsts(now))
	oldHeads, newHeads := keyed(was.Heads), keyed(now.Heads)
	var parts []Part
	for i, key := range newRows {
		k := slices.Index(oldRows, key)
		if k < 0 {
			parts = append(parts, Part{What: now.Rows[i][0].Text, Now: rowText(now.Rows[i]), Text: h.voice.Say("change_row_new", "what", rowText(now.Rows[i]))})
			continue
		}
		for col := 1; col < len(now.Heads); col++ {
			other := slices.Index(oldHeads, newHeads[col])
			var before guide.Cell
			if other >= 0 {
				before = was.Rows[k][other]
			}
			if after := now.Rows[i][col]; after.Text != before.Text {
				parts = append(parts, h.cell(now, i, col, before, after))
			}
		}
	}
	for k, key := range oldRows {
		if !slices.Contains(newRows, key) {
			parts = append(parts, Part{What: was.Rows[k][0].Text, Was: rowText(was.Rows[k]), Text: h.voice.Say("change_row_gone", "what", rowText(was.Rows[k]))})
		}
	}
	return parts
}

func rowText(row []guide.Cell) string {
	text := row[0].Text
	for i, c := range row[1:] {
		if c.Text == "" {
			continue
		}
		if i == 0 {
			text += ":"
		}
		text += " " + c.Text
		if i < len(row)-2 && row[i+2].Text != "" {
			text += ","
		}
	}
	return text
}

// cell tells that one cell is now this and was that.
func (h *hirers) cell(t *guide.Table, row, col int, was, now guide.Cell) Part {
	p := Part{What: t.Rows[row][0].Text, Column: t.Heads[col], Now: now.Text, Was: was.Text}
	what := p.What
	if len(t.Heads) > 2 {
		what = h.voice.Say("change_cell", "row", p.What, "column", p.Column)
	}
	p.Text = h.inWords(Change{What: what, Now: p.Now, Was: p.Was}, false)
	before, err := strconv.ParseFloat(was.Number, 64)
	after, err2 := strconv.ParseFloat(now.Number, 64)
	if err != nil || err2 != nil {
		return p
	}
	p.By, p.Unit = math.Round((after-before)*1e6)/1e6, t.Units[col]
	percent := 0
	if before != 0 {
		percent = int(math.Round(math.Abs((after - before) / before * 100)))
	}
	p.Text = h.voice.Say("change_cell_number", "what", what, "now", p.Now, "was", p.Was)
	switch {
	case percent == 0:
	case after*sign(before) > before*sign(before):
		p.Text = h.voice.Say("change_more", "text", p.Text, "percent", percent)
	default:
		p.Text = h.voice.Say("change_less", "text", p.Text, "percent", percent)
	}
	return p
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}
