package render

import (
	"doorpocket/build/guide"
	"doorpocket/build/spec"
)

type factRow struct{ Name, Key, Text, From string }

type factsOf struct {
	Title, Name, Code string
	Rows              []factRow
}

type staffFactsView struct {
	frame
	Whose              *vanView
	Things             []factsOf // every fact that is stated or has a default
	Unstated, Defaults []factsOf
	NoPicture, NoLabel []link
}

// staffFacts is the page of all facts of a van: what is stated and where, what
// is taken from the library, and what nobody states.
func (v *van) staffFacts(op *spec.Operator) {
	g := v.guide
	title := v.w.must("facts_title")
	view := staffFactsView{frame: v.r.staffFrame(v.w, op, title+" · "+g.Van.Code+" "+g.Van.Name, g.Van.Code+"/"+factsPath)}
	view.Whose = &vanView{Code: g.Van.Code, Name: g.Van.Name, SpecDate: g.SpecDate()}
	for _, one := range g.Record() {
		row := factRow{Name: one.Name, Key: one.Fact, Text: one.Text, From: v.from(one)}
		switch one.From {
		case guide.Unstated:
			view.Unstated = v.enter(view.Unstated, one.Fitted, row)
			continue
		case guide.FromDefault:
			view.Defaults = v.enter(view.Defaults, one.Fitted, row)
		}
		view.Things = v.enter(view.Things, one.Fitted, row)
	}
	for _, f := range g.Van.Fitted {
		to := link{Href: "../../../hirers/" + g.Van.Code + "/", Code: f.Label, Title: v.titleOf(f)}
		if p := g.Page(f.Name); p != nil {
			to.Href += p.Path
		}
		to.Href += "index.html"
		if f.Unlabelled() {
			view.NoLabel = append(view.NoLabel, to)
		}
		if !f.Automatic && len(f.Pictures) == 0 {
			view.NoPicture = append(view.NoPicture, to)
		}
	}
	v.page(factsPath, "staff-facts", view)
}

// from says where a fact is stated.
func (v *van) from(one guide.Recorded) string {
	if one.From == guide.FromDefault {
		return v.w.must("facts_default")
	}
	return one.At.String()
}

// enter adds a fact to those of its thing, which is the last one or a new one.
func (v *van) enter(all []factsOf, f *spec.Fitted, row factRow) []factsOf {
	if len(all) == 0 || all[len(all)-1].Name != f.Name {
		all = append(all, factsOf{Title: v.titleOf(f), Name: f.Name, Code: f.Label})
	}
	last := &all[len(all)-1]
	last.Rows = append(last.Rows, row)
	return all
}

// titleOf is what a thing is called: by the operator, or by the library.
func (v *van) titleOf(f *spec.Fitted) string {
	if words := f.System.Words[v.guide.Lang]; f.Title == "" && words != nil {
		return words.Title
	}
	return f.Title
}
