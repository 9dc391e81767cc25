package guide

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// Table is a computed table in words.
type Table struct {
	ID          string
	Caption     string
	Heads       []string
	Numeric     []bool   // a column
	Units       []string // a column: the unit of its numbers, "" for words
	Rows        [][]Cell
	Assumptions []prose.Doc
	Sources     []string
	Tick        *Tick // nil where rows cannot be ticked and added up
}

// Tick is what ticked rows add up to, in words.
type Tick struct {
	Column int
	Unit   string
	Limits []Limit
}

// Limit is one limit in words. Column is what is added up for it, and Left the
// number that the sum is taken from, "" where the words do not tell what is left.
type Limit struct {
	Name   string
	Column int
	Left   string
	Steps  []LimitStep
}

// LimitStep is what a sum up to Upto means; Upto is "" for everything above.
type LimitStep struct {
	Upto, Text string
	Tone       table.Tone
}

// Cell is one cell in words. A cell without text is empty.
type Cell struct {
	Text   string
	Number string // of a quantity: the number alone in the column's unit
	Tick   string // the row can be ticked; of rows with the same text only one
	Tone   table.Tone
}

// tables are the functions behind the tables of a library.
type tables struct {
	library *components.Library
	work    map[string]table.Func
}

func newTables(lib *components.Library) *tables {
	return &tables{library: lib, work: components.Calculations()}
}

// tables works out the tables of every page.
func (b *builder) tables() {
	b.unstated()
	all := b.inputs()
	byName := make(map[string]table.Fitted, len(all))
	for _, f := range all {
		byName[f.Name] = f
	}
	for _, p := range b.guide.Pages {
		for _, id := range p.Fitted.System.Tables {
			if t := b.table(p, id, table.Input{Self: byName[p.Fitted.Name], All: all}); t != nil {
				p.Tables[id] = t
			}
		}
	}
}

func (b *builder) table(p *Page, id string, input table.Input) *Table {
	known, work := b.kit.tables.library.Tables[id], b.kit.tables.work[id]
	if known == nil || work == nil {
		b.problems.Errorf(p.Fitted.System.At, "unknown-table", fmt.Sprintf("No calculation for table %q", id), "Take it out of tables, or add its function.")
		return nil
	}
	result, err := work(input)
	if err != nil {
		b.problems.Warnf(p.Fitted.Span, "table-left-out", fmt.Sprintf("Table %s of [fitted.%s] is left out", id, p.Fitted.Name), "%v", err)
		return nil
	}
	for _, lack := range result.Lacks {
		b.lack(id, lack)
	}
	if len(result.Rows) == 0 {
		return nil
	}
	return b.inWords(p, known, result)
}

func (b *builder) lack(id string, lack table.Lack) {
	at := b.guide.Van.At
	if f := b.guide.Van.Named(lack.Use.Fitted); f != nil {
		at = f.Span
	}
	b.problems.Add(problem.New(problem.Warning, at, "row-left-out",
		fmt.Sprintf("Table %s lacks a row for %s of [fitted.%s]", id, lack.Use.Fact, lack.Use.Fitted), lack.Reason))
}

func (b *builder) inWords(p *Page, known *components.Table, result table.Result) *Table {
	words := known.Words[b.guide.Lang]
	t := &Table{ID: known.ID, Caption: words.Caption, Sources: known.Sources}
	for _, c := range known.Columns {
		t.Heads = append(t.Heads, words.Columns[c.ID])
		t.Numeric = append(t.Numeric, !c.Unit.IsZero())
		unit := c.Unit.Symbol()
		if c.Unit.Composite() {
			unit = "" // such a number is written out in words
		}
		t.Units = append(t.Units, unit)
	}
	for _, id := range known.Assumptions {
		t.Assumptions = append(t.Assumptions, words.Assumptions[id])
	}
	names := namesFor(p, result)
	t.Rows = make([][]Cell, 0, len(result.Rows))
	for _, row := range result.Rows {
		cells := make([]Cell, 0, len(row))
		for i, c := range row {
			cell := Cell{Text: b.cell(c, known.Columns[i], words, names), Tone: c.Tone, Tick: c.Tick}
			if c.Quantity.Valid() && !known.Columns[i].Unit.Composite() {
				cell.Number = quantity.Plain(c.Quantity, style(known.Columns[i]))
			}
			cells = append(cells, cell)
		}
		t.Rows = append(t.Rows, cells)
	}
	t.Tick = tick(known, result.Tick, words)
	t.narrow(names.own)
	return t
}

// narrow takes out what this van does not need: columns of numbers that it has
// nothing for, such as the diesel of a heater for gas, and, where own is set, a
// first column that names in every row the thing whose page this is. A phone is
// narrow.
func (t *Table) narrow(own bool) {
	for i := len(t.Heads) - 1; i > 0; i-- {
		empty := !slices.ContainsFunc(t.Rows, func(row []Cell) bool { return row[i].Text != "" })
		if empty && !t.Tick.adds(i) {
			t.dropColumn(i)
		}
	}
	same := !slices.ContainsFunc(t.Rows, func(row []Cell) bool { return row[0].Text != t.Rows[0][0].Text })
	if own && same && len(t.Rows) > 1 && t.Tick == nil {
		t.dropColumn(0)
	}
}

func (t *Table) dropColumn(i int) {
	t.Heads, t.Numeric, t.Units = slices.Delete(t.Heads, i, i+1), slices.Delete(t.Numeric, i, i+1), slices.Delete(t.Units, i, i+1)
	for r := range t.Rows {
		t.Rows[r] = slices.Delete(t.Rows[r], i, i+1)
	}
	t.Tick.moveBehind(i)
}

// adds reports whether the numbers of a column are added up.
func (t *Tick) adds(column int) bool {
	return t != nil && (t.Column == column || slices.ContainsFunc(t.Limits, func(l Limit) bool { return l.Column == column }))
}

// moveBehind follows the columns behind one that has gone.
func (t *Tick) moveBehind(column int) {
	if t == nil {
		return
	}
	if t.Column > column {
		t.Column--
	}
	for i := range t.Limits {
		if t.Limits[i].Column > column {
			t.Limits[i].Column--
		}
	}
}

func tick(known *components.Table, work *table.Tick, words components.TableWords) *Tick {
	if work == nil {
		return nil
	}
	column := func(id string) int {
		return slices.IndexFunc(known.Columns, func(c table.Column) bool { return c.ID == id })
	}
	i := column(work.Column)
	if i < 0 {
		return nil
	}
	t := &Tick{Column: i, Unit: known.Columns[i].Unit.Symbol()}
	exact := quantity.Style{Unit: known.Columns[i].Unit, Decimals: 3}
	for _, limit := range work.Limits {
		l := Limit{Name: words.Cells[limit.Word], Column: i, Left: quantity.Plain(limit.Left, exact)}
		if limit.Column != "" {
			l.Column = column(limit.Column)
		}
		for _, s := range limit.Steps {
			l.Steps = append(l.Steps, LimitStep{Upto: quantity.Plain(s.Upto, exact), Text: words.Cells[s.Word], Tone: s.Tone})
		}
		t.Limits = append(t.Limits, l)
	}
	return t
}

// naming is how the uses of one table are called.
type naming struct {
	uses map[string]map[string]bool // the facts of each fitted system
	own  bool                       // all are of the page that shows the table
}

// severalSettings reports whether a fitted system shows more than one setting,
// so that the setting must be named.
func (n naming) severalSettings(fitted string) bool { return len(n.uses[fitted]) > 1 }

func namesFor(p *Page, result table.Result) naming {
	n := naming{uses: map[string]map[string]bool{}}
	for _, row := range result.Rows {
		for _, c := range row {
			for _, u := range c.Uses {
				if n.uses[u.Fitted] == nil {
					n.uses[u.Fitted] = map[string]bool{}
				}
				n.uses[u.Fitted][u.Fact] = true
			}
		}
	}
	n.own = len(n.uses) == 1 && n.uses[p.Fitted.Name] != nil
	return n
}

func (b *builder) cell(c table.Cell, column table.Column, words components.TableWords, names naming) string {
	switch {
	case c.Quantity.Valid():
		return b.guide.format.Format(c.Quantity, style(column))
	case len(c.Uses) == 0:
		return words.Cells[c.Word] // "" for no word
	}
	var said []string
	for _, u := range c.Uses {
		said = append(said, b.use(u, names))
	}
	if c.Word != "" {
		said = append(said, words.Cells[c.Word])
	}
	return strings.Join(said, " + ")
}

// style is how a column shows its numbers.
func style(c table.Column) quantity.Style {
	return quantity.Style{Unit: c.Unit, Rounding: c.Rounding, Decimals: c.Decimals}
}

// use names a use: the thing, with its setting where it shows several. On its
// own page, where nobody else is spoken of, the setting alone is enough.
func (b *builder) use(u table.Use, names naming) string {
	p := b.guide.byName[u.Fitted]
	if p == nil {
		return u.Fitted
	}
	label, several := p.Words.Facts[u.Fact], names.severalSettings(u.Fitted)
	switch {
	case label == "":
		return p.Title
	case b.isThing(p, u.Fact), several && names.own:
		return capital(label)
	case several:
		return p.Title + ", " + label
	}
	return p.Title
}

// capital begins a text with a capital letter.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// isThing reports whether a fact is a thing by itself, which has a name of its
// own, and not a setting of its system.
func (b *builder) isThing(p *Page, name string) bool {
	d := p.Fitted.System.Fact(name)
	return d != nil && b.kit.tables.library.Roles[d.Role].Things
}

// inputs is the van as calculations see it.
func (b *builder) inputs() []table.Fitted {
	all := make([]table.Fitted, len(b.guide.Van.Fitted))
	for i, f := range b.guide.Van.Fitted {
		all[i] = tableFitted(f)
	}
	return all
}

func tableFitted(f *spec.Fitted) table.Fitted {
	t := table.Fitted{Name: f.Name, System: f.System.ID, Along: f.Place.Along.Quantity, Across: f.Place.Across.Quantity}
	t.Facts = make([]table.Fact, 0, len(f.Values))
	for _, name := range slices.Sorted(maps.Keys(f.System.Constants)) {
		t.Constants = append(t.Constants, table.Fact{Name: name, Quantity: f.System.Constants[name].Value.Quantity})
	}
	for _, d := range f.System.Facts {
		v, ok := f.Values[d.Name]
		if !ok {
			continue
		}
		stated := table.Fact{Name: d.Name, Role: d.Role, Count: v.Count, Quantity: v.Quantity}
		switch v.Kind {
		case fact.Choice:
			stated.Option = v.Options[0]
		case fact.Choices:
			stated.Options = v.Options
		}
		t.Facts = append(t.Facts, stated)
	}
	return t
}
