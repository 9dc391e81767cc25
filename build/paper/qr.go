package paper

import (
	"fmt"
	"strconv"
	"strings"

	"doorpocket/build/label"
)

// QR draws a symbol with its quiet zone, black on white, side millimetres wide.
// The modules are one path in a system of coordinates in which a module is
// one unit: no hairlines, and no errors that add up.
func (d *Doc) QR(s label.Symbol, x, y, side float64) {
	d.Rect(x, y, side, side, Filled(White))
	module := side / float64(s.Side())
	var b strings.Builder
	fmt.Fprintf(&b, "q 0 0 0 rg %s 0 0 %s %s %s cm\n", fine(module*k), fine(-module*k), d.px(x), d.py(y))
	for r := range s.Runs() {
		b.WriteString(strconv.Itoa(r.X+label.Quiet) + " " + strconv.Itoa(r.Y+label.Quiet) + " " + strconv.Itoa(r.Long) + " 1 re\n")
	}
	b.WriteString("f Q\n")
	d.pdf.RawWriteStr(b.String())
}

// fine writes a scale so that it is exact over a whole symbol.
func fine(v float64) string { return strconv.FormatFloat(v, 'f', 7, 64) }
