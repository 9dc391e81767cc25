package booklet

import (
	"fmt"
	"strconv"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/paper"
	"doorpocket/build/render"
	"doorpocket/components"
	"doorpocket/components/prose"
)

func pageNumber(page int) string {
	if page == 0 {
		return "–" // before it is known
	}
	return strconv.Itoa(page)
}

// chapters is the guide in the order of its start: danger first.
func (c *composer) chapters() []paper.Block {
	g := c.guide
	all := c.symptoms("danger", c.say("danger"), true)
	all = append(all, c.plans()...)
	all = append(all, c.routines()...)
	all = append(all, c.symptoms("wrong", c.say("wrong"), false)...)
	for _, f := range g.Families() {
		all = append(all, c.chapter("family:"+f.ID, f.Words.Title, f.Words.About)...)
		for _, p := range f.Pages {
			all = append(all, c.system(p)...)
		}
	}
	return append(all, c.own()...)
}

func (c *composer) symptoms(id, words string, urgent bool) []paper.Block {
	var all []paper.Block
	for _, s := range c.guide.Symptoms {
		if s.Urgent != urgent {
			continue
		}
		if all == nil {
			all = c.chapter(id, words, "")
		}
		all = append(all, c.symptom(s)...)
	}
	return all
}

func (c *composer) symptom(s *guide.Symptom) []paper.Block {
	all := c.part(s.Path, "", s.Words.Title, s.Words.About)
	if len(s.Words.First) > 0 {
		all = append(all, c.first(s))
	}
	all = append(all, paper.WithNext{Block: plain(strong, c.say("checks"))})
	for i, check := range s.Checks {
		all = append(all, c.check(i+1, check))
	}
	return append(all, paper.Together{plain(strong, c.say("still_wrong")), plain(body, c.say("still_wrong_help"))})
}

// first is what to do before any check.
func (c *composer) first(s *guide.Symptom) paper.Block {
	box := paper.Box{Frame: paper.Black, Line: 0.5, Pad: 2, Title: c.say("first"), Type: strong, Bar: paper.Colour{R: 225, G: 225, B: 225}, After: 3}
	if s.Danger {
		box.Frame, box.Bar, box.Type.Colour = bars["danger"], bars["danger"], paper.White
	}
	for i, d := range s.Words.First {
		box.Blocks = append(box.Blocks, paper.Item{Type: body, Mark: fmt.Sprint(i + 1), Plate: true, Indent: 6.5, Blocks: []paper.Block{para(body, c.spans(nil, d))}})
	}
	if s.Urgent {
		call := c.guide.Operator.Call
		box.Blocks = append(box.Blocks, plain(strong, c.say("call_emergency", "number", call.Emergency)),
			plain(strong, c.say("call_help", "name", c.guide.Operator.Name)+": "+call.Helpline))
	}
	return box
}

var likely = map[components.Likelihood]string{
	components.Common: "likely_common", components.Occasional: "likely_occasional", components.Rare: "likely_rare",
}

func (c *composer) check(n int, check guide.Check) paper.Block {
	p := check.Page
	blocks := []paper.Block{para(paper.Type{Size: body.Size, Bold: true}, c.spans(p, check.Words.Look))}
	answer := func(key string, words []paper.Span) {
		if len(words) > 0 {
			blocks = append(blocks, para(body, append([]paper.Span{{Text: c.say(key) + " ", Bold: true}}, words...)))
		}
	}
	answer("yes", c.spans(p, check.Words.Yes))
	answer("no", c.spans(p, check.Words.No))
	meta := p.Title + " (" + c.onPage(p.Path) + ")"
	if p.Code != "" {
		meta = p.Code + " " + meta
	}
	if check.Likelihood != 0 {
		meta += " · " + c.say(likely[check.Likelihood])
	}
	if !check.Effort.IsZero() {
		meta += ", " + c.say("takes", "time", c.guide.Quantity(check.Effort))
	}
	blocks = append(blocks, plain(fine, meta), paper.Space(1))
	return paper.Together{paper.Item{Type: body, Mark: fmt.Sprint(n), Plate: true, Indent: 7.5, Blocks: blocks}}
}

func (c *composer) routines() []paper.Block {
	if len(c.guide.Routines) == 0 {
		return nil
	}
	all := c.chapter("do", c.say("do"), "")
	for _, r := range c.guide.Routines {
		all = append(all, c.part(r.Path, "", r.Words.Title, r.Words.About)...)
		for _, s := range r.Steps {
			all = append(all, c.step(s))
		}
	}
	return all
}

// step is a step with the caution before it, on one page. One of the operator's
// own may be about nothing that has a page.
func (c *composer) step(s *guide.Step) paper.Block {
	var all paper.Together
	if s.Caution != nil {
		all = append(all, c.caution(s.Page, *s.Caution))
	}
	var meta []string
	if s.Page != nil {
		title := s.Page.Title + " (" + c.onPage(s.Page.Path) + ")"
		if s.Page.Code != "" {
			title = s.Page.Code + " " + title
		}
		meta = append(meta, title)
	}
	if where := c.where(s.Place); where != "" {
		meta = append(meta, where)
	}
	blocks := []paper.Block{paper.Para{Type: body, Spans: c.spans(s.Page, s.Words)}}
	if len(meta) > 0 {
		blocks = append(blocks, plain(fine, strings.Join(meta, " · ")))
	}
	wait, await := c.words.Waits(c.guide, s)
	for _, wait := range append(await, wait) {
		blocks = append(blocks, plain(paper.Type{Size: body.Size, Bold: true}, wait))
	}
	ticked := paper.Item{Type: body, Tick: true, Indent: 5.5, Blocks: blocks}
	return append(all, paper.Item{Type: body, Mark: fmt.Sprint(s.Number), Plate: true, Indent: 8, Blocks: []paper.Block{ticked}})
}

func (c *composer) caution(p *guide.Page, v guide.Caution) paper.Block {
	t := strong
	t.Colour = barInk[v.Signal]
	return paper.Box{
		Frame: paper.Black, Line: 0.3, Pad: 2, Title: c.say("signal_" + v.Signal), Type: t, Bar: bars[v.Signal], Signs: v.Signs, After: 2.5,
		Blocks: []paper.Block{
			para(paper.Type{Size: body.Size, Bold: true}, c.spans(p, v.Words.Hazard)),
			para(body, c.spans(p, v.Words.Consequence)), para(body, c.spans(p, v.Words.Avoid)),
		},
	}
}

func (c *composer) system(p *guide.Page) []paper.Block {
	about := guide.Filler{Guide: c.guide, Page: p}.Text(p.Words.About)
	all := c.part(p.Path, p.Code, p.Title, about)
	if where := c.where(p.Fitted.Place); where != "" {
		all = append(all, plain(small, where))
	}
	all = append(all, c.blocks(p, p.Words.Page.Intro)...)
	if p.Fitted.Note != "" {
		all = append(all, para(body, []paper.Span{{Text: c.say("note") + ": ", Bold: true}, {Text: p.Fitted.Note}}))
	}
	all = append(all, c.photos(p)...)
	for _, v := range p.Cautions {
		all = append(all, c.caution(p, v))
	}
	for _, i := range p.Sections {
		s := p.Words.Page.Sections[i]
		all = append(all, paper.WithNext{Block: para(strong, c.spans(p, s.Title))})
		all = append(all, c.blocks(p, s.Body)...)
	}
	return append(all, c.elsewhere(p)...)
}

// elsewhere says where in the booklet more is said of a system.
func (c *composer) elsewhere(p *guide.Page) []paper.Block {
	var all []paper.Block
	list := func(key string, items []string) {
		if len(items) == 0 {
			return
		}
		spans := []paper.Span{{Text: c.say(key) + ": ", Bold: true}}
		for i, item := range items {
			if i > 0 {
				spans = append(spans, paper.Span{Text: " · "})
			}
			spans = append(spans, paper.Span{Text: item})
		}
		all = append(all, para(small, spans))
	}
	var wrong, part, also []string
	for _, s := range p.Checks {
		wrong = append(wrong, s.Symptom.Words.Title+" ("+c.onPage(s.Symptom.Path)+")")
	}
	for _, r := range p.Routines {
		part = append(part, r.Words.Title+" ("+c.onPage(r.Path)+")")
	}
	for _, o := range p.Related {
		also = append(also, o.Title+" ("+c.onPage(o.Path)+")")
	}
	list("if_wrong", wrong)
	list("takes_part", part)
	list("see_also", also)
	return all
}

// own is the chapter of the operator's own pages.
func (c *composer) own() []paper.Block {
	var all []paper.Block
	for _, own := range c.guide.Operator.Pages {
		w, ok := own.Words[c.guide.Lang]
		if !ok {
			continue
		}
		if all == nil {
			all = c.chapter("read", c.say("read", "name", c.guide.Operator.Name), "")
		}
		all = append(all, c.part(guide.OwnPath(own.Name), "", w.Title, "")...)
		all = append(all, c.blocks(nil, w.Page.Intro)...)
		for _, s := range w.Page.Sections {
			all = append(all, paper.WithNext{Block: para(strong, c.spans(nil, s.Title))})
			all = append(all, c.blocks(nil, s.Body)...)
		}
	}
	return all
}

// embed is a table, a plot or a photograph; where something is stands in the
// words and on the plan.
func (c *composer) embed(p *guide.Page, scheme, target, alt string) []paper.Block {
	switch {
	case scheme == "table":
		return c.table(p, target, alt)
	case scheme == "picture":
		return c.photo(p, target)
	case target == "locator":
		return nil
	}
	svg := render.Plot(p.Tables[components.Plots()[target]], alt)
	if svg == "" {
		return nil
	}
	drawing, err := paper.ParseDrawing(svg, nil)
	if err != nil {
		c.fail(err)
		return nil
	}
	return []paper.Block{paper.Picture{Drawing: drawing, Width: 100, After: 3}}
}

func (c *composer) table(p *guide.Page, id, alt string) []paper.Block {
	t := p.Tables[id]
	if t == nil {
		return nil
	}
	caption := t.Caption
	if alt != "" {
		caption = alt
	}
	out := paper.Table{Type: small, Heads: t.Heads, Numeric: t.Numeric, After: 1}
	for _, row := range t.Rows {
		var cells []string
		for _, cell := range row {
			cells = append(cells, cell.Text)
		}
		out.Rows = append(out.Rows, cells)
	}
	all := []paper.Block{paper.WithNext{Block: plain(paper.Type{Size: body.Size, Bold: true}, caption)}, out}
	for _, a := range t.Assumptions {
		all = append(all, para(fine, c.spans(p, a)))
	}
	for _, s := range t.Sources {
		all = append(all, plain(fine, c.say("sources")+": "+s))
	}
	return append(all, paper.Space(2))
}

// photos are the photographs of a fitted system that its words do not place.
func (c *composer) photos(p *guide.Page) []paper.Block {
	placed := map[string]bool{}
	docs := []prose.Doc{p.Words.Page.Intro}
	for _, i := range p.Sections {
		docs = append(docs, p.Words.Page.Sections[i].Body)
	}
	for _, d := range docs {
		for _, e := range d.Embeds() {
			if e.Scheme == "picture" {
				placed[e.Name] = true
			}
		}
	}
	var all []paper.Block
	for _, picture := range p.Fitted.Pictures {
		if !placed[picture.Stem()] {
			all = append(all, c.photo(p, picture.Stem())...)
		}
	}
	return all
}

// photo is a photograph of a fitted system with its words.
func (c *composer) photo(p *guide.Page, stem string) []paper.Block {
	picture := p.Fitted.Picture(stem)
	if picture == nil {
		return nil
	}
	made, ok := c.guide.Operator.Pictures[picture.File]
	if !ok || len(made.Variants) == 0 {
		return nil
	}
	v := made.Largest()
	photo := paper.Photo{JPEG: v.Data, Wide: v.Width, High: v.Height, Width: 100, Height: 75}
	together := paper.Together{nil, plain(fine, picture.Alt)}
	for i, m := range picture.Marks {
		photo.Marks = append(photo.Marks, paper.Spot{Across: m.Across, Down: m.Down})
		together = append(together, plain(fine, fmt.Sprintf("%d  %s", i+1, m.Text)))
	}
	together[0] = photo
	return []paper.Block{together}
}
