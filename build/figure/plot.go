package figure

import (
	"fmt"
	"html"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Series is one line of a plot: as many X as Y, in the order of X.
type Series struct {
	Name string
	X, Y []float64
}

// Axes are the words of a plot.
type Axes struct {
	Title string // what it shows, for those who cannot see it
	X, Y  string
}

// SeriesOf reads the lines of a plot out of a table: the first column is X,
// every other column that holds a number is a line. A cell without a number is
// a point that is not there, and so is every point of its row where the first
// cell has none.
func SeriesOf(heads []string, rows [][]string) []Series {
	var all []Series
	for column := 1; column < len(heads); column++ {
		line := Series{Name: heads[column]}
		for _, row := range rows {
			x, errX := strconv.ParseFloat(row[0], 64)
			y, errY := strconv.ParseFloat(row[column], 64)
			if errX == nil && errY == nil {
				line.X, line.Y = append(line.X, x), append(line.Y, y)
			}
		}
		if len(line.X) > 0 {
			all = append(all, line)
		}
	}
	return all
}

// The measures of a plot, in the units of the plan.
const (
	plotLeft, plotRight = 34.0, 330.0
	plotTop, plotFoot   = 24.0, 174.0
	legendStep          = 18.0
)

// looks of the lines: the dashes tell them apart without colour, and so do the
// marks.
var dashes = []string{"", "7 4", "2 4"}

// frame turns values into places: Y starts at nothing and ends at a round
// number.
type frame struct{ low, high, step, top float64 }

func frameOf(all []Series) frame {
	f := frame{low: all[0].X[0], high: all[0].X[0]}
	for _, s := range all {
		f.low, f.high = min(f.low, slices.Min(s.X)), max(f.high, slices.Max(s.X))
		f.top = max(f.top, slices.Max(s.Y))
	}
	if f.high == f.low {
		f.low, f.high = f.low-1, f.high+1
	}
	f.step = roundStep(f.top / 4)
	f.top = f.step * math.Max(1, math.Ceil(f.top/f.step))
	return f
}

// roundStep is the least of 1, 2, 5 and their tens that is not below v.
func roundStep(v float64) float64 {
	if v <= 1 {
		return 1
	}
	ten := math.Pow(10, math.Floor(math.Log10(v)))
	for _, n := range []float64{1, 2, 5} {
		if n*ten >= v {
			return n * ten
		}
	}
	return 10 * ten
}

func (f frame) x(v float64) string {
	return num(round(plotLeft + (v-f.low)/(f.high-f.low)*(plotRight-plotLeft)))
}

func (f frame) y(v float64) string {
	return num(round(plotFoot - v/f.top*(plotFoot-plotTop)))
}

// Plot draws lines of values against a scale below them. It is an image to a
// screen reader, and what it is called tells every point. Without a line there
// is no drawing. X and Y must be finite and Y not below nothing.
func Plot(all []Series, w Axes) string {
	if len(all) == 0 {
		return ""
	}
	f := frameOf(all)
	high := plotFoot + 38 + legendStep*float64(len(all))
	var s strings.Builder
	fmt.Fprintf(&s, `<svg class="plot" viewBox="0 0 340 %s" role="img" aria-label="%s" fill="none" stroke="currentColor" stroke-width="2" font-size="13">`,
		num(high), html.EscapeString(told(all, w)))
	f.scales(&s, all, w)
	for i, line := range all {
		f.line(&s, line, i)
		legend(&s, line.Name, i)
	}
	s.WriteString("</svg>")
	return s.String()
}

// told is the plot in words.
func told(all []Series, w Axes) string {
	text := w.Title + ". " + w.X + ": " + w.Y + "."
	for _, line := range all {
		text += " " + line.Name
		for i := range line.X {
			mark := ", "
			if i == 0 {
				mark = ": "
			}
			text += mark + minus(line.X[i]) + ": " + num(line.Y[i])
		}
		text += "."
	}
	return text
}

// scales draws the axes with their words and figures.
func (f frame) scales(s *strings.Builder, all []Series, w Axes) {
	fmt.Fprintf(s, `<path stroke-width="1" d="M%s %sV%sH%s`, num(plotLeft), num(plotTop), num(plotFoot), num(plotRight))
	for v := f.step; v <= f.top; v += f.step {
		fmt.Fprintf(s, "M%s %sh-4", num(plotLeft), f.y(v))
	}
	s.WriteString(`"/><g stroke="none" fill="currentColor" text-anchor="end">`)
	for v := f.step; v <= f.top; v += f.step {
		fmt.Fprintf(s, `<text x="28" dy="4" y="%s">%s</text>`, f.y(v), num(v))
	}
	s.WriteString(`</g><g stroke="none" fill="currentColor" text-anchor="middle">`)
	for _, v := range marks(all) {
		fmt.Fprintf(s, `<text x="%s" y="190">%s</text>`, f.x(v), minus(v))
	}
	fmt.Fprintf(s, `<text x="182" y="206">%s</text></g><text x="6" y="14" stroke="none" fill="currentColor">%s</text>`,
		html.EscapeString(w.X), html.EscapeString(w.Y))
}

// marks are the values of X at which there is any point.
func marks(all []Series) []float64 {
	var at []float64
	for _, line := range all {
		at = append(at, line.X...)
	}
	slices.Sort(at)
	return slices.Compact(at)
}

// minus writes a number with a true minus sign.
func minus(v float64) string { return strings.Replace(num(v), "-", "\u2212", 1) }

func (f frame) line(s *strings.Builder, line Series, i int) {
	s.WriteString("<path")
	dash(s, i)
	s.WriteString(` d="`)
	for j := range line.X {
		command := "L"
		if j == 0 {
			command = "M"
		}
		s.WriteString(command + f.x(line.X[j]) + " " + f.y(line.Y[j]))
	}
	s.WriteString(`"/>`)
}

func dash(s *strings.Builder, i int) {
	if d := dashes[i%len(dashes)]; d != "" {
		fmt.Fprintf(s, ` stroke-dasharray="%s"`, d)
	}
}

// legend says below the drawing what a line stands for.
func legend(s *strings.Builder, name string, i int) {
	y := plotFoot + 46 + legendStep*float64(i)
	s.WriteString("<path")
	dash(s, i)
	fmt.Fprintf(s, ` d="M34 %sh40"/><text x="82" y="%s" stroke="none" fill="currentColor">%s</text>`, num(y), num(y+4), html.EscapeString(name))
}
