package pictures

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image/jpeg"
	"testing"
)

// fuzzPixels keeps a round of the fuzzer short.
const fuzzPixels = 1 << 18

// FuzzMake looks that whatever a file holds, it gives pictures in order or a
// refusal, and never a panic of our own.
func FuzzMake(f *testing.F) {
	f.Setenv("PATH", f.TempDir()) // no program of the machine is tried out
	photo, drawing := asJPEG(f, quadrants(48, 32)), asPNG(f, quadrants(48, 32))
	f.Add(photo)
	f.Add(drawing)
	f.Add(segments(photo, exifSegment(held(binary.LittleEndian, 5))))
	f.Add(chunks(drawing, chunk("eXIf", held(binary.BigEndian, 8))))
	f.Add(claiming(f, 64000, 64000))
	f.Add(boxed("heic", "mif1"))
	f.Add(asGIF(f))
	for _, name := range []string{"quadrants.webp", "quadrants-lossless.webp", "see-through.webp", "moving.webp"} {
		f.Add(read(f, name))
	}
	f.Add(extended(read(f, "quadrants.webp"), 48, 32, "EXIF", located()))
	f.Fuzz(func(t *testing.T, data []byte) {
		if tooMuch(data) {
			t.Skip()
		}
		made, err := Make("Fuzz 1.jpg", data)
		if err != nil {
			var refusal *Refusal
			if !errors.As(err, &refusal) || refusal.Summary == "" || refusal.Detail == "" {
				t.Fatalf("not a refusal: %v", err)
			}
			return
		}
		if len(made.Variants) == 0 {
			t.Fatal("no variants")
		}
		for _, v := range made.Variants {
			c, err := jpeg.DecodeConfig(bytes.NewReader(v.Data))
			if err != nil || c.Width != v.Width || c.Height != v.Height || v.Width > 960 {
				t.Fatalf("%s: %v, %v", v.Name, c, err)
			}
		}
	})
}

// tooMuch reports whether a file claims more pixels than a round has time for,
// yet few enough that they would be decoded.
func tooMuch(data []byte) bool {
	f := source{data: data}.format()
	if f == nil {
		return false
	}
	c, err := f.config(bytes.NewReader(data))
	pixels := int64(c.Width) * int64(c.Height)
	return err == nil && pixels > fuzzPixels && megapixels(c.Width, c.Height) <= maxMegapixels
}

// FuzzOrientation looks that no block, however damaged, leads the readers
// astray.
func FuzzOrientation(f *testing.F) {
	f.Add(held(binary.LittleEndian, 6))
	f.Add(segments(asJPEG(f, quadrants(8, 8)), exifSegment(held(binary.BigEndian, 3))))
	f.Add(chunks(asPNG(f, quadrants(8, 8)), chunk("eXIf", located())))
	f.Add(extended(read(f, "quadrants.webp"), 48, 32, "EXIF", located()))
	f.Fuzz(func(t *testing.T, data []byte) {
		blocks := [][]byte{data, jpegExif(data), pngExif(data), webpExif(data)}
		for _, block := range blocks {
			if o := tiffOrientation(block); o < 1 || o > 8 {
				t.Fatalf("orientation %d", o)
			}
		}
	})
}
