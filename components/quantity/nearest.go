package quantity

import "strings"

// nearest gives the name of the unit of a dimension that a misspelt one is
// closest to, or nothing if none is close.
func nearest(text string, dim Dimension) string {
	const longest = 24 // more than any spelling has
	text = tidySpaces(text)
	if len(text) > longest {
		return ""
	}
	best, name := len(text), ""
	for i := range units {
		e := &units[i]
		if e.dimension != dim {
			continue
		}
		for _, spelling := range append([]string{e.name, e.symbol}, e.aliases...) {
			if spelling == "" {
				continue
			}
			if d := distance(text, spelling); d <= allowed(text, spelling) && d < best {
				best, name = d, e.name
			}
		}
	}
	return name
}

// allowed is how many slips still make one spelling look like another: none
// but case for a single letter, one for a short symbol, two for a word.
func allowed(a, b string) int {
	switch shorter := min(len([]rune(a)), len([]rune(b))); {
	case shorter < 2:
		return 0
	case shorter < 6:
		return 1
	}
	return 2
}

// distance counts the slips between two spellings, whatever their case: a
// letter too many, too few, wrong, or two neighbours swapped.
func distance(a, b string) int {
	x, y := []rune(strings.ToLower(a)), []rune(strings.ToLower(b))
	before := make([]int, len(y)+1)
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(x); i++ {
		next := make([]int, len(y)+1)
		next[0] = i
		for j := 1; j <= len(y); j++ {
			change := 1
			if x[i-1] == y[j-1] {
				change = 0
			}
			next[j] = min(row[j]+1, next[j-1]+1, row[j-1]+change)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				next[j] = min(next[j], before[j-2]+1)
			}
		}
		before, row = row, next
	}
	return row[len(y)]
}
