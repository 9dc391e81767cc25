package pictures

import (
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"testing"
)

// uprightCorners is what stands in the top left, top right, bottom left and
// bottom right of the sample once it is upright, by how it was held.
var uprightCorners = map[orientation][4]color.RGBA{
	1: {red, lime, blue, white},
	2: {lime, red, white, blue},
	3: {white, blue, lime, red},
	4: {blue, white, red, lime},
	5: {red, blue, lime, white},
	6: {blue, red, white, lime},
	7: {white, lime, blue, red},
	8: {lime, white, red, blue},
}

func checkCorners(t *testing.T, what string, m image.Image, o orientation) {
	t.Helper()
	size := m.Bounds().Size()
	wide := size.X > size.Y
	if wide == o.turned() {
		t.Errorf("%s: is %v after orientation %d", what, size, o)
	}
	for i, want := range uprightCorners[o] {
		x, y := size.X/4+i%2*size.X/2, size.Y/4+i/2*size.Y/2
		if got := m.At(x, y); !near(got, want) {
			t.Errorf("%s, orientation %d: quarter %d is %v, want %v", what, o, i, got, want)
		}
	}
}

// Every way to hold a camera, in every format, in either order of bytes, small
// enough to stay as it is and large enough to be scaled twice.
func TestUpright(t *testing.T) {
	small, large := asJPEG(t, quadrants(48, 32)), asJPEG(t, quadrants(1536, 1024))
	for o := orientation(1); o <= 8; o++ {
		for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
			block := held(order, o)
			files := map[string][]byte{
				"small.jpg":     segments(small, exifSegment(block)),
				"large.jpg":     segments(large, segment(0xe0, []byte("JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00")), exifSegment(block)),
				"padded.jpg":    segments(small, segment(0xe1, []byte("http://other.example\x00")), []byte{0xff, 0xff}, exifSegment(block)),
				"before.png":    chunks(asPNG(t, quadrants(48, 32)), chunk("eXIf", block)),
				"lossy.webp":    extended(read(t, "quadrants.webp"), 48, 32, "EXIF", block),
				"lossless.webp": extended(read(t, "quadrants-lossless.webp"), 48, 32, "EXIF", append([]byte(exifHead), block...)),
			}
			for name, data := range files {
				made, images := mustMake(t, name, data)
				if want := map[bool]int{true: 2, false: 1}[name == "large.jpg"]; len(images) != want {
					t.Errorf("%s: %d variants, want %d", name, len(images), want)
				}
				for i, m := range images {
					checkCorners(t, fmt.Sprintf("%s at %d (%s)", name, made.Variants[i].Width, order), m, o)
				}
			}
		}
	}
}

// A block that makes no sense leaves the picture as it is stored.
func TestOrientationOfDamagedBlocks(t *testing.T) {
	le := binary.LittleEndian
	good := held(le, 6)
	far := append([]byte(nil), good...)
	le.PutUint32(far[4:], 0xfffffff0)
	many := append([]byte(nil), good...)
	le.PutUint16(many[8:], 0xffff)
	blocks := map[string][]byte{
		"empty": nil, "short": good[:7], "only a head": good[:8], "half an entry": good[:30],
		"directory far away": far, "other magic": append([]byte("II\x2b\x00"), good[4:]...),
		"value 0": held(le, 0), "value 9": held(le, 9),
		"of another type": append(head(le), directory(le, tag{id: 0x0112, kind: 2, count: 1, value: [4]byte{6}})...),
	}
	for name, block := range blocks {
		if o := tiffOrientation(block); o != upright {
			t.Errorf("%s: orientation %d", name, o)
		}
	}
	if o := tiffOrientation(many); o != 6 {
		t.Errorf("a count beyond the block hides the entry: %d", o)
	}
}
