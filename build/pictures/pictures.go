// Package pictures turns photographs from phones into small upright pictures
// for pages. Every picture is drawn and encoded anew, so nothing that the phone
// noted beside the image (where, when, with what) reaches a page.
package pictures

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	"image/jpeg"
)

// MaxBytes is how large a file may be.
const MaxBytes = 30_000_000

// maxMegapixels is how many pixels a picture may have. Whole millions count: a
// sensor of 64 megapixels has a little more than that.
const maxMegapixels = 64

// maxStretch is how many times as long as wide a picture may be. What is longer
// can neither be read on a phone nor, in the extreme, be encoded.
const maxStretch = 10

// widths are those of the variants: a phone's page at one and at two device
// pixels a point. No picture is enlarged to reach them.
var widths = []int{480, 960}

// quality is that of photographs in which no block shows on a phone.
const quality = 78

// Made is a picture ready for pages: at least one variant, the smallest first.
type Made struct{ Variants []Variant }

// Variant is one size of a picture.
type Variant struct {
	Width, Height int
	Data          []byte // JPEG
	Name          string // of its file, made from the content
}

// Largest is the variant with the most pixels.
func (m Made) Largest() Variant { return m.Variants[len(m.Variants)-1] }

// Make makes the variants of a photograph. name is the file's name, data what
// is in it. A file that cannot be used gives a *Refusal. The same file always
// gives the same bytes.
func Make(name string, data []byte) (Made, error) {
	file := source{name: name, data: data}
	stored, err := file.decode()
	if err != nil {
		return Made{}, err
	}
	var made Made
	for _, m := range scaled(stored, file.orientation()) {
		v, err := encode(name, m)
		if err != nil {
			return Made{}, err
		}
		made.Variants = append(made.Variants, v)
	}
	return made, nil
}

// encode names a variant by its content, so that a host may let phones keep it
// for good.
func encode(name string, m *image.RGBA) (Variant, error) {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: quality}); err != nil {
		return Variant{}, fmt.Errorf("picture %s: %w", name, err)
	}
	size := m.Bounds().Size()
	sum := sha256.Sum256(b.Bytes())
	return Variant{
		Width: size.X, Height: size.Y, Data: b.Bytes(),
		Name: fmt.Sprintf("%s-%x-%d.jpg", base(name), sum[:5], size.X),
	}, nil
}
