// Package paper draws PDF pages in exact millimetres: text in an embedded font,
// boxes and lines, QR symbols, safety signs, and text that flows over pages.
//
// The origin of a page is its upper left corner; x grows to the right and y
// downwards. The same drawing always gives the same bytes: nothing is taken
// from the clock or from chance. Viewers are told not to scale when printing.
package paper

import (
	"fmt"
	"io/fs"
	"path"
	"strings"

	"golang.org/x/image/font/sfnt"
)

// Size is the size of a page in millimetres.
type Size struct{ Width, Height float64 }

// The usual sizes (ISO 216, ANSI/ASME Y14.1).
var (
	A4     = Size{210, 297}
	A5     = Size{148, 210}
	Letter = Size{215.9, 279.4}
)

// Stock is what all documents are made with: the font and the signs. It is
// safe for concurrent use.
type Stock struct {
	faces [2]face // regular, bold
	signs map[string][]shape
}

// face is one weight of the font.
type face struct {
	data []byte
	font *sfnt.Font
}

// Open reads the font and the signs from the layouts.
func Open(files fs.FS) (*Stock, error) {
	s := &Stock{signs: map[string][]shape{}}
	for i, name := range []string{"OpenSans-Regular.ttf", "OpenSans-Bold.ttf"} {
		data, err := fs.ReadFile(files, "thirdparty/opensans/"+name)
		if err != nil {
			return nil, fmt.Errorf("font: %w", err)
		}
		font, err := sfnt.Parse(data)
		if err != nil {
			return nil, fmt.Errorf("font %s: %w", name, err)
		}
		s.faces[i] = face{data: data, font: font}
	}
	names, err := fs.Glob(files, "signs/*.svg")
	if err != nil {
		return nil, err
	}
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, fmt.Errorf("sign: %w", err)
		}
		shapes, err := parseSVG(string(data), nil)
		if err != nil {
			return nil, fmt.Errorf("sign %s: %w", name, err)
		}
		s.signs[strings.TrimSuffix(path.Base(name), ".svg")] = shapes
	}
	return s, nil
}

// HasSign reports whether there is a picture of a sign, named by its ISO 7010
// identifier such as W021.
func (s *Stock) HasSign(id string) bool { return len(s.signs[id]) > 0 }

// Has reports whether the font has a glyph for every character of a text; if
// not it names the first that is missing.
func (s *Stock) Has(text string) (missing rune, ok bool) {
	var buf sfnt.Buffer
	for _, r := range printable(text) {
		for _, f := range s.faces {
			if i, err := f.font.GlyphIndex(&buf, r); err != nil || i == 0 || r > 0xffff {
				return r, false
			}
		}
	}
	return 0, true
}

// printable gives two characters that only say where a line may break the
// glyph that they look like.
func printable(text string) string {
	if !strings.ContainsAny(text, "\u2011\u202f") {
		return text
	}
	return strings.NewReplacer("\u2011", "-", "\u202f", "\u00a0").Replace(text)
}
