// Package pictures turns photographs from phones into small upright pictures
// for pages. Every picture is drawn and encoded anew, so nothing that the phone
// noted beside the image (where, when, with what) reaches a page.
package pictures

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	"image/jpeg"
	"iter"
	"slices"
	"strings"

	"doorpocket/build/pictures/webp"
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

// quality is that of JPEG photographs in which no block shows on a phone, and
// webpQuality that of WebP ones as near to the photograph: of sixteen photographs
// the ratio of signal to noise was the same at 80, in 55 % of the bytes.
const (
	quality     = 78
	webpQuality = 82
)

// Made is a picture ready for pages: at least one variant, the smallest first.
type Made struct {
	Variants []Variant // JPEG
	// Modern are the same in WebP, for browsers that read it; none where it would
	// not be smaller.
	Modern []Variant `json:",omitempty"`
}

// Variant is one size of a picture.
type Variant struct {
	Width, Height int
	Data          []byte
	Name          string // of its file, made from the content
}

// Largest is the JPEG with the most pixels.
func (m Made) Largest() Variant { return m.Variants[len(m.Variants)-1] }

// All are the variants of both formats.
func (m Made) All() []Variant { return slices.Concat(m.Variants, m.Modern) }

// Each gives the variants of both formats, in the order of All, for whoever changes
// them.
func (m Made) Each() iter.Seq2[int, *Variant] {
	return func(yield func(int, *Variant) bool) {
		n := 0
		for _, variants := range [][]Variant{m.Variants, m.Modern} {
			for i := range variants {
				if !yield(n, &variants[i]) {
					return
				}
				n++
			}
		}
	}
}

// Kept is the variant that a phone keeps: the largest in the format of most
// browsers.
func (m Made) Kept() Variant {
	if len(m.Modern) > 0 {
		return m.Modern[len(m.Modern)-1]
	}
	return m.Largest()
}

// Supposed is a picture made by MakeJPEG with modern variants of which only the
// names and sizes mean anything: for whoever counts what pages weigh.
func (m Made) Supposed() Made {
	m.Modern = nil
	for _, v := range m.Variants {
		v.Data, v.Name = nil, strings.TrimSuffix(v.Name, jpegEnd)+webpEnd
		m.Modern = append(m.Modern, v)
	}
	return m
}

// Make makes the variants of a photograph. name is the file's name, data what
// is in it. A file that cannot be used gives a *Refusal. The same file always
// gives the same bytes.
func Make(name string, data []byte) (Made, error) {
	made, drawn, err := inJPEG(name, data)
	if err == nil {
		made.Modern, err = inWebP(name, drawn, made.Variants)
	}
	return made, err
}

// MakeJPEG is Make without modern variants, for paper and for whoever only wants
// to know whether the file can be used.
func MakeJPEG(name string, data []byte) (Made, error) {
	made, _, err := inJPEG(name, data)
	return made, err
}

// inJPEG gives the images as they are drawn too.
func inJPEG(name string, data []byte) (Made, []*image.RGBA, error) {
	file, err := source{name: name, data: data}.decodable(heicLimit)
	if err != nil {
		return Made{}, nil, err
	}
	stored, err := file.decode()
	if err != nil {
		return Made{}, nil, err
	}
	drawn := scaled(stored, file.orientation())
	var made Made
	for _, m := range drawn {
		var b bytes.Buffer
		if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: quality}); err != nil {
			return Made{}, nil, fmt.Errorf("picture %s: %w", name, err)
		}
		made.Variants = append(made.Variants, variant(m, b.Bytes()))
	}
	called(made.Variants, jpegEnd)
	return made, drawn, nil
}

// inWebP gives the images as WebP, none where one of them is larger than in the
// format that every browser reads.
func inWebP(name string, drawn []*image.RGBA, others []Variant) ([]Variant, error) {
	encoder, err := webp.Shared()
	if err != nil {
		return nil, err
	}
	var all []Variant
	for i, m := range drawn {
		data, err := encoder.Encode(context.Background(), m, webpQuality)
		if err != nil {
			return nil, fmt.Errorf("picture %s: %w", name, err)
		}
		if len(data) >= len(others[i].Data) {
			return nil, nil
		}
		all = append(all, variant(m, data))
	}
	called(all, webpEnd)
	return all, nil
}

func variant(m *image.RGBA, data []byte) Variant {
	size := m.Bounds().Size()
	return Variant{Width: size.X, Height: size.Y, Data: data}
}

const (
	jpegEnd = ".jpg"
	webpEnd = ".webp"
)

// called names variants by their content and by nothing else: a host may let phones
// keep them for good, and no name tells a hirer what the file was called. Those of
// one format differ only in the width: pages name them all.
func called(variants []Variant, end string) {
	sum := sha256.New()
	for _, v := range variants {
		sum.Write(v.Data)
	}
	stem := hex.EncodeToString(sum.Sum(nil)[:8])
	for i := range variants {
		variants[i].Name = fmt.Sprintf("%s-%d%s", stem, variants[i].Width, end)
	}
}
