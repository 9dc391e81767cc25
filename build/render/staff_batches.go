package render

import (
	"strings"

	"doorpocket/build/roster"
	"doorpocket/build/spec"
	"doorpocket/components"
)

type batchWay struct {
	Text string
	Many string // how many vans, where they are too many to list
	Vans []link
}

type batchRow struct {
	Thing, Fact, Key string
	Ways             []batchWay
}

type batchView struct {
	Name, Count string
	Rows        []batchRow
}

type batchesView struct {
	frame
	Batches []batchView
	Alone   []link // vans without a build sheet
}

// staffBatches renders in what the vans of each build sheet differ.
func (r *Renderer) staffBatches(w *Words, op *spec.Operator, rows []roster.Row) (File, error) {
	b := batches{w: w, lib: op.Library, lang: op.Languages[0]}
	view := batchesView{frame: r.staffFrame(w, op, w.must("builds_title"), batchesPath)}
	for _, batch := range roster.Batches(rows) {
		one := batchView{Name: batch.Build, Count: w.must("builds_count", "count", len(batch.Vans), "list", strings.Join(batch.Vans[:min(len(batch.Vans), mostCodes)], ", "))}
		for _, d := range batch.Differences {
			one.Rows = append(one.Rows, b.row(d))
		}
		view.Batches = append(view.Batches, one)
	}
	var alone []string
	for _, row := range rows {
		if row.Build == "" {
			alone = append(alone, row.Code)
		}
	}
	view.Alone = codeLinks(alone, "../")
	data, err := r.execute("staff-builds", view)
	return File{Path: batchesPath + "index.html", Data: data}, err
}

// batches puts differences into words.
type batches struct {
	w    *Words
	lib  *components.Library
	lang string
}

func (b batches) row(d roster.Difference) batchRow {
	row := batchRow{Thing: b.title(d.Thing), Key: "[fitted." + d.Thing.Name + "]"}
	if d.Thing.System == "" && d.Thing.Name == "body" {
		row.Key = "[body]"
	}
	if d.Fact != "" {
		row.Fact, row.Key = b.factName(d), row.Key+" "+d.Fact
	}
	for _, way := range d.Ways {
		one := batchWay{Text: way.Text}
		switch {
		case d.Fact == "" && way.Absent:
			one.Text = b.w.must("builds_absent")
		case d.Fact == "":
			one.Text = b.w.must("builds_there")
		case way.Text == "":
			one.Text = b.w.must("builds_as_sheet")
		}
		if len(way.Vans) > mostCodes {
			one.Many = b.w.must("builds_vans", "count", len(way.Vans))
		} else {
			one.Vans = codeLinks(way.Vans, "../")
		}
		row.Ways = append(row.Ways, one)
	}
	return row
}

// system is that of a thing; what is no thing of its own, such as the body, is
// known by its name alone.
func (b batches) system(t roster.Thing) *components.System {
	if t.Name == "body" {
		return b.lib.System(components.BodySystem)
	}
	return b.lib.System(t.System)
}

func (b batches) title(t roster.Thing) string {
	if t.Title != "" {
		return t.Title
	}
	if s := b.system(t); s != nil && s.Words[b.lang] != nil {
		return s.Words[b.lang].Title
	}
	return t.Name
}

func (b batches) factName(d roster.Difference) string {
	if s := b.system(d.Thing); s != nil && s.Words[b.lang] != nil && s.Words[b.lang].Facts[d.Fact] != "" {
		return s.Words[b.lang].Facts[d.Fact]
	}
	return d.Fact
}
