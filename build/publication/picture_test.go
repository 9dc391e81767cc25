package publication_test

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"os"
	"testing"

	"github.com/chromedp/chromedp"
)

const readmePicture = "../../testdata/pictures/readme.png"

// The picture in the README is what the tests' browser shows: the start of a
// van and the page of its gas locker. -update takes it again.
func TestReadmePicture(t *testing.T) {
	server := serve(t, demoSite(t))
	b := newBrowser(t, 390, 844)
	var shots []image.Image
	for _, page := range []string{"RW/", "RW/G1/", "RW/do/arriving/"} {
		b.run(t, emulateScheme("light"), chromedp.Navigate(server.URL+"/"+page))
		shot, err := png.Decode(bytes.NewReader(ask(t, b, chromedp.CaptureScreenshot())))
		if err != nil {
			t.Fatal(err)
		}
		shots = append(shots, shot)
	}
	const gap = 24
	joined := image.NewRGBA(image.Rect(0, 0, len(shots)*(390+gap)-gap, 844))
	for i, shot := range shots {
		draw.Draw(joined, shot.Bounds().Add(image.Pt(i*(390+gap), 0)), shot, image.Point{}, draw.Src)
	}
	if *update {
		var out bytes.Buffer
		if err := png.Encode(&out, joined); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(readmePicture, out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	file, err := os.Open(readmePicture)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	kept, err := png.DecodeConfig(file)
	if err != nil || kept.Width != joined.Bounds().Dx() || kept.Height != joined.Bounds().Dy() {
		t.Errorf("the README's picture is not what the browser shows any more (%v, %dx%d): run with -update", err, kept.Width, kept.Height)
	}
}
