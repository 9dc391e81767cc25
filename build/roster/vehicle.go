package roster

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// vehicle is one row on its way to a spec.
type vehicle struct {
	*importing
	row                     int
	code, name, build, date string
	without                 []string
	order                   []string            // of what is fitted
	own                     map[string][]string // lines by table: body, a fitted name, staff, staff.own
	places                  map[string][]string // parts of at = { ... }
	systems                 map[string]*components.System
}

// read reads the cells of the row.
func (v *vehicle) read() {
	v.places = map[string][]string{}
	v.findSystems()
	for k := range v.columns {
		c := &v.columns[k]
		if cell := v.table.cell(v.row, c.at); cell.Text != "" {
			v.cell(c, cell)
		}
	}
	v.identify()
	if v.date == "" {
		v.date = v.wish.Day.String()
		if len(v.out.Specs) == 0 {
			v.guessed("spec_date is %s where the table has none", v.date)
		}
	}
}

func (v *vehicle) problem(c *column, p problem.Problem) {
	p.Span = v.table.at(v.row, c.at)
	p.Summary = fmt.Sprintf("%s (cell %s%d): %s", c.heading, letters(c.at), v.row+1, p.Summary)
	v.problems.Add(p)
}

func (v *vehicle) wrong(c *column, code, summary, detail string) {
	v.problem(c, problem.New(problem.Error, problem.Span{}, code, summary, detail))
}

// findSystems reads of what system every fitted thing of the row is.
func (v *vehicle) findSystems() {
	for k := range v.columns {
		c := &v.columns[k]
		cell := v.table.cell(v.row, c.at)
		if cell.Text == "" || c.name == "" || strings.HasPrefix(c.name, "staff") || c.name == "body" {
			continue
		}
		if !slices.Contains(v.order, c.name) {
			v.order = append(v.order, c.name)
		}
		if c.key == "system" {
			system := v.wish.Library.System(cell.Text)
			if system == nil {
				v.wrong(c, "unknown-system", fmt.Sprintf("Unknown system %q", cell.Text), v.wish.Library.SystemHint(cell.Text))
				continue
			}
			v.systems[c.name] = system
		} else if c.system != nil && v.systems[c.name] == nil {
			v.systems[c.name] = c.system
		}
	}
}

// cell reads one cell that is not empty.
func (v *vehicle) cell(c *column, cell Cell) {
	switch c.name {
	case "":
		v.ofVan(c, cell)
	case "staff":
		v.ofStaff(c, cell)
	case "staff.own":
		line := manifest.Quote(cell.Text)
		if cell.Kind == Day || isISO(cell.Text) {
			line = cell.Text
		}
		v.line(c.name, keyOf(c.key), line)
	case "body":
		v.fact(c, cell, v.wish.Library.System(components.BodySystem))
	default:
		v.ofFitted(c, cell)
	}
}

func isISO(text string) bool {
	iso, ok := day(text, dayFirst)
	return ok && iso == text
}

// line adds a line to a table of the spec.
func (v *vehicle) line(table, key, value string) {
	v.own[table] = append(v.own[table], key+" = "+value)
}

// keyOf is a key as TOML writes it.
func keyOf(key string) string {
	bare := strings.Trim(key, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") == ""
	if bare && key != "" {
		return key
	}
	return manifest.Quote(key)
}

// ofVan reads what stands above all tables.
func (v *vehicle) ofVan(c *column, cell Cell) {
	switch c.key {
	case "code":
		v.code = cell.Text
		if label.ValidVan(v.code) {
			return
		}
		better := strings.ToUpper(strings.Join(strings.FieldsFunc(v.code, func(r rune) bool { return r == ' ' || r == '-' || r == '.' }), ""))
		if label.ValidVan(better) {
			v.guessed("code %q is written %s", v.code, better)
			v.code = better
			return
		}
		v.wrong(c, "bad-code", fmt.Sprintf("%q is no van code", cell.Text), "A code is two to four capital letters and digits, a letter first: it stands on every label. Without a column of codes they are made from the names.")
	case "name":
		v.name = cell.Text
	case "build":
		if _, there := v.theBuild(cell.Text); there {
			v.build = cell.Text
		} else if line := fmt.Sprintf("build sheet %q is not in the fleet: its vans stand alone", cell.Text); !slices.Contains(v.out.Guessed, line) {
			v.guessed("%s", line)
		}
	case "spec_date":
		v.look(c, dateDecl)
		iso, ok := day(cell.Text, c.reading.days)
		if !ok {
			v.wrong(c, "bad-date", fmt.Sprintf("%q is no day", cell.Text), "Write a day such as 2027-03-14.")
		}
		v.date = iso
	case "without":
		v.without = names(cell.Text)
	case "order":
		v.inOrder(names(cell.Text))
	}
}

// inOrder puts what is fitted into an order; what it does not name stays behind.
func (v *vehicle) inOrder(order []string) {
	rank := func(name string) int {
		if i := slices.Index(order, name); i >= 0 {
			return i
		}
		return len(order)
	}
	slices.SortStableFunc(v.order, func(a, b string) int { return rank(a) - rank(b) })
}

// ofStaff reads an entry of [staff].
func (v *vehicle) ofStaff(c *column, cell Cell) {
	if slices.Contains(spec.StaffTexts, c.key) {
		v.line("staff", c.key, manifest.Quote(cell.Text))
		return
	}
	v.look(c, dateDecl)
	iso, ok := day(cell.Text, c.reading.days)
	if !ok {
		v.wrong(c, "bad-date", fmt.Sprintf("%q is no day", cell.Text), "Write a day such as 2027-03-14, or leave the cell empty.")
		return
	}
	v.line("staff", c.key, iso)
}

// ofFitted reads what a row says of something fitted.
func (v *vehicle) ofFitted(c *column, cell Cell) {
	system := v.systems[c.name]
	if system == nil && v.build == "" {
		if c.key != "system" {
			v.wrong(c, "no-system", fmt.Sprintf("What is %s?", c.name), fmt.Sprintf("Write its system into a column %s.system, such as gas/cylinder-locker. doorpocket systems lists them.", c.name))
		}
		return
	}
	switch key, part, at := strings.Cut(c.key, "."); {
	case c.key == "system":
	case at && part == "side":
		if !slices.Contains(spec.Sides(), cell.Text) {
			v.wrong(c, "unknown-option", fmt.Sprintf("Unknown side %q", cell.Text), "Use "+strings.Join(spec.Sides(), ", ")+".")
			return
		}
		v.places[c.name] = append([]string{"side = " + manifest.Quote(cell.Text)}, v.places[c.name]...)
	case at:
		d := &fact.Decl{Name: part, Type: fact.Type{Kind: fact.Quantity, Dimension: quantity.Length}}
		if value, ok := v.value(c, cell, d, nil); ok {
			v.places[c.name] = append(v.places[c.name], part+" = "+value)
		}
	case key == "label" && cell.Text != label.None && !label.ValidLabel(cell.Text):
		v.wrong(c, "bad-label", fmt.Sprintf("%q is no label code", cell.Text), "A label code is a capital letter and a number from 1 to 99, such as G1, or none.")
	case slices.Contains(ofAll, key):
		v.line(c.name, key, manifest.Quote(cell.Text))
	case system == nil:
		v.wrong(c, "no-system", fmt.Sprintf("What is %s?", c.name), fmt.Sprintf("Write its system into a column %s.system.", c.name))
	default:
		v.fact(c, cell, system)
	}
}

// fact reads a fact of a system.
func (v *vehicle) fact(c *column, cell Cell, system *components.System) {
	d := system.Fact(c.key)
	if d == nil {
		var facts []string
		for _, d := range system.Facts {
			facts = append(facts, d.Name)
		}
		detail := "Leave the cell empty, or correct the heading."
		if near := problem.Nearest(c.key, facts); near != "" {
			detail = fmt.Sprintf("Did you mean %s.%s?", c.name, near)
		}
		v.wrong(c, "unknown-fact", fmt.Sprintf("%s has no fact %q", system.ID, c.key), detail)
		return
	}
	if value, ok := v.value(c, cell, d, system.Words[v.wish.Lang]); ok {
		v.line(c.name, c.key, value)
	}
}

func (v *vehicle) value(c *column, cell Cell, d *fact.Decl, words *components.Words) (string, bool) {
	v.look(c, d)
	value, doubtful, p := c.reading.stated(cell, d, words)
	if p != nil {
		v.problem(c, *p)
		return "", false
	}
	if doubtful {
		v.guessed("%s%d: %q is taken for %s", letters(c.at), v.row+1, cell.Text, value)
	}
	return value, true
}

// identify gives the van a code and a name, and looks that no other has the code.
func (v *vehicle) identify() {
	at := &column{at: max(0, slices.IndexFunc(v.table.Rows[v.head], func(c Cell) bool { return c.Text != "" })), heading: "code"}
	for k := range v.columns {
		if v.columns[k].head == "code" || v.columns[k].head == "name" && v.nameless {
			at = &v.columns[k]
		}
	}
	if v.code == "" && v.nameless && v.name != "" {
		v.code = v.makeCode()
		v.guessed("%s gets the code %s", v.name, v.code)
	}
	if v.code == "" {
		if !v.problems.HasErrors() || v.name != "" {
			v.wrong(at, "no-code", "The van has no code", "Write two to four capital letters and digits, a letter first.")
		}
		return
	}
	if v.name == "" {
		v.name = v.code
		v.guessed("%s is called by its code", v.code)
	}
	if other, twice := v.codes[v.code]; twice {
		v.problem(at, problem.New(problem.Error, problem.Span{}, "duplicate-code", fmt.Sprintf("A second van with the code %s", v.code), "A code is one van's alone: give one of them another.").WithNote(v.table.at(other, at.at), "the first"))
		return
	}
	v.codes[v.code] = v.row
	v.shapes[label.Shape(v.code)] = true
}

// makeCode makes a code from the letters of a name, one that cannot be taken for
// another.
func (v *vehicle) makeCode() string {
	var all []string
	for _, r := range strings.ToUpper(norm.NFD.String(v.name)) {
		if r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
			all = append(all, string(r))
		}
	}
	for len(all) > 0 && all[0] < "A" {
		all = all[1:]
	}
	if len(all) == 0 {
		all = []string{"V"}
	}
	free := func(code string) bool { return label.ValidVan(code) && !v.shapes[label.Shape(code)] }
	for _, second := range all[1:] {
		if code := all[0] + second; free(code) {
			return code
		}
	}
	for n := 1; n < 1000; n++ {
		if code := fmt.Sprintf("%s%d", all[0], n); free(code) {
			return code
		}
	}
	return ""
}

// file names the spec's file after the van.
func (v *vehicle) file() string {
	var b strings.Builder
	for _, r := range strings.ToLower(norm.NFD.String(v.name)) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-") && (r == ' ' || r == '-' || r == '_' || r == '.' || r == '/'):
			b.WriteByte('-')
		}
	}
	code := strings.ToLower(v.code)
	for _, name := range []string{strings.Trim(b.String(), "-"), code, strings.Trim(b.String(), "-") + "-" + code} {
		if file := path.Join("vans", name+".toml"); spec.ValidName(name) && !v.files[file] {
			v.files[file] = true
			return file
		}
	}
	for n := 2; ; n++ {
		if file := fmt.Sprintf("vans/%s-%d.toml", code, n); !v.files[file] {
			v.files[file] = true
			return file
		}
	}
}

// text is the spec.
func (v *vehicle) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "code = %s\nname = %s\n", manifest.Quote(v.code), manifest.Quote(v.name))
	if v.build != "" {
		fmt.Fprintf(&b, "build = %s\n", manifest.Quote(v.build))
	}
	fmt.Fprintf(&b, "spec_date = %s\n", v.date)
	if len(v.without) > 0 {
		var quoted []string
		for _, name := range v.without {
			quoted = append(quoted, manifest.Quote(name))
		}
		fmt.Fprintf(&b, "without = [%s]\n", strings.Join(quoted, ", "))
	}
	table := func(head, name string, more ...string) {
		lines := append(more, v.own[name]...)
		if len(lines) > 0 {
			fmt.Fprintf(&b, "\n[%s]\n%s\n", head, strings.Join(lines, "\n"))
		}
	}
	table("body", "body")
	for _, name := range v.order {
		var more []string
		if system := v.systems[name]; system != nil {
			more = append(more, "system = "+manifest.Quote(system.ID))
		}
		if place := v.places[name]; len(place) > 0 {
			more = append(more, "at = { "+strings.Join(place, ", ")+" }")
		}
		table("fitted."+name, name, more...)
	}
	table("staff", "staff")
	table("staff.own", "staff.own")
	return b.String()
}
