package pictures

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"os"
	"testing"
)

// The quarters of the sample picture, so that no turn leaves it as it was.
var (
	red   = color.RGBA{R: 255, A: 255}
	lime  = color.RGBA{G: 255, A: 255}
	blue  = color.RGBA{B: 255, A: 255}
	white = color.RGBA{R: 255, G: 255, B: 255, A: 255}
)

// quadrants is red, lime above blue, white.
func quadrants(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			row := []color.RGBA{red, lime}
			if y >= h/2 {
				row = []color.RGBA{blue, white}
			}
			m.SetRGBA(x, y, row[2*x/w])
		}
	}
	return m
}

func asJPEG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func asPNG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func read(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// tag is one entry of a block: its value in four bytes or an offset to more.
type tag struct {
	id, kind uint16
	count    uint32
	value    [4]byte
}

// directory writes a TIFF directory.
func directory(order binary.AppendByteOrder, tags ...tag) []byte {
	b := order.AppendUint16(nil, uint16(len(tags)))
	for _, t := range tags {
		b = order.AppendUint16(b, t.id)
		b = order.AppendUint16(b, t.kind)
		b = order.AppendUint32(b, t.count)
		b = append(b, t.value[:]...)
	}
	return order.AppendUint32(b, 0)
}

// head is how a block in an order of bytes begins; its first directory follows.
func head(order binary.AppendByteOrder) []byte {
	mark := "MM"
	if order == binary.AppendByteOrder(binary.LittleEndian) {
		mark = "II"
	}
	return order.AppendUint32(order.AppendUint16([]byte(mark), 42), 8)
}

// held is a block that says how the camera was held, after another entry.
func held(order binary.AppendByteOrder, o orientation) []byte {
	value := order.AppendUint16(nil, uint16(o))
	return append(head(order), directory(order,
		tag{id: 0x010f, kind: 2, count: 4, value: [4]byte{'o', 'w', 'n', 0}},
		tag{id: 0x0112, kind: 3, count: 1, value: [4]byte{value[0], value[1]}})...)
}

// segments puts segments right after the start of a JPEG.
func segments(file []byte, list ...[]byte) []byte {
	out := append([]byte(nil), file[:2]...)
	for _, s := range list {
		out = append(out, s...)
	}
	return append(out, file[2:]...)
}

func segment(kind byte, body []byte) []byte {
	return append(binary.BigEndian.AppendUint16([]byte{0xff, kind}, uint16(len(body)+2)), body...)
}

// exifSegment is a block as a JPEG holds it.
func exifSegment(block []byte) []byte { return segment(0xe1, append([]byte(exifHead), block...)) }

// chunk is a chunk of a PNG.
func chunk(kind string, body []byte) []byte {
	out := append(binary.BigEndian.AppendUint32(nil, uint32(len(body))), kind...)
	out = append(out, body...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(out[4:]))
}

// pngHeader is the size of the signature and the header of a PNG.
const pngHeader = 8 + 25

// chunks puts chunks right after the header of a PNG.
func chunks(file []byte, list ...[]byte) []byte {
	out := append([]byte(nil), file[:pngHeader]...)
	for _, c := range list {
		out = append(out, c...)
	}
	return append(out, file[pngHeader:]...)
}

// extended wraps the image of a simple WebP so that other chunks may follow.
func extended(file []byte, w, h int, kind string, body []byte) []byte {
	riff := func(kind string, body []byte) []byte {
		out := append(binary.LittleEndian.AppendUint32([]byte(kind), uint32(len(body))), body...)
		if len(body)%2 == 1 {
			out = append(out, 0)
		}
		return out
	}
	canvas := []byte{1 << 3, 0, 0, 0, byte(w - 1), byte((w - 1) >> 8), 0, byte(h - 1), byte((h - 1) >> 8), 0}
	all := append([]byte("WEBP"), riff("VP8X", canvas)...)
	all = append(append(all, file[12:]...), riff(kind, body)...)
	return append(binary.LittleEndian.AppendUint32([]byte("RIFF"), uint32(len(all))), all...)
}

// mustMake makes a picture that is in order and decodes its variants.
func mustMake(t testing.TB, name string, data []byte) (Made, []image.Image) {
	t.Helper()
	return mustMakeBy(t, MakeJPEG, name, data)
}

// mustMakeBoth is mustMake with variants in WebP too.
func mustMakeBoth(t testing.TB, name string, data []byte) (Made, []image.Image) {
	t.Helper()
	return mustMakeBy(t, Make, name, data)
}

func mustMakeBy(t testing.TB, how func(string, []byte) (Made, error), name string, data []byte) (Made, []image.Image) {
	t.Helper()
	made, err := how(name, data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if len(made.Variants) == 0 {
		t.Fatalf("%s: no variants", name)
	}
	var all []image.Image
	for _, v := range made.Variants {
		m, err := jpeg.Decode(bytes.NewReader(v.Data))
		if err != nil {
			t.Fatalf("%s: %s: %v", name, v.Name, err)
		}
		if size := m.Bounds().Size(); size != image.Pt(v.Width, v.Height) {
			t.Errorf("%s: %s is %v, not %dx%d", name, v.Name, size, v.Width, v.Height)
		}
		all = append(all, m)
	}
	return made, all
}

// near reports whether two colours look alike after JPEG.
func near(a, b color.Color) bool {
	ar, ag, ab, _ := a.RGBA()
	br, bg, bb, _ := b.RGBA()
	apart := func(x, y uint32) bool { return max(x, y)-min(x, y) > 0x2800 }
	return !apart(ar, br) && !apart(ag, bg) && !apart(ab, bb)
}
