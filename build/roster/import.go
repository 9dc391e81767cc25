package roster

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/build/label"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// There is what a fleet has already, which nothing is written over.
type There struct {
	Files  []string          // the specs
	Codes  map[string]string // file by code, also of vans that have left
	Builds []string          // names of build sheets
}

// Wish is what whoever imports tells besides the table.
type Wish struct {
	Library *components.Library
	Lang    string        // of the library's words
	Day     manifest.Date // the spec date where the table has none
	Rest    bool          // columns that mean nothing here go into [staff.own]
	There   There
}

// Imported is what a table becomes.
type Imported struct {
	Specs   []Spec
	Guessed []string // what was taken for what, in words
	Unused  []string // columns that mean nothing here, with the nearest that would
	Left    []string // vans that are there already
}

// Spec is one spec to be written.
type Spec struct {
	File, Code, Name string
	Text             []byte
}

// Import turns a table into specs. Where the problems hold an error nothing of it
// should be written.
func Import(t *Table, wish Wish) (*Imported, problem.List) {
	h, found := newHeadings(wish.Library, wish.Lang)
	i := importing{table: t, wish: wish, headings: h, out: &Imported{}, problems: found, codes: map[string]int{}, files: map[string]bool{}, shapes: map[string]bool{}}
	for _, file := range wish.There.Files {
		i.files[file] = true
	}
	for code := range wish.There.Codes {
		i.shapes[label.Shape(code)] = true
	}
	if i.heads() {
		i.rows()
	}
	i.problems.Sort()
	return i.out, i.problems
}

type importing struct {
	table    *Table
	wish     Wish
	headings *headings
	head     int // the row of the headings
	columns  []column
	out      *Imported
	problems problem.List
	codes    map[string]int // the row of a code
	files    map[string]bool
	shapes   map[string]bool
	nameless bool // no column has codes: they are made from the names
}

// column is what one column of the table stands for.
type column struct {
	target
	at      int
	heading string
	reading reading
	seen    *fact.Decl // for which the column was looked at as a whole
}

func (i *importing) guessed(format string, args ...any) {
	i.out.Guessed = append(i.out.Guessed, fmt.Sprintf(format, args...))
}

// mostUnused is how many columns that mean nothing are named: whoever has more has
// another kind of table.
const mostUnused = 60

// mostAbove is in how many rows the headings are looked for: a title may stand
// above them.
const mostAbove = 10

// heads finds the row of the headings, the one with most that mean something, and
// reads it.
func (i *importing) heads() bool {
	best, most := -1, 0
	for row := range min(len(i.table.Rows), mostAbove) {
		i.stated(row)
		n := 0
		for _, c := range i.table.Rows[row] {
			if t, _, _ := i.headings.meaning(c.Text); c.Kind == Words && c.Text != "" && t.head != "" {
				n++
			}
		}
		if n > most {
			best, most = row, n
		}
	}
	if best < 0 {
		i.problems.Errorf(problem.Span{File: i.table.File}, "no-headings", "No row of headings",
			"The first row says what the columns are: code, name, registration, length (m), rear tyres (bar) and so on. doorpocket help import lists more.")
		return false
	}
	i.head = best
	i.stated(best)
	for at, c := range i.table.Rows[best] {
		i.heading(at, c.Text)
	}
	return true
}

// stated notes of which fitted things a row of headings has the system.
func (i *importing) stated(row int) {
	i.headings.stated = map[string]bool{}
	for _, c := range i.table.Rows[row] {
		if name, ok := strings.CutSuffix(strings.TrimPrefix(c.Text, "fitted."), ".system"); ok {
			i.headings.stated[name] = true
		}
	}
}

func (i *importing) heading(at int, text string) {
	if text == "" {
		return
	}
	t, guess, several := i.headings.meaning(text)
	where := i.table.at(i.head, at)
	switch {
	case t.head == "" && len(several) > 0:
		var could []string
		for _, s := range several[:min(len(several), 4)] {
			could = append(could, s.head)
		}
		i.out.Unused = append(i.out.Unused, fmt.Sprintf("%s: it could be %s. Write the one that it is.", columnName(at, text), strings.Join(could, ", ")))
		return
	case t.head == "" && i.wish.Rest:
		t = target{head: "staff.own." + ownKey(text), name: "staff.own", key: ownKey(text)}
		i.guessed("%s goes into [staff.own] as %s", columnName(at, text), t.key)
	case t.head == "":
		line := columnName(at, text)
		if len(i.out.Unused) == mostUnused {
			i.out.Unused = append(i.out.Unused, "more columns, which are not named here")
		}
		if len(i.out.Unused) > mostUnused {
			return
		}
		if near := i.headings.nearest(text); near != "" {
			line += ": the nearest is " + near
		}
		i.out.Unused = append(i.out.Unused, line)
		return
	case guess:
		i.guessed("%s is taken for %s", columnName(at, text), t.head)
	}
	if k := slices.IndexFunc(i.columns, func(c column) bool { return c.head == t.head }); k >= 0 {
		i.problems.Add(problem.New(problem.Error, where, "duplicate-column", fmt.Sprintf("A second column for %s: %q", t.head, text),
			"Remove one of the two, or give one of them another heading.").WithNote(i.table.at(i.head, i.columns[k].at), "the first"))
		return
	}
	i.columns = append(i.columns, column{target: t, at: at, heading: text, reading: reading{comma: i.table.Comma, unit: t.unit}})
}

// ownKey is a heading as a key of [staff.own].
func ownKey(text string) string { return strings.ReplaceAll(simple(text), " ", "_") }

// rows turns every row below the headings into a spec.
func (i *importing) rows() {
	i.nameless = !slices.ContainsFunc(i.columns, func(c column) bool { return c.head == "code" })
	if i.nameless && !slices.ContainsFunc(i.columns, func(c column) bool { return c.head == "name" }) {
		i.problems.Errorf(i.table.at(i.head, 0), "no-names", "Neither codes nor names of vans", "Give a column the heading code or name.")
		return
	}
	for row := i.head + 1; row < len(i.table.Rows); row++ {
		if !empty(i.table.Rows[row]) {
			i.row(row)
		}
	}
	if len(i.out.Specs)+len(i.out.Left) == 0 && !i.problems.HasErrors() {
		i.problems.Errorf(i.table.at(i.head, 0), "no-vans", "No vans below the headings", "Write one van a row.")
	}
}

// row turns one row into a spec.
func (i *importing) row(row int) {
	v := &vehicle{importing: i, row: row, own: map[string][]string{}, systems: map[string]*components.System{}}
	before := len(i.problems)
	v.read()
	if len(i.problems) > before && i.problems[before:].HasErrors() {
		return
	}
	if file, there := i.wish.There.Codes[v.code]; there {
		i.out.Left = append(i.out.Left, fmt.Sprintf("%s is in %s already: it is left as it is", v.code, file))
		return
	}
	i.out.Specs = append(i.out.Specs, Spec{File: v.file(), Code: v.code, Name: v.name, Text: []byte(v.text())})
}

// valuesOf are the texts of a column below its heading.
func (i *importing) valuesOf(c column) []string {
	var all []string
	for row := i.head + 1; row < len(i.table.Rows); row++ {
		if text := i.table.cell(row, c.at).Text; text != "" {
			all = append(all, text)
		}
	}
	return all
}

// look looks at a column as a whole, once: in which unit bare numbers are, and
// whether the day or the month stands first.
func (i *importing) look(c *column, d *fact.Decl) {
	if c.seen == d {
		return
	}
	c.seen = d
	switch d.Type.Kind {
	case fact.Date:
		form, certain := formOf(i.valuesOf(*c))
		c.reading.days = form
		if !certain {
			i.guessed("%s: days are read as day, month, year", columnName(c.at, c.heading))
		}
	case fact.Quantity:
		if c.unit != "" {
			return
		}
		var bare []string
		for _, text := range i.valuesOf(*c) {
			if m := numbered.FindStringSubmatch(text); m != nil && m[2] == "" {
				bare = append(bare, text)
			}
		}
		if u := unitFor(d, bare, i.table.Comma); !u.IsZero() {
			c.reading.unit = u.Name()
			i.guessed("%s: numbers without a unit are taken for %s, the only one that fits", columnName(c.at, c.heading), u.Name())
		}
	}
}

// theBuild is the build sheet that a cell names, where the fleet has it.
func (i *importing) theBuild(name string) (string, bool) {
	return name, slices.Contains(i.wish.There.Builds, name)
}

var dateDecl = &fact.Decl{Type: fact.Type{Kind: fact.Date}}

// names reads a list of names in one cell.
func names(text string) []string {
	return slices.DeleteFunc(strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",; ", r) }), func(s string) bool { return s == "" })
}
