package components_test

import (
	"html"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"doorpocket/components"
	"doorpocket/components/prose"
	"doorpocket/components/reading"
)

// What the words of every system must keep to. Readers are tired, it is dark,
// English may not be their own language.
const (
	hardestGrade    = 8.0
	longestSentence = 25  // words
	shortestPage    = 100 // words that one van shows
	longestPage     = 700
	fewestSearch    = 8
)

// Every system says what it must, in words that can be read, on every van.
func TestWordsOfSystems(t *testing.T) {
	lib := library(t)
	for _, s := range lib.Systems() {
		for lang := range s.Words {
			if lang != "en" {
				t.Errorf("%s: these rules are for English; write those of %q", s.ID, lang)
			}
		}
		t.Run(s.ID, func(t *testing.T) {
			c := wordCheck{T: t, lib: lib, system: s, words: s.Words["en"], seen: map[string]bool{}}
			c.heading()
			c.complete()
			c.source()
			for _, v := range vansWith(lib, s) {
				c.on(v)
			}
		})
	}
}

// wordCheck looks at the words of one system. It says each thing once, however
// many vans show it.
type wordCheck struct {
	*testing.T
	lib    *components.Library
	system *components.System
	words  *components.Words
	seen   map[string]bool
}

func (c *wordCheck) fault(what, text string) {
	c.once(what+text, func() { c.Errorf("%s: %s", what, text) })
}

// once does what was not yet done for the key.
func (c *wordCheck) once(key string, do func()) {
	if !c.seen[key] {
		c.seen[key] = true
		do()
	}
}

// heading looks at title, first sentence and search words.
func (c *wordCheck) heading() {
	if n := len(reading.Words(c.words.Title)); n < 1 || n > 5 {
		c.fault("a title has 1 to 5 words", c.words.Title)
	}
	about := c.words.About.Text(c.anyVan())
	if n := len(reading.Sentences(about)); n != 1 || !strings.HasSuffix(about, ".") {
		c.fault("about is one sentence", about)
	}
	searchable(c.T, c.system.ID, c.words.Search)
}

func (c *wordCheck) anyVan() *onVan { return vansWith(c.lib, c.system)[0] }

// complete looks whether all that needs words has some, and names what exists.
func (c *wordCheck) complete() {
	for _, hazard := range c.system.Hazards {
		if !slices.ContainsFunc(c.system.Cautions, func(v components.Caution) bool { return v.Hazard == hazard }) {
			c.fault("no caution for the hazard", hazard)
		}
	}
	for _, id := range c.system.Related {
		if c.lib.System(id) == nil || id == c.system.ID {
			c.fault("related to what is not there", id)
		}
	}
	for _, v := range c.system.Cautions {
		said := c.words.Cautions[v.ID]
		if said.Hazard.Empty() || said.Consequence.Empty() || said.Avoid.Empty() {
			c.fault("a caution says hazard, consequence and what to do", v.ID)
		}
	}
	for _, v := range c.system.Steps {
		if c.words.Steps[v.ID].Empty() {
			c.fault("a step without words", v.ID)
		}
	}
	for _, v := range c.system.Checks {
		if said := c.words.Checks[v.ID]; said.Look.Empty() || !v.Danger && said.Yes.Empty() && said.No.Empty() {
			c.fault("a check without words", v.ID)
		}
	}
}

// on looks at what one van shows.
func (c *wordCheck) on(v *onVan) {
	page, fragments := c.page(v)
	lines := c.lines(v)
	if n := len(reading.Words(page + " " + fragments)); n < shortestPage || n > longestPage {
		c.fault("a page has 100 to 700 words", strings.Join(strings.Fields(page)[:min(12, len(strings.Fields(page)))], " ")+" ...: "+strconv.Itoa(n))
	}
	for what, text := range map[string]string{"page": page, "page and lines": page + "\n\n" + strings.Join(lines, "\n\n")} {
		c.once(text, func() {
			if grade := reading.Grade(text); grade > hardestGrade {
				c.fault("hard to read", what)
			}
		})
	}
	for _, text := range append(lines, page, fragments) {
		c.once("sentences of "+text, func() { checkSentences(text, c.fault) })
	}
	for _, s := range c.system.Steps {
		if c.holds(v, s.When.String()) {
			c.oneAction(c.words.Steps[s.ID].Text(v))
		}
	}
}

func (c *wordCheck) holds(v *onVan, when string) bool { return when == "" || v.holds(when) }

// page is what a van shows of the page: the running text, and apart from it the
// headings and cells of tables, which are no sentences.
func (c *wordCheck) page(v *onVan) (running, fragments string) {
	var text, parts []string
	take := func(d prose.Doc) {
		r, f := blocks(d.HTML(v))
		text, parts = append(text, r), append(parts, f)
	}
	take(c.words.Page.Intro)
	for _, s := range c.words.Page.Sections {
		if c.holds(v, s.When) {
			parts = append(parts, s.Title.Text(v))
			take(s.Body)
		}
	}
	return strings.Join(text, "\n\n"), strings.Join(parts, "\n\n")
}

// lines are the one-line words that stand on a van.
func (c *wordCheck) lines(v *onVan) []string {
	all := []string{c.words.About.Text(v)}
	add := func(when string, docs ...prose.Doc) {
		if c.holds(v, when) {
			for _, d := range docs {
				all = append(all, d.Text(v))
			}
		}
	}
	for _, s := range c.system.Cautions {
		said := c.words.Cautions[s.ID]
		add(s.When.String(), said.Hazard, said.Consequence, said.Avoid)
	}
	for _, s := range c.system.Steps {
		add(s.When.String(), c.words.Steps[s.ID])
	}
	for _, s := range c.system.Checks {
		said := c.words.Checks[s.ID]
		add(s.When.String(), said.Look, said.Yes, said.No)
	}
	return all
}

var (
	tableMarkup = regexp.MustCompile(`(?s)<table>.*?</table>|<h\d>.*?</h\d>`)
	blockEnd    = regexp.MustCompile(`</(?:p|li|ul|ol|h\d|td|th|tr)>|<(?:ul|ol)>`)
	anyTag      = regexp.MustCompile(`<[^>]*>`)
)

// blocks is filled-in HTML as plain text, an empty line between blocks:
// sentences, and apart from them headings and the cells of tables.
func blocks(markup string) (running, fragments string) {
	plain := func(s string) string {
		return html.UnescapeString(anyTag.ReplaceAllString(blockEnd.ReplaceAllString(s, "$0\n\n"), ""))
	}
	return plain(tableMarkup.ReplaceAllString(markup, "\n\n")), plain(strings.Join(tableMarkup.FindAllString(markup, -1), "\n\n"))
}

var twoActions = regexp.MustCompile(`(?i)\band then\b|, then\b`)

// oneAction looks for a second thing to do in one step.
func (c *wordCheck) oneAction(step string) {
	if found := twoActions.FindString(step); found != "" {
		c.fault("two actions in one step, joined by "+found, step)
	}
}

var numbered = regexp.MustCompile(`^\d+\. `)

// source looks at the words as they are written: no figure may stand in them.
func (c *wordCheck) source() {
	folder := "components/" + c.system.ID + "/"
	for _, name := range []string{"page.en.md", "lines.en.toml"} {
		for line := range strings.SplitSeq(string(c.lib.Sources[folder+name]), "\n") {
			if bare := bareFigure(line); bare != "" {
				c.fault("a figure with a unit in words, not a fact or constant: "+bare, line)
			}
			if numbered.MatchString(line) {
				c.oneAction(line)
			}
		}
	}
	for _, options := range slices.Sorted(maps.Keys(c.words.Choices)) {
		for _, words := range c.words.Choices[options] {
			checkRules(words, c.fault)
		}
	}
}
