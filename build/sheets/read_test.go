package sheets_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
)

// run gives what a program prints.
func run(t *testing.T, name string, words ...string) string {
	t.Helper()
	var problems bytes.Buffer
	c := exec.Command(name, words...)
	c.Stderr = &problems
	out, err := c.Output()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, words, err, problems.String())
	}
	return string(out)
}

// rendered gives the pages of a PDF as a printer of a resolution sees them.
func rendered(t *testing.T, file string, dpi, first, last int) []*image.Gray {
	t.Helper()
	dir := t.TempDir()
	run(t, "pdftoppm", "-r", fmt.Sprint(dpi), "-gray", "-f", fmt.Sprint(first), "-l", fmt.Sprint(last), file, filepath.Join(dir, "page"))
	names, err := filepath.Glob(filepath.Join(dir, "page-*.pgm"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no pages: %v", err)
	}
	slices.Sort(names)
	var pages []*image.Gray
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var width, height, top int
		if _, err := fmt.Fscanf(bytes.NewReader(data), "P5\n%d %d\n%d\n", &width, &height, &top); err != nil || top != 255 {
			t.Fatalf("%s: %v", name, err)
		}
		pages = append(pages, &image.Gray{Pix: data[len(data)-width*height:], Stride: width, Rect: image.Rect(0, 0, width, height)})
		if err := os.Remove(name); err != nil {
			t.Fatal(err)
		}
	}
	return pages
}

// cropped copies a part of a page; measures are in millimetres.
func cropped(page *image.Gray, dpi int, x, y, w, h float64) *image.Gray {
	px := func(mm float64) int { return int(mm * float64(dpi) / 25.4) }
	from := page.SubImage(image.Rect(px(x), px(y), px(x+w), px(y+h))).(*image.Gray)
	to := image.NewGray(image.Rect(0, 0, from.Rect.Dx(), from.Rect.Dy()))
	for row := range to.Rect.Dy() {
		copy(to.Pix[row*to.Stride:(row+1)*to.Stride], from.Pix[row*from.Stride:])
	}
	return to
}

// zbar reads pictures with zbar: what each holds, "" where nothing is read.
func zbar(t *testing.T, pictures []*image.Gray) []string {
	t.Helper()
	dir := t.TempDir()
	words := []string{"-q", "--xml", "-Sdisable", "-Sqrcode.enable", "--nodbus"}
	for i, p := range pictures {
		name := filepath.Join(dir, fmt.Sprintf("%04d.pgm", i))
		data := append(fmt.Appendf(nil, "P5\n%d %d\n255\n", p.Rect.Dx(), p.Rect.Dy()), p.Pix...)
		if err := os.WriteFile(name, data, 0o644); err != nil {
			t.Fatal(err)
		}
		words = append(words, name)
	}
	// It also ends with 4 where one picture of many holds nothing.
	out, err := exec.Command("zbarimg", words...).Output()
	if len(out) == 0 {
		t.Fatalf("zbarimg: %v", err)
	}
	var read struct {
		Sources []struct {
			Href    string   `xml:"href,attr"`
			Symbols []string `xml:"index>symbol>data"`
		} `xml:"source"`
	}
	if err := xml.Unmarshal(out, &read); err != nil {
		t.Fatalf("zbarimg: %v\n%s", err, out)
	}
	texts := make([]string, len(pictures))
	for _, s := range read.Sources {
		var i int
		if _, err := fmt.Sscanf(filepath.Base(s.Href), "%d.pgm", &i); err != nil {
			t.Fatal(err)
		}
		texts[i] = strings.Join(s.Symbols, " and ")
	}
	return texts
}

// second reads pictures with a decoder that has nothing in common with the
// first.
func second(pictures []*image.Gray) []string {
	texts := make([]string, len(pictures))
	hints := map[gozxing.DecodeHintType]interface{}{gozxing.DecodeHintType_TRY_HARDER: true}
	for i, p := range pictures {
		bitmap, err := gozxing.NewBinaryBitmapFromImage(p)
		if err != nil {
			continue
		}
		if result, err := qrcode.NewQRCodeReader().Decode(bitmap, hints); err == nil {
			texts[i] = result.GetText()
		}
	}
	return texts
}
