package pictures

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"
	"image/color"
	"image/gif"
	"slices"
	"strings"
	"testing"
)

// claiming is a PNG whose header claims a size that the rest does not have.
func claiming(t testing.TB, w, h uint32) []byte {
	file := asPNG(t, quadrants(4, 4))
	body := append([]byte(nil), file[16:pngHeader-4]...)
	binary.BigEndian.PutUint32(body, w)
	binary.BigEndian.PutUint32(body[4:], h)
	return slices.Concat(file[:8], chunk("IHDR", body), file[pngHeader:])
}

func boxed(brands ...string) []byte {
	body := "ftyp" + brands[0] + "\x00\x00\x00\x00" + strings.Join(brands[1:], "")
	return append(binary.BigEndian.AppendUint32(nil, uint32(len(body)+4)), body+"\x00\x00\x00\x08mdat and so on"...)
}

func asGIF(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := gif.Encode(&b, image.NewPaletted(image.Rect(0, 0, 3, 2), color.Palette{color.Black}), nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// What cannot be used is refused with what is wrong and what to do.
func TestRefusals(t *testing.T) {
	fakeProgram(t, "", "") // what a HEIC is called where nothing reads it
	photo, drawing := asJPEG(t, quadrants(96, 64)), asPNG(t, quadrants(96, 64))
	webp := read(t, "quadrants.webp")
	flipped := slices.Clone(drawing)
	flipped[len(flipped)-20] ^= 0xff
	for _, c := range []struct {
		name string
		data []byte
		want []string // in the message
	}{
		{"empty.jpg", nil, []string{"empty", "Copy it again"}},
		{"huge.png", claiming(t, 64000, 64000), []string{"too large", "64000 by 64000", "4096 megapixels", "at most 64", "smaller copy"}},
		{"over.png", claiming(t, 8000, 8126), []string{"too large", "65 megapixels"}},
		{"wild.png", claiming(t, 1<<31-1, 1<<31-1), []string{"uncommon kind of PNG"}},
		{"heavy.jpg", append(slices.Clone(photo), make([]byte, MaxBytes)...), []string{"too large", "30 MB"}},
		{"strip.png", asPNG(t, quadrants(300, 20)), []string{"too long and narrow", "10 times"}},
		{"cut.jpg", photo[:len(photo)/2], []string{"not whole", "JPEG", "Copy it again"}},
		{"cut-early.jpg", photo[:6], []string{"not whole", "JPEG"}},
		{"cut.png", drawing[:len(drawing)-30], []string{"not whole", "PNG"}},
		{"cut.webp", webp[:len(webp)/2], []string{"WebP", "Copy it again"}},
		{"flipped.png", flipped, []string{"damaged", "PNG", "Copy it again"}},
		{"moving.webp", read(t, "moving.webp"), []string{"film", "one picture"}},
		{"photo.jpg", boxed("heic", "mif1", "heic"), []string{"HEIC", "save a copy as JPEG", "whatever its name ends in"}},
		{"photo.heic", boxed("mif1", "heix"), []string{"HEIC"}},
		{"photo.heif", boxed("mif1"), []string{"HEIC"}},
		{"new.avif", boxed("avif", "mif1", "avif"), []string{"AVIF", "JPEG, PNG and WebP"}},
		{"clip.mp4", boxed("isom", "iso2", "mp41"), []string{"a film", "one picture"}},
		{"drawing.gif", asGIF(t), []string{"a GIF", "JPEG, PNG and WebP", "save a copy as JPEG"}},
		{"drawing.jpg", asGIF(t), []string{"a GIF"}},
		{"scan.tif", []byte("II*\x00\x08\x00\x00\x00"), []string{"TIFF"}},
		{"notes.jpg", []byte("# Notes\n"), []string{"no picture", "JPEG, PNG and WebP"}},
	} {
		_, err := Make(c.name, c.data)
		var refusal *Refusal
		if !errors.As(err, &refusal) {
			t.Errorf("%s: no refusal but %v", c.name, err)
			continue
		}
		message := refusal.Error()
		t.Log(message)
		for _, want := range append(c.want, c.name) {
			if !strings.Contains(message, want) {
				t.Errorf("%s: %q does not say %q", c.name, message, want)
			}
		}
		if strings.HasSuffix(refusal.Summary, ".") || !strings.HasSuffix(refusal.Detail, ".") {
			t.Errorf("%s: %q and %q are not a phrase and sentences", c.name, refusal.Summary, refusal.Detail)
		}
	}
}

// A decoder that panics costs one picture, not the work on a fleet.
func TestPanicIsARefusal(t *testing.T) {
	f := format{decode: nil}
	if _, err := f.image([]byte("anything")); err == nil {
		t.Error("no error")
	}
}

// Wherever a file is cut off, it is refused.
func TestEveryCutIsRefused(t *testing.T) {
	photo := segments(asJPEG(t, quadrants(24, 16)), exifSegment(held(binary.BigEndian, 6)))
	for n := range len(photo) - 2 {
		var refusal *Refusal
		if _, err := Make("cut.jpg", photo[:n]); !errors.As(err, &refusal) {
			t.Errorf("cut to %d of %d: %v", n, len(photo), err)
		}
	}
}
