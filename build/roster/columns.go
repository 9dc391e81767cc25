package roster

import (
	_ "embed"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

//go:embed synonyms.en.toml
var synonyms []byte

// target is what a column stands for in a spec: code, body.height, tyres.rear.
type target struct {
	head   string             // as Export writes it
	name   string             // of what is fitted, body, staff, staff.own, or "" for the van itself
	key    string             // below that
	system *components.System // that the fitted thing is taken for, nil where a column says it
	unit   string             // from the heading, "" for none
}

// headings knows what headings may mean.
type headings struct {
	library *components.Library
	known   map[string][]target // by what people write, made plain
	names   []string            // of all of known
	duties  []string
	stated  map[string]bool               // fitted names of which a column of the table says the system
	alone   map[string]*components.System // systems by their own name, nil where several have it
}

func newHeadings(lib *components.Library, lang string) (*headings, problem.List) {
	h := &headings{library: lib, known: map[string][]target{}, duties: lib.StaffDates(), alone: map[string]*components.System{}}
	for _, s := range lib.Systems() {
		if base := path.Base(s.ID); s.ID != components.BodySystem {
			_, twice := h.alone[base]
			if h.alone[base] = s; twice {
				h.alone[base] = nil
			}
		}
		h.system(s, lang)
	}
	table, found := manifest.Parse("synonyms.en.toml", synonyms)
	r := manifest.NewReader(table, &found)
	for _, key := range r.Keys() {
		words, _ := r.Texts(key.Name)
		t, ok := h.exact(key.Name)
		if !ok {
			found.Errorf(key.Span, "unknown-name", "No such column", "%s", key.Name)
			continue
		}
		for _, word := range append(words, key.Name) {
			h.known[simple(word)] = []target{t} // what is written here counts alone
		}
	}
	for _, key := range slices.Concat(spec.StaffTexts, h.duties) {
		if name := simple(key); h.known[name] == nil {
			h.known[name] = []target{{head: "staff." + key, name: "staff", key: key}}
		}
	}
	for name := range h.known {
		h.names = append(h.names, name)
	}
	slices.Sort(h.names)
	return h, found
}

// system makes the facts of a system known by their names and words.
func (h *headings) system(s *components.System, lang string) {
	words := s.Words[lang]
	if words == nil {
		return
	}
	base := path.Base(s.ID)
	for i := range s.Facts {
		d := &s.Facts[i]
		t := target{head: base + "." + d.Name, name: base, key: d.Name, system: s}
		said := []string{base + " " + d.Name, words.Title + " " + d.Name, words.Title + " " + words.Facts[d.Name], words.Facts[d.Name]}
		if s.ID == components.BodySystem {
			t.head, t.name, t.system = "body."+d.Name, "body", s
			said = append(said, d.Name)
		}
		for _, text := range said {
			name := simple(text)
			if name != "" && !slices.ContainsFunc(h.known[name], func(o target) bool { return o.head == t.head }) {
				h.known[name] = append(h.known[name], t)
			}
		}
	}
}

// simple makes a heading plain: small letters and digits with single spaces.
func simple(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), " ")
}

// ofPlace are the keys of a place.
var ofPlace = []string{"side", "along", "up", "across"}

// ofAll are the keys that anything fitted may have besides its facts.
var ofAll = []string{"system", "label", "title", "note"}

// exact reads a heading as Export writes it.
func (h *headings) exact(head string) (target, bool) {
	if slices.Contains(first, head) {
		return target{head: head, key: head}, true
	}
	parts := strings.Split(head, ".")
	if len(parts) > 2 && parts[0] == "fitted" {
		parts = parts[1:]
	} else if len(parts) > 2 && parts[0] == "staff" && parts[1] == "own" {
		return target{head: head, name: "staff.own", key: strings.Join(parts[2:], ".")}, true
	} else if len(parts) == 2 && parts[0] == "staff" {
		return target{head: head, name: "staff", key: parts[1]}, slices.Contains(spec.StaffTexts, parts[1]) || slices.Contains(h.duties, parts[1])
	}
	if len(parts) < 2 || !spec.ValidName(parts[0]) && parts[0] != "body" {
		return target{}, false
	}
	t := target{head: head, name: parts[0], key: strings.Join(parts[1:], ".")}
	switch {
	case parts[0] == "body":
		t.system = h.library.System(components.BodySystem)
		return t, t.system != nil && t.system.Fact(t.key) != nil
	case len(parts) == 3:
		if !h.stated[t.name] {
			t.system = h.alone[t.name]
		}
		return t, parts[1] == "at" && slices.Contains(ofPlace, parts[2])
	case len(parts) > 3:
		return target{}, false
	}
	if h.stated[t.name] {
		return t, slices.Contains(ofAll, t.key) || factName.MatchString(t.key)
	}
	t.system = h.alone[t.name]
	return t, slices.Contains(ofAll, t.key) || t.system == nil && factName.MatchString(t.key) || t.system != nil && t.system.Fact(t.key) != nil
}

var factName = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)

// unitForms are the ways in which a heading ends in a unit: "Height (m)", "Height
// [m]", "Height in m", "Height, m", "Height m".
var unitForms = []*regexp.Regexp{
	regexp.MustCompile(`^(.*\S)\s*\(([^()]+)\)$`), regexp.MustCompile(`^(.*\S)\s*\[([^\[\]]+)\]$`),
	regexp.MustCompile(`^(.*\S)\s+in\s+(\S+)$`), regexp.MustCompile(`^(.*\S)\s*[,/]\s*(\S+)$`), regexp.MustCompile(`^(.*\S)\s+(\S+)$`),
}

// meaning is what a heading stands for. guessed tells that it is not as Export
// writes it; several that it could be any of these.
func (h *headings) meaning(head string) (t target, guessed bool, several []target) {
	for _, text := range []string{head, strings.ReplaceAll(strings.ToLower(head), " ", "_")} {
		if t, ok := h.exact(text); ok {
			return t, false, nil
		}
	}
	if found := h.known[simple(head)]; len(found) == 1 {
		return found[0], true, nil
	} else if len(found) > 1 {
		several = found
	}
	for _, form := range unitForms {
		m := form.FindStringSubmatch(head)
		if m == nil {
			continue
		}
		if t, ok := h.exact(m[1]); ok && h.hasUnit(t, m[2]) {
			t.unit = m[2]
			return t, false, nil
		}
		if found := h.known[simple(m[1])]; len(found) == 1 && h.hasUnit(found[0], m[2]) {
			t = found[0]
			t.unit = m[2]
			return t, true, nil
		}
	}
	return target{}, false, several
}

// hasUnit reports whether a text is a unit that a column can be in.
func (h *headings) hasUnit(t target, unit string) bool {
	if strings.HasPrefix(t.key, "at.") {
		return isUnit(unit, quantity.Length)
	}
	if t.system == nil {
		for _, dim := range quantity.Dimensions() { // which it is, a row tells
			if t.name != "" && !strings.HasPrefix(t.name, "staff") && isUnit(unit, dim) {
				return true
			}
		}
		return false
	}
	d := t.system.Fact(t.key)
	return d != nil && d.Type.Kind == fact.Quantity && isUnit(unit, d.Type.Dimension)
}

func isUnit(text string, dim quantity.Dimension) bool {
	return slices.Contains(quantity.Spellings(dim), strings.TrimSpace(text))
}

// nearest is the column that a heading is most like, "" for none.
func (h *headings) nearest(head string) string {
	name := problem.Nearest(simple(head), h.names)
	if name == "" {
		return ""
	}
	return fmt.Sprintf("%q (%s)", name, h.known[name][0].head)
}
