package label

import (
	"fmt"
	"iter"
	"strconv"
	"strings"

	qr "github.com/piglig/go-qr"
)

// Level is how much of a symbol may be lost, in the letters of ISO/IEC 18004.
// The zero Level is Q.
type Level byte

// The levels: about 7, 15, 25 and 30 % of the codewords may be lost.
const (
	LevelQ Level = iota
	LevelL
	LevelM
	LevelH
)

// ParseLevel reads L, M, Q or H.
func ParseLevel(text string) (Level, bool) {
	l, ok := map[string]Level{"L": LevelL, "M": LevelM, "Q": LevelQ, "H": LevelH}[text]
	return l, ok
}

// String is the letter of the level.
func (l Level) String() string {
	return map[Level]string{LevelL: "L", LevelM: "M", LevelQ: "Q", LevelH: "H"}[l]
}

func (l Level) encoder() qr.Ecc {
	return map[Level]qr.Ecc{LevelL: qr.Low, LevelM: qr.Medium, LevelQ: qr.Quartile, LevelH: qr.High}[l]
}

// Quiet is the margin that ISO/IEC 18004 asks for round a symbol, in modules.
const Quiet = 4

// alphanumeric is the set of ISO/IEC 18004's small mode.
const alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// Symbol is a QR symbol: Size by Size modules.
type Symbol struct {
	Size         int
	Level        Level
	Alphanumeric bool // in the small mode, which holds no small letters; else in bytes
	dark         []bool
}

// Version is the version of ISO/IEC 18004, from 1 to 40: the size in steps of
// four modules.
func (s Symbol) Version() int { return (s.Size - 17) / 4 }

// Small reports whether a text can be written in the alphanumeric mode, in which
// a symbol is smaller by up to a third.
func Small(text string) bool { return strings.Trim(text, alphanumeric) == "" }

// plainMask is the pattern laid over a symbol on a screen: of the eight of
// ISO/IEC 18004 the one that inverts every other module like a chessboard, so
// that no large areas of one colour are left. Trying all eight for each of a
// van's pages took most of the time of a publish.
const plainMask = 0

// bestMask asks for the pattern with the least penalty by ISO/IEC 18004.
const bestMask = -1

// NewSymbol encodes text for a screen in the smallest version that holds it at a
// level of error correction.
func NewSymbol(text string, level Level) (Symbol, error) { return newSymbol(text, level, plainMask) }

// PrintSymbol encodes text for paper. A label is read for years, by phones and
// in light that nobody knows, and so it gets the best of the eight masks: with
// the plain one a decoder of the tests missed four labels of 420.
func PrintSymbol(text string, level Level) (Symbol, error) { return newSymbol(text, level, bestMask) }

func newSymbol(text string, level Level, mask int) (Symbol, error) {
	segment, err := qr.MakeBytes([]byte(text))
	if Small(text) {
		segment, err = qr.MakeAlphanumeric(text)
	}
	if err != nil {
		return Symbol{}, fmt.Errorf("QR symbol of %q: %w", text, err)
	}
	code, err := qr.EncodeSegments([]*qr.QrSegment{segment}, level.encoder(), qr.MinVersion, qr.MaxVersion, mask, false)
	if err != nil {
		return Symbol{}, fmt.Errorf("QR symbol of %q: %w", text, err)
	}
	s := Symbol{Size: code.Size(), Level: level, Alphanumeric: Small(text)}
	s.dark = make([]bool, 0, s.Size*s.Size)
	for y := range s.Size {
		for x := range s.Size {
			s.dark = append(s.dark, code.Module(x, y))
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
// included, to be stroked one module wide: a run of a row is one line, so no
// hairlines show between its modules. Only a row's first line says where it is,
// the others how far on: half the bytes.
func (s Symbol) Path() string {
	path := make([]byte, 0, 4*s.Size*s.Size)
	number := func(before string, n int) {
		path = strconv.AppendInt(append(path, before...), int64(n), 10)
	}
	row, end := -1, 0 // of the run before, and where it ended
	for r := range s.Runs() {
		if r.Y != row {
			number("M", r.X+Quiet)
			number(" ", r.Y+Quiet)
			path = append(path, ".5"...)
		} else {
			number("m", r.X-end)
			path = append(path, " 0"...)
		}
		number("h", r.Long)
		row, end = r.Y, r.X+r.Long
	}
	return string(path)
}

// Side is the width of the symbol with its quiet zone, in modules.
func (s Symbol) Side() int { return s.Size + 2*Quiet }
