package render

import (
	"html/template"
	"strings"

	"doorpocket/build/figure"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/prose"
)

func (v *van) system(p *guide.Page) {
	v.ticked, v.asked = false, nil
	fill := v.fill(p.Path, p)
	view := systemView{
		Frame: v.frame(p.Path, p.Title, p.Code), Heading: p.Title, About: fill.html(p.Words.About),
		Place: v.place(p.Fitted.Place), Intro: fill.html(p.Words.Page.Intro), Note: p.Fitted.Note,
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
		view.TakesPart += v.fragment("link", link{Href: v.href(p.Path, r.Path), Title: r.Words.Title})
	}
	for _, other := range p.Related {
		view.SeeAlso += v.fragment("link", v.link(p.Path, other))
	}
	if v.ticked {
		view.Scripts = append(view.Scripts, v.up(p.Path)+"../"+v.r.script("tick"))
	}
	v.page(p.Path, "system", view)
}

func section(fill filler, s prose.Section) sectionView {
	return sectionView{ID: s.ID, Title: fill.html(s.Title), Body: fill.html(s.Body)}
}

func (v *van) cautions(fill filler, list []guide.Caution) []template.HTML {
	var views []template.HTML
	for i := range list {
		views = append(views, v.caution(fill, &list[i]))
	}
	return views
}

func (v *van) caution(fill filler, c *guide.Caution) template.HTML {
	view := cautionView{
		Signal: c.Signal, Word: v.w.must("signal_" + c.Signal),
		Hazard: fill.html(c.Words.Hazard), Consequence: fill.html(c.Words.Consequence), Avoid: fill.html(c.Words.Avoid),
	}
	for _, id := range c.Signs {
		view.Signs += v.r.signs[id]
	}
	return v.fragment("caution", view)
}

var likely = map[components.Likelihood]string{
	components.Common: "likely_common", components.Occasional: "likely_occasional", components.Rare: "likely_rare",
}

// check shows a check; on the page of a symptom it names the system too.
func (v *van) check(from string, c guide.Check, named bool) template.HTML {
	fill := v.fill(from, c.Page)
	view := checkView{W: v.w, Look: fill.html(c.Words.Look), Yes: fill.html(c.Words.Yes), No: fill.html(c.Words.No)}
	ordered := c.Words.Yes.Empty() && c.Words.No.Empty() // a danger that says what to do at once: nothing to weigh up
	if c.Likelihood != 0 && !ordered {
		view.Meta = v.w.must(likely[c.Likelihood])
	}
	if !c.Effort.IsZero() && !ordered {
		view.Meta += ", " + v.w.must("takes", "time", v.guide.Quantity(c.Effort))
	}
	if named {
		view.Link = v.link(from, c.Page)
	}
	return v.fragment("check", view)
}

func (v *van) routine(r *guide.Routine) {
	view := v.routineView(r, v.frame(r.Path, r.Words.Title, ""))
	view.Scripts = []string{v.up(r.Path) + "../" + v.r.script("routine")}
	v.page(r.Path, "routine", view)
}

func (v *van) routineView(r *guide.Routine, f Frame) routineView {
	view := routineView{Frame: f, Heading: r.Words.Title, About: r.Words.About, Key: v.guide.Van.Code + "/" + r.ID, Walk: v.walk(r)}
	view.Count = v.w.must("step_one")
	if n := len(r.Steps); n > 1 {
		view.Count = v.w.must("steps_count", "count", n)
	}
	var waits []string
	for _, s := range r.Steps {
		view.Steps = append(view.Steps, v.stepView(r, s))
		if s.Waits {
			waits = append(waits, v.w.must("wait_step", "step", s.Number, "time", v.guide.Quantity(s.Wait)))
		}
	}
	if len(waits) > 0 {
		view.Waits = v.w.must("waits", "list", strings.Join(waits, ", "))
	}
	return view
}

func (v *van) stepView(r *guide.Routine, s *guide.Step) stepView {
	fill := v.fill(r.Path, s.Page)
	step := stepView{Text: fill.html(s.Words), Where: v.place(s.Place)}
	if s.Page != nil {
		step.Link = v.link(r.Path, s.Page)
	}
	if s.Caution != nil {
		step.Caution = v.caution(fill, s.Caution)
	}
	step.Wait, step.Await = v.w.Waits(v.guide, s)
	return step
}

// walk draws the way that a routine takes, "" where it does not lead to several
// places.
func (v *van) walk(r *guide.Routine) template.HTML {
	var stops []figure.Stop
	var last *guide.Page // a step may be done apart from its thing
	for _, s := range r.Steps {
		if apart := s.Own || s.Where != ""; s.Place.Side != "" && (apart || s.Page != last) {
			stops = append(stops, figure.Stop{Point: v.pointAt(s.Place), Number: s.Number})
			if last = s.Page; apart {
				last = nil
			}
		}
	}
	if len(stops) < 2 {
		return ""
	}
	return template.HTML(figure.Walk(v.body(), stops, v.w.must("walk_words", "name", v.guide.Van.Name, "count", len(stops))))
}

func (v *van) symptom(s *guide.Symptom) {
	view := symptomView{Frame: v.frame(s.Path, s.Words.Title, ""), Heading: s.Words.Title, About: s.Words.About, Grave: s.Danger, Urgent: s.Urgent}
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
	view := ownView{Frame: v.frame(path, words.Title, ""), Heading: words.Title, Intro: fill.html(words.Page.Intro)}
	for _, s := range words.Page.Sections {
		view.Sections = append(view.Sections, section(fill, s))
	}
	v.page(path, "own", view)
}
