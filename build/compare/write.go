package compare

import (
	"fmt"
	"strings"
)

// Section is a piece of a report in words: a heading, and lines with what stands
// below each.
type Section struct {
	Title string
	Level int // 1 for a van or a group, 2 within it
	Lines []Lined
}

// Lined is one line in words.
type Lined struct {
	Label, Title, Text string
	Below              []string
}

// Headline begins a report: what it is about, and how much changed.
func (r *Report) Headline(v Voice) (title, about string) {
	return v.Say("compare_title", "fleet", r.Fleet), v.Say("compare_about", "old", r.Old, "new", r.New)
}

// Sections puts a report into words. Where nothing changed there is none.
func (r *Report) Sections(v Voice) []Section {
	var all []Section
	if !r.Shared.empty() {
		all = append(all, Section{Title: v.Say("compare_shared"), Level: 1})
		all = append(all, r.Shared.sections(v)...)
	}
	vans := func(key string, list []VanRef, labels string) {
		if len(list) == 0 {
			return
		}
		s := Section{Title: v.Say(key), Level: 1}
		for _, van := range list {
			line := Lined{Label: van.Code, Title: van.Name}
			if len(van.Labels) > 0 {
				line.Text = v.Say(labels, "count", len(van.Labels), "list", strings.Join(van.Labels, ", "))
			}
			s.Lines = append(s.Lines, line)
		}
		all = append(all, s)
	}
	vans("compare_joined", r.Joined, "compare_stick_all")
	vans("compare_left", r.Left, "compare_take_off_all")
	for _, g := range r.Groups {
		s := Section{Title: g.title(v), Level: 1}
		if len(g.Vans) > 1 {
			s.Lines = []Lined{{Text: g.names(v)}}
		}
		all = append(all, s)
		all = append(all, g.sections(v)...)
	}
	if len(r.Files) > 0 {
		s := Section{Title: v.Say("compare_files"), Level: 1}
		for _, f := range r.Files {
			s.Lines = append(s.Lines, Lined{Title: f.Name, Text: v.Say("compare_lines", "added", f.Added, "removed", f.Removed)})
		}
		all = append(all, s)
	}
	return all
}

func (g Group) title(v Voice) string {
	n := len(g.Vans)
	switch {
	case n == 1:
		return g.Vans[0].Code + " " + g.Vans[0].Name
	case g.Whole:
		return v.Say("compare_all_of_sheet", "count", n, "build", g.Build)
	case g.Build != "":
		return v.Say("compare_of_sheet", "count", n, "build", g.Build)
	}
	return v.Say("compare_of_several", "count", n)
}

// mostNames is how many vans of a group are named for people; JSON has all.
const mostNames = 40

func (g Group) names(v Voice) string {
	var names []string
	for i, van := range g.Vans {
		if i == mostNames {
			names = append(names, v.Say("compare_more", "count", len(g.Vans)-i))
			break
		}
		names = append(names, van.Code+" "+van.Name)
	}
	return strings.Join(names, ", ")
}

func (b Both) sections(v Voice) []Section {
	var all []Section
	if lines := hirerLines(v, b.Hirers); len(lines) > 0 {
		all = append(all, Section{Title: v.Say("compare_hirers"), Level: 2, Lines: lines})
	}
	if lines := staffLines(v, b.Staff); len(lines) > 0 {
		all = append(all, Section{Title: v.Say("compare_staff"), Level: 2, Lines: lines})
	}
	return all
}

// pageKinds are told in one line each.
var pageKinds = []struct {
	kind Kind
	key  string
}{{PageNew, "compare_pages_new"}, {PageChanged, "compare_pages_changed"}, {PageGone, "compare_pages_gone"}}

func hirerLines(v Voice, list []Change) []Lined {
	var all []Lined
	pages := map[Kind][]string{}
	for _, c := range list {
		switch c.Kind {
		case PageNew, PageChanged, PageGone:
			pages[c.Kind] = append(pages[c.Kind], strings.TrimSpace(c.Label+" "+c.Title))
		default:
			all = append(all, Lined{Label: c.Label, Title: c.Title, Text: c.Text, Below: below(c.Parts)})
		}
	}
	for _, p := range pageKinds {
		if names := pages[p.kind]; len(names) > 0 {
			all = append(all, Lined{Text: v.Say(p.key, "list", strings.Join(names, ", "))})
		}
	}
	return all
}

// labelKinds are told in one line each, first of all: they are work to do.
var labelKinds = []struct {
	kind Kind
	key  string
}{{Stick, "compare_stick"}, {Restick, "compare_restick"}, {TakeOff, "compare_take_off"}, {NoCode, "compare_no_code"}}

func staffLines(v Voice, list []StaffChange) []Lined {
	var all, others []Lined
	labels := map[Kind][]string{}
	for _, c := range list {
		if name := strings.TrimSpace(c.Label + " " + c.Title); name != "" && c.Kind != Duty {
			labels[c.Kind] = append(labels[c.Kind], name)
			continue
		}
		others = append(others, Lined{Title: c.Title, Text: c.Text, Below: below(c.Parts)})
	}
	for _, k := range labelKinds {
		if names := labels[k.kind]; len(names) > 0 {
			all = append(all, Lined{Text: v.Say(k.key, "list", strings.Join(names, ", "))})
		}
	}
	return append(all, others...)
}

func below(parts []Part) []string {
	var all []string
	for _, p := range parts {
		all = append(all, p.Text)
	}
	return all
}

// most is how many rows stand below a line for people; JSON has all.
const most = 12

// Text writes a report for a terminal.
func (r *Report) Text(v Voice) string {
	return r.written(v, writing{
		title:   func(text string) string { return text + "\n" },
		heading: func(level int, text string) string { return "\n" + strings.Repeat("  ", level-1) + text + "\n" },
		line:    func(level int, l Lined) string { return strings.Repeat("  ", level) + l.plain() + "\n" },
		below:   func(level int, text string) string { return strings.Repeat("  ", level+1) + text + "\n" },
	})
}

// Markdown writes a report as CommonMark.
func (r *Report) Markdown(v Voice) string {
	return r.written(v, writing{
		gap:   "\n",
		title: func(text string) string { return "# " + escape(text) + "\n\n" },
		heading: func(level int, text string) string {
			return "\n" + strings.Repeat("#", level+1) + " " + escape(text) + "\n"
		},
		line: func(_ int, l Lined) string {
			if l.Label == "" && l.Title == "" {
				return "- " + escape(l.Text) + "\n"
			}
			return "- " + strings.TrimSpace("**"+escape(strings.TrimSpace(l.Label+" "+l.Title))+"** "+escape(l.Text)) + "\n"
		},
		below: func(_ int, text string) string { return "  - " + escape(text) + "\n" },
	})
}

// plain is a line without markup.
func (l Lined) plain() string {
	head := strings.TrimSpace(l.Label + " " + l.Title)
	switch {
	case head == "":
		return l.Text
	case l.Text == "":
		return head
	}
	return head + ": " + l.Text
}

// marks are what could mean something in CommonMark.
var marks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "[", `\[`, "]", `\]`, "<", `\<`, "&", `\&`, "#", `\#`, "|", `\|`, "\n", " ")

func escape(text string) string { return marks.Replace(text) }

// writing is how the pieces of a report are written.
type writing struct {
	gap     string // between a heading and lines
	title   func(text string) string
	heading func(level int, text string) string
	line    func(level int, l Lined) string
	below   func(level int, text string) string
}

func (r *Report) written(v Voice, w writing) string {
	var b strings.Builder
	title, about := r.Headline(v)
	b.WriteString(w.title(title))
	b.WriteString(about + "\n")
	sections := r.Sections(v)
	if len(sections) == 0 {
		b.WriteString("\n" + v.Say("compare_nothing") + "\n")
	}
	for _, s := range sections {
		b.WriteString(w.heading(s.Level, s.Title))
		if len(s.Lines) > 0 {
			b.WriteString(w.gap)
		}
		for _, l := range s.Lines {
			b.WriteString(w.line(s.Level, l))
			for i, text := range l.Below {
				if i == most && len(l.Below) > most+1 {
					b.WriteString(w.below(s.Level, v.Say("compare_more", "count", len(l.Below)-most)))
					break
				}
				b.WriteString(w.below(s.Level, text))
			}
		}
	}
	if r.Same > 0 && len(sections) > 0 {
		fmt.Fprintf(&b, "\n%s\n", v.Say("compare_same", "count", r.Same))
	}
	return breakable.Replace(b.String())
}

// breakable turns spaces that keep a number and its unit together into those that
// one types, so that somebody can look for what stands there.
var breakable = strings.NewReplacer("\u00a0", " ", "\u202f", " ")
