package webp

import (
	"image"
	"io"
	"math"

	"golang.org/x/image/webp"
)

// DecodeConfig gives the size of a picture.
func DecodeConfig(r io.Reader) (image.Config, error) { return webp.DecodeConfig(r) }

// Decode reads a picture. The decoder of x/image hands out lossy pictures with
// brightness from 16 to 235, as they are stored (ITU-R BT.601), which image.YCbCr
// takes for 0 to 255: white would be grey.
func Decode(r io.Reader) (image.Image, error) {
	m, err := webp.Decode(r)
	switch m := m.(type) {
	case *image.YCbCr:
		widen(m)
	case *image.NYCbCrA:
		widen(&m.YCbCr)
	}
	return m, err
}

// widen stretches brightness and colours to all of their range.
func widen(m *image.YCbCr) {
	for plane, table := range map[*[]byte]*[256]byte{&m.Y: &bright, &m.Cb: &colour, &m.Cr: &colour} {
		for i, v := range *plane {
			(*plane)[i] = table[v]
		}
	}
}

// The ranges of BT.601: 219 steps of brightness above 16, and 224 of colour about
// 128.
var (
	bright = stretched(16, 219, 0)
	colour = stretched(128, 224, 128)
)

func stretched(from, steps, to float64) (table [256]byte) {
	for v := range table {
		table[v] = byte(max(0, min(255, math.Round((float64(v)-from)*255/steps+to))))
	}
	return table
}
