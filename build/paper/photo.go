package paper

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strconv"

	"codeberg.org/go-pdf/fpdf"
)

// Photo is a photograph in the middle of the column.
type Photo struct {
	JPEG          []byte
	Wide, High    int     // pixels
	Width, Height float64 // the most it may take, millimetres
	Marks         []Spot  // numbered from 1
}

// Spot is a place on a photograph: parts of its width from the left and of its
// height from the top, 0 to 1.
type Spot struct{ Across, Down float64 }

// spotRadius is that of a numbered place on a photograph, millimetres.
const spotRadius = 2.4

func (p Photo) pieces(_ *Doc, width float64) []piece {
	w := min(p.Width, width, p.Height*float64(p.Wide)/float64(p.High))
	h := w * float64(p.High) / float64(p.Wide)
	return []piece{{height: h + 1, draw: func(d *Doc, x, y float64) {
		name := fmt.Sprintf("%x", sha256.Sum256(p.JPEG))
		options := fpdf.ImageOptions{ImageType: "JPEG"}
		d.pdf.RegisterImageOptionsReader(name, options, bytes.NewReader(p.JPEG))
		left := x + (width-w)/2
		d.pdf.ImageOptions(name, left, y, w, h, false, options, 0, "")
		for i, s := range p.Marks {
			d.spot(left+s.Across*w, y+s.Down*h, i+1)
		}
	}}}
}

// spot draws a numbered place.
func (d *Doc) spot(x, y float64, number int) {
	white := Colour{R: 255, G: 255, B: 255}
	t := Type{Size: 8, Bold: true, Colour: white}
	black := Black
	d.RoundRect(x-spotRadius, y-spotRadius, 2*spotRadius, 2*spotRadius, spotRadius, Pen{Fill: &black, Stroke: &white, Width: 0.4})
	d.TextMiddle(x, y+t.CapHeight()/2, t, strconv.Itoa(number))
}
