package render

import (
	"fmt"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/build/survey"
)

type vanFactsView struct {
	Frame
	Heading string
	Plate   string
	Counts  string
	Things  []vanThing
}

type vanThing struct {
	link
	System, Name string
	Facts        []vanFact
}

type vanFact struct{ Name, Key, Text, From, Tone string }

// facts renders every fact of a van with its value and where that comes from.
func (v *van) facts(kit *guide.Kit, op *spec.Operator, read spec.Read) {
	path := "facts/"
	title := v.w.must("facts_of", "name", read.Van.Name)
	view := vanFactsView{Frame: v.r.staffFrame(v.w, op, title, read.Van.Code+"/"+path), Heading: title, Plate: read.Van.Code}
	view.Scripts = []string{"../../" + v.r.staffScript("sift")}
	counts := map[survey.Origin]int{}
	for _, t := range survey.Things(kit, read) {
		thing := vanThing{link: link{Code: t.Fitted.Label, Title: t.Title}, System: t.Fitted.System.ID, Name: t.Fitted.Name}
		for _, f := range t.Facts {
			counts[f.Origin]++
			thing.Facts = append(thing.Facts, v.vanFact(f))
		}
		if len(thing.Facts) > 0 {
			view.Things = append(view.Things, thing)
		}
	}
	view.Counts = v.w.must("facts_counts", "spec", counts[survey.Spec], "build", counts[survey.Sheet], "guess", counts[survey.Guess], "lacking", counts[survey.Lacking])
	v.page(path, "staff-facts", view)
}

func (v *van) vanFact(f survey.Fact) vanFact {
	fact := vanFact{Name: f.Name, Key: f.Key, Text: f.Text}
	switch f.Origin {
	case survey.Lacking:
		fact.Text, fact.From, fact.Tone = v.w.must("list_not_stated"), "", "lacking"
	case survey.Guess:
		fact.From, fact.Tone = v.w.must("facts_guess"), "guess"
	default:
		fact.From = fmt.Sprintf("%s:%d", f.File, f.Line)
	}
	return fact
}
