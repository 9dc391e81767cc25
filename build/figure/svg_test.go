package figure_test

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// svg is a drawing as a test sees it: read back from what was written.
type svg struct {
	width, height float64
	elements      []element
	plates        []plate
}

type element struct {
	name  string
	attrs map[string]string
}

// plate is one plate with its middle; kind is its class without "plate".
type plate struct {
	box
	code, title, href, kind string
}

type box struct{ left, top, right, bottom float64 }

func (b box) middle() (x, y float64) { return (b.left + b.right) / 2, (b.top + b.bottom) / 2 }

func overlap(a, b box) bool {
	return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

// read parses a drawing strictly, so that it must be well-formed.
func read(t *testing.T, text string) svg {
	t.Helper()
	var s svg
	var open *plate
	inTitle, inText := false, false
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, text)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{token.Name.Local, map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			s.elements = append(s.elements, e)
			inTitle, inText = e.name == "title", e.name == "text"
			switch class := e.attrs["class"]; {
			case e.name == "svg":
				box := numbers(t, e.attrs["viewBox"])
				s.width, s.height = box[2], box[3]
			case strings.HasPrefix(class, "plate"):
				open = &plate{href: e.attrs["href"], kind: strings.TrimSpace(strings.TrimPrefix(class, "plate"))}
			case e.name == "rect" && open != nil && open.right == 0:
				open.box = e.box(t)
			}
		case xml.CharData:
			switch {
			case open != nil && inTitle:
				open.title += string(token)
			case open != nil && inText:
				open.code += string(token)
			}
		case xml.EndElement:
			inTitle, inText = false, false
			if name := token.Name.Local; open != nil && (name == "a" || name == "g") {
				s.plates = append(s.plates, *open)
				open = nil
			}
		}
	}
	return s
}

func (e element) box(t *testing.T) box {
	t.Helper()
	x, y := e.number(t, "x"), e.number(t, "y")
	return box{x, y, x + e.number(t, "width"), y + e.number(t, "height")}
}

func (e element) number(t *testing.T, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(e.attrs[name], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", name, e, err)
	}
	return v
}

// bounds is the room that an element takes, as far as its numbers tell.
func (e element) bounds(t *testing.T) (b box, ok bool) {
	t.Helper()
	switch {
	case e.name == "rect":
		return e.box(t), true
	case e.name == "circle":
		x, y, r := e.number(t, "cx"), e.number(t, "cy"), e.number(t, "r")
		return box{x - r, y - r, x + r, y + r}, true
	case e.name == "text" && e.attrs["x"] != "":
		x, y := e.number(t, "x"), e.number(t, "y")
		return box{x, y, x, y}, true
	case e.name == "path":
		n := numbers(t, letters.ReplaceAllString(e.attrs["d"], " "))
		b = box{n[0], n[1], n[0], n[1]}
		for i := 0; i+1 < len(n); i += 2 {
			b.left, b.right = min(b.left, n[i]), max(b.right, n[i])
			b.top, b.bottom = min(b.top, n[i+1]), max(b.bottom, n[i+1])
		}
		return b, true
	}
	return box{}, false
}

var letters = regexp.MustCompile(`[MLQZ]`)

func numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var all []float64
	for _, word := range strings.Fields(text) {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil || v != v || v > 1e6 || v < -1e6 {
			t.Fatalf("%q is no coordinate", word)
		}
		all = append(all, v)
	}
	return all
}

// find gives the elements of a class.
func (s svg) find(class string) []element {
	var found []element
	for _, e := range s.elements {
		if e.attrs["class"] == class {
			found = append(found, e)
		}
	}
	return found
}

// hull is the room that the body takes.
func (s svg) hull(t *testing.T) box {
	t.Helper()
	b, _ := s.find("hull")[0].bounds(t)
	return b
}

// inside reports whether everything drawn lies in the drawing.
func (s svg) inside(t *testing.T) bool {
	t.Helper()
	for _, e := range s.elements {
		if b, ok := e.bounds(t); ok && (b.left < 0 || b.top < 0 || b.right > s.width || b.bottom > s.height) {
			t.Errorf("%v leaves the drawing of %v by %v", e, s.width, s.height)
			return false
		}
	}
	return true
}
