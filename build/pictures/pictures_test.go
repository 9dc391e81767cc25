package pictures

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/pictures/webp"
)

// Sizes: never enlarged, no size twice, and the sides keep their proportion.
func TestSizes(t *testing.T) {
	for _, c := range []struct {
		whole image.Point
		want  []image.Point
	}{
		{image.Pt(4032, 3024), []image.Point{{480, 360}, {960, 720}}},
		{image.Pt(3024, 4032), []image.Point{{480, 640}, {960, 1280}}},
		{image.Pt(960, 640), []image.Point{{480, 320}, {960, 640}}},
		{image.Pt(700, 467), []image.Point{{480, 320}, {700, 467}}},
		{image.Pt(480, 360), []image.Point{{480, 360}}},
		{image.Pt(300, 200), []image.Point{{300, 200}}},
		{image.Pt(1, 1), []image.Point{{1, 1}}},
		{image.Pt(9600, 960), []image.Point{{480, 48}, {960, 96}}},
	} {
		if diff := cmp.Diff(c.want, sizes(c.whole)); diff != "" {
			t.Errorf("%v: %s", c.whole, diff)
		}
	}
}

// Names are made from content alone: the same for the same, whatever the file is
// called, another for another.
func TestVariants(t *testing.T) {
	data := asJPEG(t, quadrants(1200, 800))
	made, images := mustMakeBoth(t, "Gas Locker (Ünder).JPG", data)
	if len(made.Variants) != 2 || made.Largest().Width != 960 {
		t.Fatalf("variants: %v", made.Variants)
	}
	for end, variants := range map[string][]Variant{".jpg": made.Variants, ".webp": made.Modern} {
		sum := sha256.New()
		for _, v := range variants {
			sum.Write(v.Data)
		}
		for _, v := range variants {
			if want := fmt.Sprintf("%x-%d%s", sum.Sum(nil)[:8], v.Width, end); v.Name != want {
				t.Errorf("%s, want %s", v.Name, want)
			}
		}
	}
	for i, v := range made.Variants {
		checkCorners(t, v.Name, images[i], upright)
	}
	again, _ := mustMakeBoth(t, "RW/Ann in May, 3 Mill Lane.jpeg", data)
	if diff := cmp.Diff(made, again); diff != "" {
		t.Errorf("the same file gives another picture: %s", diff)
	}
	other, _ := mustMakeBoth(t, "Gas Locker (Ünder).JPG", asJPEG(t, quadrants(1200, 802)))
	if other.Variants[0].Name == made.Variants[0].Name {
		t.Error("another picture has the same name")
	}
}

// Beside every JPEG stands a WebP of the same size in fewer bytes, of the same
// image; a phone keeps the largest of them.
func TestModern(t *testing.T) {
	for name, o := range map[string]orientation{"a.jpg": upright, "b.jpg": 6} {
		made, _ := mustMakeBoth(t, name, segments(asJPEG(t, quadrants(1200, 800)), exifSegment(held(binary.LittleEndian, o))))
		if len(made.Modern) != 2 || made.Kept().Name != made.Modern[1].Name || len(made.All()) != 4 {
			t.Fatalf("%s: %d in WebP, kept %s", name, len(made.Modern), made.Kept().Name)
		}
		for i, v := range made.Modern {
			jpeg := made.Variants[i]
			m, err := webp.Decode(bytes.NewReader(v.Data))
			if err != nil || m.Bounds().Size() != image.Pt(v.Width, v.Height) || v.Width != jpeg.Width || v.Height != jpeg.Height || len(v.Data) >= len(jpeg.Data) {
				t.Errorf("%s: %dx%d, %d bytes, %v; the JPEG has %d bytes", v.Name, v.Width, v.Height, len(v.Data), err, len(jpeg.Data))
				continue
			}
			checkCorners(t, v.Name, m, o)
		}
	}
}

// Noise is no smaller in WebP: then there is none.
func TestNoLargerInWebP(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 500, 300))
	random := rand.New(rand.NewPCG(1, 2))
	for i := range m.Pix {
		m.Pix[i] = byte(random.IntN(256)) | byte(i%4/3*255)
	}
	made, _ := mustMakeBoth(t, "noise.png", asPNG(t, m))
	if len(made.Modern) != 0 || made.Kept().Name != made.Largest().Name {
		t.Errorf("%d variants in WebP, kept %s", len(made.Modern), made.Kept().Name)
	}
}

// Without WebP the JPEG is the same, and pages can be weighed as if there were
// both.
func TestJPEGAlone(t *testing.T) {
	data := asJPEG(t, quadrants(1200, 800))
	both, _ := mustMakeBoth(t, "box.jpg", data)
	alone, err := MakeJPEG("box.jpg", data)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(both.Variants, alone.Variants); diff != "" || alone.Modern != nil {
		t.Error(diff, alone.Modern)
	}
	supposed := alone.Supposed()
	for i, v := range supposed.Modern {
		want := both.Modern[i]
		if len(v.Name) != len(want.Name) || v.Width != want.Width || v.Height != want.Height || v.Data != nil {
			t.Errorf("%+v in the place of %s", v, want.Name)
		}
	}
	if len(supposed.Modern) != 2 || len(alone.Modern) != 0 {
		t.Errorf("%d and %d in WebP", len(supposed.Modern), len(alone.Modern))
	}
}

// Where one can see through a picture there is white, in either format, and
// half through half white.
func TestFlattenedOntoWhite(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 48, 32))
	for y := range 32 {
		for x := range 48 {
			switch {
			case x >= 24 && y < 16:
				m.SetNRGBA(x, y, color.NRGBA{R: 255, A: 255})
			case x < 24 && y >= 16:
				m.SetNRGBA(x, y, color.NRGBA{B: 255, A: 128})
			}
		}
	}
	large := image.NewNRGBA(image.Rect(0, 0, 960, 640))
	for y := range 640 {
		for x := range 960 {
			large.SetNRGBA(x, y, m.NRGBAAt(x/20, y/20))
		}
	}
	half := color.RGBA{R: 127, G: 127, B: 255, A: 255}
	for name, data := range map[string][]byte{"a.png": asPNG(t, m), "b.png": asPNG(t, large), "c.webp": read(t, "see-through.webp")} {
		_, images := mustMake(t, name, data)
		for _, made := range images {
			size := made.Bounds().Size()
			for i, want := range []color.Color{white, red, half, white} {
				if got := made.At(size.X/4+i%2*size.X/2, size.Y/4+i/2*size.Y/2); !near(got, want) {
					t.Errorf("%s at %v: quarter %d is %v, want %v", name, size, i, got, want)
				}
			}
		}
	}
}

// The content says what a file is, not what its name ends in.
func TestContentDecides(t *testing.T) {
	files := map[string][]byte{
		"a.png": asJPEG(t, quadrants(48, 32)), "a.jpg": asPNG(t, quadrants(48, 32)),
		"a.gif": read(t, "quadrants.webp"), "a": read(t, "quadrants-lossless.webp"),
	}
	for name, data := range files {
		_, images := mustMake(t, name, data)
		checkCorners(t, name, images[0], upright)
	}
}

// Images of every kind that the decoders give can be made small.
func TestKindsOfImages(t *testing.T) {
	bounds := image.Rect(0, 0, 1200, 800)
	kinds := map[string][]byte{
		"grey.jpg": asJPEG(t, image.NewGray(bounds)), "grey.png": asPNG(t, image.NewGray16(bounds)),
		"palette.png": asPNG(t, image.NewPaletted(bounds, color.Palette{color.White, color.Transparent})),
		"deep.png":    asPNG(t, image.NewNRGBA64(bounds)),
	}
	for name, data := range kinds {
		if made, _ := mustMake(t, name, data); made.Largest().Width != 960 {
			t.Errorf("%s: %d wide", name, made.Largest().Width)
		}
	}
}

// BenchmarkMake makes a photograph of 12 megapixels with fine detail.
func BenchmarkMake(b *testing.B) {
	m := image.NewRGBA(image.Rect(0, 0, 4032, 3024))
	for i := range m.Pix {
		m.Pix[i] = byte(i>>3 ^ i>>13 ^ i*i>>7)
	}
	data := segments(asJPEG(b, m), exifSegment(located()))
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := Make("bench.jpg", bytes.Clone(data)); err != nil {
			b.Fatal(err)
		}
	}
}
