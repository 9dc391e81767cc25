package components

import (
	"io/fs"
	"path"
	"slices"

	"doorpocket/components/manifest"
	"doorpocket/components/prose"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// tables reads FAMILY/tables.toml and its words.
func (l *loader) tables() {
	names, err := fs.Glob(l.files, "*/tables.toml")
	if err != nil {
		panic(err)
	}
	slices.Sort(names)
	for _, name := range names {
		family := path.Dir(name)
		r := manifest.NewReader(l.read(name), &l.problems)
		for id, t := range r.EachTable() {
			decl := l.table(t, family+"/"+id)
			l.lib.Tables[decl.ID] = &Table{Decl: decl, Words: map[string]TableWords{}, At: t.At()}
		}
		r.Done()
		for _, lang := range l.languages(family, "tables", ".toml") {
			l.tableWords(family, lang)
		}
	}
}

func (l *loader) table(r *manifest.Reader, id string) table.Decl {
	d := table.Decl{ID: id}
	for _, c := range r.Tables("columns", manifest.Required) {
		column := table.Column{ID: l.id(c), Decimals: quantity.Sensible}
		if symbol, ok := c.Text("unit"); ok {
			if column.Unit, ok = quantity.UnitNamed(symbol); !ok {
				c.Problem("unit", "unknown-unit", "Unknown unit \""+symbol+"\"", "Use a unit that specs use, such as kg, h or bar.")
			}
		}
		switch l.oneOf(c, "round", []string{"up", "down", "nearest"}) {
		case "up":
			column.Rounding = quantity.Up
		case "down":
			column.Rounding = quantity.Down
		}
		if n, ok := c.Int("decimals", 0, 3); ok {
			column.Decimals = n
		}
		column.Signed, _ = c.Bool("signed")
		d.Columns = append(d.Columns, column)
	}
	d.Assumptions, _ = r.Texts("assumptions", manifest.Required)
	d.Sources, _ = r.Texts("sources", manifest.Required)
	return d
}

func (l *loader) tableWords(family, lang string) {
	r := manifest.NewReader(l.read(family+"/tables."+lang+".toml"), &l.problems)
	for id, t := range r.EachTable() {
		known := l.lib.Tables[family+"/"+id]
		if known == nil {
			r.ProblemAt(t.At(), "unknown-name", "Words for a table \""+id+"\" that is not in tables.toml", "Correct the name.")
			continue
		}
		w := TableWords{Columns: textsOf(t.Table("column")), Cells: textsOf(t.Table("cell")), Assumptions: map[string]prose.Doc{}}
		w.Caption, _ = t.Text("caption", manifest.Required)
		assumptions := t.Table("assumption")
		for _, key := range assumptions.Keys() {
			w.Assumptions[key.Name] = l.line(assumptions, key.Name)
		}
		known.Words[lang] = w
	}
	r.Done()
}
