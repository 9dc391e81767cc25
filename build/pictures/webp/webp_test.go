package webp

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"os"
	"sync"
	"testing"

	"github.com/tetratelabs/wazero"
)

func sumOf(data []byte) string { return fmt.Sprintf("%x", sha256.Sum256(data)) }

// The encoder is the file that was taken, with its licences.
func TestOrigin(t *testing.T) {
	for name, want := range map[string]string{
		"libwebp.wasm.gz": "bbcf68343d79d80ba4ce7bb29215b2943711bd0787f68ff31785c6e2bb044459",
		"LICENSE.libwebp": "5aec868f669e384a22372a4e8a1a6cd7d44c64cd451f960ca69cc170d1e13acf",
		"LICENSE.module":  "7ccd0e2f82eac9b87608576a9e559567f1ba049bebe709135eef3a9661bbc96e",
	} {
		if data, err := os.ReadFile(name); err != nil || sumOf(data) != want {
			t.Errorf("%s is another file: %s %v", name, sumOf(data), err)
		}
	}
	if sumOf(packed) != "bbcf68343d79d80ba4ce7bb29215b2943711bd0787f68ff31785c6e2bb044459" {
		t.Error("another file is embedded")
	}
}

// scene is a picture with slopes, edges and grain, made of whole numbers so that it
// is the same everywhere.
func scene(w, h int, seed uint32) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	grain := seed | 1
	for y := range h {
		for x := range w {
			grain ^= grain << 13
			grain ^= grain >> 17
			grain ^= grain << 5
			c := color.RGBA{byte(40 + x*180/w), byte(60 + y*150/h), byte(200 - x*y*160/(w*h)), 255}
			if dx, dy := x-w/3, y-h/2; dx*dx+dy*dy < h*h/9 {
				c = color.RGBA{210, byte(40 + y*60/h), 50, 255}
			}
			if (x/16+y/16)%7 == 0 {
				c = color.RGBA{250, 250, 245, 255}
			}
			c.R, c.G, c.B = c.R-byte(grain%8), c.G-byte(grain>>8%8), c.B-byte(grain>>16%8)
			m.SetRGBA(x, y, c)
		}
	}
	return m
}

func encoder(t testing.TB) *Encoder {
	t.Helper()
	e, err := Shared()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func encode(t testing.TB, e *Encoder, m *image.RGBA, quality int) []byte {
	t.Helper()
	data, err := e.Encode(context.Background(), m, quality)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// likeness is the ratio of the largest signal to the noise, in decibels.
func likeness(a, b image.Image) float64 {
	var square, n float64
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			p, q := color.RGBAModel.Convert(a.At(x, y)).(color.RGBA), color.RGBAModel.Convert(b.At(x, y)).(color.RGBA)
			for _, d := range []int{int(p.R) - int(q.R), int(p.G) - int(q.G), int(p.B) - int(q.B)} {
				square += float64(d * d)
				n++
			}
		}
	}
	return 10 * math.Log10(255*255*n/square)
}

// What the encoder makes is that picture, as near to it as the JPEG, in fewer
// bytes.
func TestEncode(t *testing.T) {
	m := scene(481, 333, 5)
	data := encode(t, encoder(t), m, 82)
	config, err := DecodeConfig(bytes.NewReader(data))
	if err != nil || config.Width != 481 || config.Height != 333 {
		t.Fatalf("%+v %v", config, err)
	}
	got, err := Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: 78}); err != nil {
		t.Fatal(err)
	}
	other, err := jpeg.Decode(bytes.NewReader(b.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	asWebP, asJPEG := likeness(m, got), likeness(m, other)
	t.Logf("WebP %d bytes, %.1f dB; JPEG %d bytes, %.1f dB", len(data), asWebP, b.Len(), asJPEG)
	if asWebP < asJPEG-1 || asWebP < 30 {
		t.Errorf("%.1f dB, and the JPEG has %.1f dB", asWebP, asJPEG)
	}
	if len(data)*100 > b.Len()*85 {
		t.Errorf("%d bytes, and the JPEG has %d", len(data), b.Len())
	}
}

// The same picture gives these bytes, on whatever machine, whether wazero compiles
// the encoder for this processor or goes through it step by step.
func TestTheSameBytesEverywhere(t *testing.T) {
	ctx := context.Background()
	slow, err := newEncoder(ctx, wazero.NewRuntimeConfigInterpreter())
	if err != nil {
		t.Fatal(err)
	}
	m := scene(96, 80, 3)
	for quality, want := range map[int]string{
		40: "b91b3660a328616408671cbc4dad61c2a2480534a6eb3a3bd953e85fa8574d78",
		82: "b3957fe8306e52e0bfe5048901726c480f7c00c66c93f3a4ff0166f3f04e545d",
	} {
		quick := encode(t, encoder(t), m, quality)
		if stepped := encode(t, slow, m, quality); !bytes.Equal(quick, stepped) {
			t.Errorf("quality %d: compiled and stepped through, the bytes differ", quality)
		}
		if got := sumOf(quick); got != want {
			t.Errorf("quality %d: the bytes have the sum %s, not %s", quality, got, want)
		}
	}
	if got, want := sumOf(encode(t, encoder(t), scene(481, 333, 5), 82)), "757b1615e05203808677318fdc25841df593a4b495f2f1de8a07c79ba28abbcd"; got != want {
		t.Errorf("the bytes have the sum %s, not %s", got, want)
	}
}

// Several can encode at once, and a part of a picture is encoded as if it were
// whole.
func TestSeveralAtOnce(t *testing.T) {
	e := encoder(t)
	var group sync.WaitGroup
	for i := range uint32(6) {
		m := scene(60+int(i), 50, i)
		want := encode(t, e, m, 70)
		around := image.NewRGBA(image.Rect(-3, -2, 90, 70))
		for y := range 50 {
			for x := range 60 + int(i) {
				around.SetRGBA(x, y, m.RGBAAt(x, y))
			}
		}
		part := around.SubImage(m.Bounds()).(*image.RGBA)
		for range 2 {
			group.Go(func() {
				if got, err := e.Encode(context.Background(), part, 70); err != nil || !bytes.Equal(got, want) {
					t.Errorf("picture %d is another one among others: %v", i, err)
				}
			})
		}
	}
	group.Wait()
}

func TestCannotBeEncoded(t *testing.T) {
	e := encoder(t)
	for name, c := range map[string]struct{ w, h, quality int }{
		"nothing": {0, 5, 80}, "too wide": {MaxSide + 1, 1, 80}, "too high": {1, MaxSide + 1, 80}, "too good": {5, 5, 101}, "too bad": {5, 5, -1},
	} {
		if data, err := e.Encode(context.Background(), image.NewRGBA(image.Rect(0, 0, c.w, c.h)), c.quality); err == nil {
			t.Errorf("%s: %d bytes", name, len(data))
		}
	}
	if data := encode(t, e, scene(MaxSide, 1, 1), 80); len(data) == 0 {
		t.Error("the widest picture is not encoded")
	}
}

// White is white and black is black, though neither is stored so.
func TestDecodeInFullRange(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 64, 32))
	for y := range 32 {
		for x := range 64 {
			m.Set(x, y, []color.Color{color.Black, color.White, color.RGBA{R: 255, A: 255}, color.RGBA{B: 255, A: 255}}[x/16])
		}
	}
	got, err := Decode(bytes.NewReader(encode(t, encoder(t), m, 100)))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []color.RGBA{{0, 0, 0, 255}, {255, 255, 255, 255}, {255, 0, 0, 255}, {0, 0, 255, 255}} {
		c := color.RGBAModel.Convert(got.At(16*i+8, 16)).(color.RGBA)
		for _, d := range []int{int(c.R) - int(want.R), int(c.G) - int(want.G), int(c.B) - int(want.B)} {
			if d < -4 || d > 4 {
				t.Errorf("%v came out as %v", want, c)
				break
			}
		}
	}
}

// What it costs to make the encoder ready, against one picture as wide as pages
// show them.
func BenchmarkEncoder(b *testing.B) {
	b.Run("ready", func(b *testing.B) {
		for b.Loop() {
			e, err := New(context.Background())
			if err != nil {
				b.Fatal(err)
			}
			if err := e.runtime.Close(context.Background()); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("picture", func(b *testing.B) {
		m := scene(960, 720, 9)
		e := encoder(b)
		for b.Loop() {
			encode(b, e, m, 82)
		}
	})
}
