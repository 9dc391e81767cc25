package paper_test

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"doorpocket/build/label"
	"doorpocket/build/paper"
	"doorpocket/layouts"
)

func stock(t testing.TB) *paper.Stock {
	t.Helper()
	s, err := paper.Open(layouts.Files())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// write ends a document and gives its file.
func write(t *testing.T, d *paper.Doc) string {
	t.Helper()
	var b bytes.Buffer
	if err := d.Write(&b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "page.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// run gives what a program prints.
func run(t *testing.T, name string, words ...string) string {
	t.Helper()
	out, err := exec.Command(name, words...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, words, err, out)
	}
	return string(out)
}

// The font and its licence are the files that ORIGIN.md speaks of.
func TestFontIsUnchanged(t *testing.T) {
	dir := "thirdparty/opensans/"
	sums, err := fs.ReadFile(layouts.Files(), dir+"SHA256SUMS")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for line := range strings.Lines(string(sums)) {
		f := strings.Fields(line)
		data, err := fs.ReadFile(layouts.Files(), dir+f[1])
		if err != nil {
			t.Fatal(err)
		}
		if got := fmt.Sprintf("%x", sha256.Sum256(data)); got != f[0] {
			t.Errorf("%s is %s", f[1], got)
		}
		n++
	}
	if n != 3 {
		t.Errorf("%d files, wanted two weights and the licence", n)
	}
}

const manySigns = "Größe 3,05 m · 21 °C · 5 € · naïve Škoda Łódź őű · Ωμέγα · Ёлка · 10 ft 2 in · ≈ ≥ ½ “quoted” – — …"

// Text can be copied out as it was put in, whatever letters it has.
func TestTextCanBeCopied(t *testing.T) {
	d := stock(t).New(paper.About{Title: "Prüfung", Lang: "en"})
	d.Page(paper.A4)
	d.Text(10, 20, paper.Type{Size: 9}, manySigns)
	d.Text(10, 30, paper.Type{Size: 9, Bold: true}, manySigns)
	file := write(t, d)
	for n, line := range strings.Split(strings.TrimSpace(run(t, "pdftotext", "-raw", file, "-")), "\n") {
		if n < 2 && line != manySigns {
			t.Errorf("copied %q, wanted %q", line, manySigns)
		}
	}
	fonts := run(t, "pdffonts", file)
	if n := strings.Count(fonts, "CID TrueType      Identity-H       yes"); n != 2 {
		t.Errorf("%d embedded fonts:\n%s", n, fonts)
	}
	run(t, "qpdf", "--check", file)
}

// A character that the font lacks is named; nothing is printed in its place.
func TestMissingGlyph(t *testing.T) {
	d := stock(t).New(paper.About{})
	d.Page(paper.A4)
	d.Text(10, 20, paper.Type{Size: 9}, "van 車")
	var missing *paper.GlyphError
	if err := d.Write(&bytes.Buffer{}); !errors.As(err, &missing) || missing.Char != '車' {
		t.Fatalf("got %v", err)
	}
	if !strings.Contains(missing.Error(), "U+8ECA") {
		t.Errorf("%v does not name the character", missing)
	}
}

// everything draws one of each kind.
func everything(t *testing.T) *paper.Doc {
	d := stock(t).New(paper.About{Title: "All", Lang: "en", Date: time.Date(2026, 10, 2, 0, 0, 0, 0, time.UTC)})
	d.Page(paper.A5)
	symbol, err := label.NewSymbol("HTTPS://GUIDE.EXAMPLE/RW/G1/", label.LevelQ)
	if err != nil {
		t.Fatal(err)
	}
	d.QR(symbol, 10, 10, 40)
	d.Sign("W021", 60, 10, 20)
	d.RoundRect(10, 60, 30, 20, 3, paper.Lined(paper.Black, 0.3))
	d.Text(10, 90, paper.Type{Size: 12, Bold: true, Colour: paper.Grey}, "Words")
	return d
}

// The same drawing gives the same bytes, wherever and whenever.
func TestReproducible(t *testing.T) {
	var first, second bytes.Buffer
	if err := everything(t).Write(&first); err != nil {
		t.Fatal(err)
	}
	t.Setenv("TZ", "Pacific/Auckland")
	if err := everything(t).Write(&second); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two drawings differ")
	}
}

// Viewers are told not to scale, and the file says its day and its language.
func TestWhatAFileSays(t *testing.T) {
	file := write(t, everything(t))
	plain := run(t, "qpdf", "--qdf", "--object-streams=disable", file, "-")
	for _, want := range []string{"/PrintScaling /None", "/Lang (en)", "(D:20261002000000", "/ID ["} {
		if !strings.Contains(plain, want) {
			t.Errorf("no %s", want)
		}
	}
	if info := run(t, "pdfinfo", file); !strings.Contains(info, "419.53 x 595.28 pts") {
		t.Errorf("not A5:\n%s", info)
	}
}

// A sign that is not there is an error.
func TestUnknownSign(t *testing.T) {
	d := stock(t).New(paper.About{})
	d.Page(paper.A4)
	d.Sign("W999", 0, 0, 10)
	if d.Err() == nil {
		t.Error("no error")
	}
}

// A line of wrapped text is as wide as it may be and no wider; a no-break
// space holds words together.
func TestWrap(t *testing.T) {
	d := stock(t).New(paper.About{})
	ty := paper.Type{Size: 10}
	lines := d.Wrap(ty, "Help: +44\u00a01632\u00a0960178 at any hour of the day", 30)
	for _, l := range lines {
		if d.Width(ty, l) > 30 {
			t.Errorf("%q is %.1f mm wide", l, d.Width(ty, l))
		}
	}
	if lines[1] != "+44\u00a01632\u00a0960178" {
		t.Errorf("lines %q", lines)
	}
}
