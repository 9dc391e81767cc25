package render

import (
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/prose"
)

func (v *van) system(p *guide.Page) {
	v.ticked = false
	fill := v.fill(p.Path, p)
	view := systemView{
		frame: v.frame(p.Path, p.Title, p.Code), Heading: p.Title, About: fill.html(p.Words.About),
		Place: v.place(p.Fitted), Intro: fill.html(p.Words.Page.Intro), Note: p.Fitted.Note,
		Cautions: v.cautions(fill, p.Cautions),
	}
	for _, i := range p.Sections {
		view.Sections = append(view.Sections, section(fill, p.Words.Page.Sections[i]))
	}
	view.Pictures = v.rest(p, view)
	for _, sc := range p.Checks {
		cv := checksView{Href: v.href(p.Path, sc.Symptom.Path), Title: sc.Symptom.Words.Title}
		for _, c := range sc.Checks {
			cv.Checks = append(cv.Checks, v.check(p.Path, c, false))
		}
		view.Checks = append(view.Checks, cv)
	}
	for _, r := range p.Routines {
		view.TakesPart = append(view.TakesPart, link{Href: v.href(p.Path, r.Path), Title: r.Words.Title})
	}
	for _, other := range p.Related {
		view.SeeAlso = append(view.SeeAlso, v.link(p.Path, other, false))
	}
	if v.ticked {
		view.Scripts = append(view.Scripts, v.up(p.Path)+"../"+v.r.script("tick"))
	}
	v.page(p.Path, "system", view)
}

func section(fill filler, s prose.Section) sectionView {
	return sectionView{ID: s.ID, Title: fill.html(s.Title), Body: fill.html(s.Body)}
}

func (v *van) cautions(fill filler, list []guide.Caution) []cautionView {
	var views []cautionView
	for i := range list {
		views = append(views, v.caution(fill, &list[i]))
	}
	return views
}

func (v *van) caution(fill filler, c *guide.Caution) cautionView {
	view := cautionView{
		Signal: c.Signal, Word: v.w.must("signal_" + c.Signal),
		Hazard: fill.html(c.Words.Hazard), Consequence: fill.html(c.Words.Consequence), Avoid: fill.html(c.Words.Avoid),
	}
	for _, id := range c.Signs {
		view.Signs = append(view.Signs, v.r.signs[id])
	}
	return view
}

var likely = map[components.Likelihood]string{
	components.Common: "likely_common", components.Occasional: "likely_occasional", components.Rare: "likely_rare",
}

// check shows a check; on the page of a symptom it names the system too.
func (v *van) check(from string, c guide.Check, named bool) checkView {
	fill := v.fill(from, c.Page)
	view := checkView{W: v.w, Look: fill.html(c.Words.Look), Yes: fill.html(c.Words.Yes), No: fill.html(c.Words.No)}
	if c.Likelihood != 0 {
		view.Meta = v.w.must(likely[c.Likelihood])
	}
	if !c.Effort.IsZero() {
		view.Meta += ", " + v.w.must("takes", "time", v.guide.Quantity(c.Effort))
	}
	if named {
		l := v.link(from, c.Page, false)
		view.Link = &l
	}
	return view
}

func (v *van) routine(r *guide.Routine) {
	view := routineView{frame: v.frame(r.Path, r.Words.Title, ""), Heading: r.Words.Title, About: r.Words.About}
	view.Count = v.w.must("step_one")
	if n := len(r.Steps); n > 1 {
		view.Count = v.w.must("steps_count", "count", n)
	}
	for _, s := range r.Steps {
		fill := v.fill(r.Path, s.Page)
		step := stepView{Text: fill.html(s.Words), Link: v.link(r.Path, s.Page, false), Where: v.place(s.Page.Fitted)}
		if s.Caution != nil {
			c := v.caution(fill, s.Caution)
			step.Caution = &c
		}
		if !s.Wait.IsZero() {
			step.Wait = v.w.must("wait", "time", v.guide.Quantity(s.Wait))
		}
		view.Steps = append(view.Steps, step)
	}
	v.page(r.Path, "routine", view)
}

func (v *van) symptom(s *guide.Symptom) {
	view := symptomView{frame: v.frame(s.Path, s.Words.Title, ""), Heading: s.Words.Title, About: s.Words.About, Grave: s.Danger, Urgent: s.Urgent}
	fill := v.fill(s.Path, nil)
	for _, d := range s.Words.First {
		view.First = append(view.First, fill.html(d))
	}
	for _, c := range s.Checks {
		view.Checks = append(view.Checks, v.check(s.Path, c, true))
	}
	v.page(s.Path, "symptom", view)
}

func (v *van) own(own *spec.OwnPage) {
	words, ok := own.Words[v.guide.Lang]
	if !ok {
		return
	}
	path := guide.OwnPath(own.Name)
	fill := v.fill(path, nil)
	view := ownView{frame: v.frame(path, words.Title, ""), Heading: words.Title, Intro: fill.html(words.Page.Intro)}
	for _, s := range words.Page.Sections {
		view.Sections = append(view.Sections, section(fill, s))
	}
	v.page(path, "own", view)
}
