package paper

import (
	"bytes"
	"crypto/sha256"
	"fmt"

	"codeberg.org/go-pdf/fpdf"
)

// Photo is a photograph in the middle of the column.
type Photo struct {
	JPEG          []byte
	Wide, High    int     // pixels
	Width, Height float64 // the most it may take, millimetres
}

func (p Photo) pieces(_ *Doc, width float64) []piece {
	w := min(p.Width, width, p.Height*float64(p.Wide)/float64(p.High))
	h := w * float64(p.High) / float64(p.Wide)
	return []piece{{height: h + 1, draw: func(d *Doc, x, y float64) {
		name := fmt.Sprintf("%x", sha256.Sum256(p.JPEG))
		options := fpdf.ImageOptions{ImageType: "JPEG"}
		d.pdf.RegisterImageOptionsReader(name, options, bytes.NewReader(p.JPEG))
		d.pdf.ImageOptions(name, x+(width-w)/2, y, w, h, false, options, 0, "")
	}}}
}
