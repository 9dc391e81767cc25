package problem

import "strings"

const (
	tabWidth = 4
	// lead is how many columns of a cut line stay in front of the carets.
	lead = 20
	// cutMark stands where a long line was cut.
	cutMark = "..."
)

// cell is one rune of a source line as it is shown.
type cell struct {
	text  string
	width int
}

// layOut turns a source line into cells, one for each rune, with tabs expanded
// and everything unsafe made visible.
func layOut(line string) []cell {
	cells := make([]cell, 0, len(line))
	column := 0
	for _, r := range line {
		c := cell{string(visible(r)), columns(visible(r))}
		if r == '\t' {
			c.width = tabWidth - column%tabWidth
			c.text = strings.Repeat(" ", c.width)
		}
		column += c.width
		cells = append(cells, c)
	}
	return cells
}

// excerpt returns the source line as shown and the line of carets below it. At
// most limit columns are shown; a longer line is cut around the carets. Carets
// are empty if the column is unknown.
func excerpt(line string, column, length, limit int) (shown, carets string) {
	cells := layOut(line)
	if column <= 0 {
		shown, _ = window(cells, 0, 0, limit)
		return shown, ""
	}
	// A place just behind the end is legitimate: something is missing there.
	from := min(column-1, len(cells))
	to := min(from+max(length, 1), len(cells))
	first := 0
	if total(cells) > limit {
		first = startOfWindow(cells, from)
	}
	shown, last := window(cells, first, from, limit)
	pad := total(cells[first:from])
	if first > 0 {
		pad += len(cutMark)
	}
	marked := total(cells[from:max(from, min(to, last))])
	return shown, strings.Repeat(" ", pad) + strings.Repeat("^", max(marked, 1))
}

// startOfWindow returns the first cell to show so that lead columns stand
// before the cell at from.
func startOfWindow(cells []cell, from int) int {
	first, before := from, 0
	for first > 0 && before < lead {
		first--
		before += cells[first].width
	}
	return first
}

// window joins the cells from first on, at most limit columns but always up to
// the cell at least, and returns the index behind the last one shown.
func window(cells []cell, first, least, limit int) (string, int) {
	var b strings.Builder
	if first > 0 {
		b.WriteString(cutMark)
	}
	used, last := 0, first
	for last < len(cells) && (used+cells[last].width <= limit || last <= least) {
		b.WriteString(cells[last].text)
		used += cells[last].width
		last++
	}
	if last < len(cells) {
		b.WriteString(cutMark)
	}
	return strings.TrimRight(b.String(), " "), last
}

// total returns how many columns the cells take.
func total(cells []cell) int {
	n := 0
	for _, c := range cells {
		n += c.width
	}
	return n
}
