// Package booklets keeps booklets.toml: which printed booklet lies in which van,
// so that one can see whose has gone out of date.
package booklets

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"doorpocket/build/label"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// File is where a fleet folder notes its booklets.
const File = "booklets.toml"

// opening is what a new file begins with.
const opening = `# Which printed booklet lies in which van: doorpocket print booklet --on DAY enters
# it. Take out the line of a van whose booklet is gone. The staff's pages compare
# edition with what the guide says today.

`

// Booklet is a printed booklet.
type Booklet struct {
	Van      string
	Revision string // as it stands at the foot of its pages
	Edition  string // what the guide said then, in the main language
	On       manifest.Date
	At       problem.Span // of the entry's value
}

// List is the booklets of a fleet. The zero List is empty.
type List struct {
	byVan map[string]Booklet
	table *manifest.Table
}

// Of finds the booklet of a van.
func (l *List) Of(van string) (Booklet, bool) {
	if l == nil {
		return Booklet{}, false
	}
	b, ok := l.byVan[van]
	return b, ok
}

// Vans lists the codes of the vans with a booklet, in order.
func (l *List) Vans() []string {
	if l == nil {
		return nil
	}
	return slices.Sorted(maps.Keys(l.byVan))
}

var (
	revisionForm = regexp.MustCompile(`^[2-9A-HJ-NP-Z]{6}$`)
	editionForm  = regexp.MustCompile(`^[0-9a-f]{12}$`)
)

// Parse reads the file. The list is nil where it cannot be relied on.
func Parse(name string, data []byte) (*List, problem.List) {
	table, found := manifest.Parse(name, data)
	if table == nil {
		return nil, found
	}
	l := &List{byVan: map[string]Booklet{}, table: table}
	r := manifest.NewReader(table, &found)
	if r.Has("booklet") && !strings.HasPrefix(r.Source().Text(r.Span("booklet")), "[") {
		r.ProblemAt(r.KeySpan("booklet"), "no-header", "No header above booklet", "Write [booklet] on a line of its own, and below it one line a van.")
	}
	vans := r.Table("booklet")
	for code, b := range vans.EachTable() {
		if !label.ValidVan(code) {
			b.ProblemAt(b.At(), "bad-code", fmt.Sprintf("%q is no van code", code), "Write the code of the van as in its spec.")
		}
		if !strings.HasPrefix(r.Source().Text(vans.Span(code)), "{") {
			b.ProblemAt(b.At(), "no-line", "The booklet of a van does not stand on one line", fmt.Sprintf(`Write %s = { revision = "K7M2PX", edition = "...", on = 2027-03-14 } below [booklet].`, code))
		}
		made := Booklet{Van: code, At: vans.Span(code)}
		made.Revision = formed(b, "revision", revisionForm, "the six capitals and digits at the foot of its pages")
		made.Edition = formed(b, "edition", editionForm, "the twelve digits and letters that print booklet entered")
		made.On, _ = b.Date("on", manifest.Required)
		l.byVan[code] = made
	}
	r.Done()
	if found.HasErrors() {
		return nil, found
	}
	return l, found
}

func formed(r *manifest.Reader, key string, form *regexp.Regexp, what string) string {
	text, ok := r.Text(key, manifest.Required)
	if ok && !form.MatchString(text) {
		r.Problem(key, "bad-revision", fmt.Sprintf("%q is no %s of a booklet", text, key), "Write "+what+".")
	}
	return text
}

// value is an entry as the file has it.
func (b Booklet) value() string {
	return fmt.Sprintf("{ revision = %q, edition = %q, on = %s }", b.Revision, b.Edition, b.On)
}

// Enter gives the text of a file with more booklets, each in the place of the
// van's earlier one: data as it was read, nil for no file yet. Nothing else
// changes. What comes out has been read back.
func Enter(data []byte, more []Booklet) ([]byte, error) {
	text := string(data)
	if data == nil {
		text = opening
	}
	for _, b := range more {
		list, found := Parse(File, []byte(text))
		if list == nil {
			return nil, fmt.Errorf("%s", found[0])
		}
		text = enter(text, list, b)
	}
	list, found := Parse(File, []byte(text))
	for _, b := range more {
		if list == nil {
			return nil, fmt.Errorf("%s would be broken: %s", File, found[0])
		}
		if now, _ := list.Of(b.Van); now.value() != b.value() {
			return nil, fmt.Errorf("%s: the entry of %s could not be written", File, b.Van)
		}
	}
	return []byte(text), nil
}

func enter(text string, list *List, b Booklet) string {
	lines := strings.SplitAfter(text, "\n")
	if before, ok := list.Of(b.Van); ok {
		at := before.At
		line := []rune(lines[at.Start.Line-1])
		lines[at.Start.Line-1] = string(line[:at.Start.Column-1]) + b.value() + string(line[at.Start.Column-1+at.Length:])
		return strings.Join(lines, "")
	}
	end := "\n"
	if strings.HasSuffix(lines[0], "\r\n") {
		end = "\r\n"
	}
	entry := b.Van + " = " + b.value() + end
	below := 0 // the line that the new one comes after
	for _, code := range list.Vans() {
		if code < b.Van {
			below = max(below, list.byVan[code].At.Start.Line)
		}
	}
	if below == 0 {
		if e, ok := header(list.table); ok {
			below = e
		}
	}
	if below == 0 {
		if last := lines[len(lines)-1]; last != "" {
			lines = append(lines, end)
		}
		return strings.Join(lines, "") + "[booklet]" + end + entry
	}
	if !strings.HasSuffix(lines[below-1], "\n") {
		lines[below-1] += end
	}
	return strings.Join(slices.Insert(lines, below, entry), "")
}

// header finds the line of [booklet].
func header(table *manifest.Table) (int, bool) {
	var ignored problem.List
	r := manifest.NewReader(table, &ignored)
	return r.KeySpan("booklet").Start.Line, r.Has("booklet")
}
