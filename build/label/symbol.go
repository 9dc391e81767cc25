package label

import (
	"fmt"
	"image/color"
	"iter"
	"strconv"
	"strings"

	"github.com/boombuler/barcode/qr"
)

// Quiet is the margin that ISO/IEC 18004 asks for round a symbol, in modules.
const Quiet = 4

// alphanumeric is the set of ISO/IEC 18004's small mode.
const alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// Symbol is a QR symbol: Size by Size modules.
type Symbol struct {
	Size int
	dark []bool
}

// NewSymbol encodes text at error-correction level Q (about a quarter may be
// lost) in the smallest version that holds it.
func NewSymbol(text string) (Symbol, error) {
	mode := qr.Unicode
	if strings.Trim(text, alphanumeric) == "" {
		mode = qr.AlphaNumeric
	}
	code, err := qr.Encode(text, qr.Q, mode)
	if err != nil {
		return Symbol{}, fmt.Errorf("QR symbol of %q: %w", text, err)
	}
	s := Symbol{Size: code.Bounds().Dx()}
	for y := range s.Size {
		for x := range s.Size {
			grey := color.GrayModel.Convert(code.At(x, y)).(color.Gray)
			s.dark = append(s.dark, grey.Y < 128)
		}
	}
	return s, nil
}

// Dark reports whether the module in column x and row y is dark.
func (s Symbol) Dark(x, y int) bool { return s.dark[y*s.Size+x] }

// Run is some dark modules side by side.
type Run struct{ X, Y, Long int }

// Runs gives the dark modules row by row; neighbours in a row are one run.
func (s Symbol) Runs() iter.Seq[Run] {
	return func(yield func(Run) bool) {
		for y := range s.Size {
			for x := 0; x < s.Size; x++ {
				if !s.Dark(x, y) {
					continue
				}
				long := 1
				for x+long < s.Size && s.Dark(x+long, y) {
					long++
				}
				if !yield(Run{X: x, Y: y, Long: long}) {
					return
				}
				x += long
			}
		}
	}
}

// Path is the symbol as the data of one SVG path in module units, quiet zone
// included: runs of a row are one piece, so no hairlines show between modules.
func (s Symbol) Path() string {
	var b strings.Builder
	for r := range s.Runs() {
		long := strconv.Itoa(r.Long)
		b.WriteString("M" + strconv.Itoa(r.X+Quiet) + " " + strconv.Itoa(r.Y+Quiet) + "h" + long + "v1h-" + long + "z")
	}
	return b.String()
}

// Side is the width of the symbol with its quiet zone, in modules.
func (s Symbol) Side() int { return s.Size + 2*Quiet }
