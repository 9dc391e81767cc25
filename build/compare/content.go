package compare

import (
	"fmt"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/prose"
)

// page is a page of a guide: what it says, piece by piece, without layout.
type page struct {
	label, title string
	content      []string
}

// filler fills words for one page so that everything that a reader would see
// shows: links by where they lead, tables by what stands in them.
type filler struct{ guide.Filler }

// Link gives the path that a link leads to.
func (f filler) Link(scheme, target string) (string, bool) { return f.Guide.Path(scheme, target) }

// Embed names what is shown; of a table also what stands in it.
func (f filler) Embed(scheme, target, alt string) (string, bool) {
	if scheme != "table" {
		return scheme + " " + target + " " + alt, true
	}
	t := f.Page.Tables[target]
	if t == nil {
		return "", false
	}
	return fmt.Sprint(alt, t.Caption, t.Heads, t.Units, t.Rows, limitsOf(t), len(t.Assumptions)), true
}

func limitsOf(t *guide.Table) string {
	if t.Tick == nil {
		return ""
	}
	return fmt.Sprint(*t.Tick)
}

// contentOf is what the page of a thing says.
func contentOf(g *guide.Guide, p *guide.Page) []string {
	f := filler{guide.Filler{Guide: g, Page: p}}
	all := []string{p.Title, p.Words.About.HTML(f), p.Fitted.Note, place(p.Fitted.Place)}
	all = append(all, p.Words.Page.Intro.HTML(f))
	for _, i := range p.Sections {
		s := p.Words.Page.Sections[i]
		all = append(all, s.Title.HTML(f), s.Body.HTML(f))
	}
	for i := range p.Cautions {
		all = append(all, caution(f, &p.Cautions[i]))
	}
	for _, s := range p.Checks {
		all = append(all, s.Symptom.Path, s.Symptom.Words.Title)
		for _, c := range s.Checks {
			all = append(all, check(f, c))
		}
	}
	for _, r := range p.Routines {
		all = append(all, r.Path, r.Words.Title)
	}
	for _, other := range p.Related {
		all = append(all, other.Path, other.Title)
	}
	return all
}

func place(at spec.Place) string {
	return fmt.Sprint(at.Side, " ", at.Along.Quantity, " ", at.Up.Quantity, " ", at.Across.Quantity)
}

func caution(f prose.Filler, c *guide.Caution) string {
	if c == nil {
		return ""
	}
	return strings.Join([]string{c.Signal, strings.Join(c.Signs, " "), c.Words.Hazard.HTML(f), c.Words.Consequence.HTML(f), c.Words.Avoid.HTML(f)}, "\n")
}

func check(f prose.Filler, c guide.Check) string {
	return fmt.Sprint(c.Words.Look.HTML(f), "\n", c.Words.Yes.HTML(f), "\n", c.Words.No.HTML(f), "\n", c.Likelihood, c.Danger, c.Effort.Quantity)
}

// line is a step or a check, by what makes it the same on both sides.
type line struct{ key, text string }

// linesOf are the steps of a routine in order, in words.
func linesOf(g *guide.Guide, r *guide.Routine) []line {
	var all []line
	for _, s := range r.Steps {
		all = append(all, line{s.Key(), s.Words.Text(filler{guide.Filler{Guide: g, Page: s.Page}})})
	}
	return all
}

// looksOf are the checks of a symptom in order, in words.
func looksOf(g *guide.Guide, s *guide.Symptom) []line {
	var all []line
	for _, c := range s.Checks {
		all = append(all, line{c.Page.Fitted.Name + ":" + c.ID, c.Words.Look.Text(filler{guide.Filler{Guide: g, Page: c.Page}})})
	}
	return all
}

// stepsOf is what the page of a routine says.
func stepsOf(g *guide.Guide, r *guide.Routine) []string {
	all := []string{r.Words.Title, r.Words.About}
	for _, s := range r.Steps {
		f := filler{guide.Filler{Guide: g, Page: s.Page}}
		path, waits := "", ""
		if s.Page != nil {
			path = s.Page.Path + s.Page.Title
		}
		if s.Waits {
			waits = s.Wait.Quantity.String()
		}
		for _, before := range s.Awaits {
			waits += " " + before.Key()
		}
		all = append(all, strings.Join([]string{s.Words.HTML(f), caution(f, s.Caution), path, waits, place(s.Place)}, "\n"))
	}
	return all
}

// checksOf is what the page of a symptom says.
func checksOf(g *guide.Guide, s *guide.Symptom) []string {
	all := []string{s.Words.Title, s.Words.About}
	for _, c := range s.Checks {
		all = append(all, c.Page.Path, c.Page.Title, check(filler{guide.Filler{Guide: g, Page: c.Page}}, c))
	}
	return all
}

func goneContent(x *guide.Gone) []string {
	all := []string{x.Title, string(x.Became)}
	if x.Now != nil {
		all = append(all, x.Now.Path(), x.Now.Van, x.Now.Title)
	}
	return all
}

func changedOf(g *guide.Guide) []string {
	var all []string
	for _, c := range g.Changed {
		path := ""
		if c.Page != nil {
			path = c.Page.Path + c.Page.Title
		}
		all = append(all, strings.Join([]string{c.Day, path, c.What, c.Now, c.Was, c.Gone, c.Text}, "\n"))
	}
	return all
}
