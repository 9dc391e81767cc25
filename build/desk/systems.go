package desk

import (
	"fmt"
	"slices"
	"strings"
	"text/tabwriter"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/prose"
)

// Systems lists the systems of a family, or of all, with what each is, for
// whoever writes a spec.
func Systems(lib *components.Library, family, lang string) string {
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 4, 2, ' ', 0)
	for _, f := range lib.Families {
		if family != "" && f.ID != family {
			continue
		}
		if b.Len() > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(&b, "%s (%s)\n", f.Words[lang].Title, f.ID)
		for _, s := range lib.Systems() {
			if s.Family == f.ID {
				_, _ = fmt.Fprintf(w, "  %s\t%s%s\n", s.ID, s.Words[lang].Title, whenFitted(s))
			}
		}
		_ = w.Flush() // a strings.Builder takes everything
	}
	return b.String()
}

// whenFitted says what one need not fit.
func whenFitted(s *components.System) string {
	switch {
	case s.ID == components.BodySystem:
		return " (its facts stand in [body])"
	case len(s.Automatic) > 0:
		return " (joins by itself)"
	}
	return ""
}

// System tells what a spec can state about one system: every fact with what it
// is, what it can be and when it is needed.
func System(lib *components.Library, s *components.System, lang string) string {
	words := s.Words[lang]
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n", s.ID, words.Title)
	if about := words.About; len(about.Values()) == 0 {
		fmt.Fprintf(&b, "%s\n", about.Text(noVan{}))
	}
	header(&b, lib, s)
	facts(&b, s, words, "Needed", func(d fact.Decl) bool { return d.Required })
	facts(&b, s, words, "If you like", func(d fact.Decl) bool { return !d.Required })
	for _, list := range []struct {
		what  string
		names []string
	}{{"Its page can show the tables", s.Tables}, {"It belongs together with", s.Related}, {"It carries the hazards", s.Hazards}} {
		if len(list.names) > 0 {
			fmt.Fprintf(&b, "\n%s: %s\n", list.what, strings.Join(list.names, ", "))
		}
	}
	return b.String()
}

// header shows how a spec begins with the system.
func header(b *strings.Builder, lib *components.Library, s *components.System) {
	name := s.ID[strings.Index(s.ID, "/")+1:]
	switch {
	case s.ID == components.BodySystem:
		b.WriteString("\n  [body]\n")
		return
	case len(s.Automatic) > 0:
		fmt.Fprintf(b, "\nIt joins by itself where one of these is fitted: %s.\nTo state something about it, or to give it a label, fit it:\n", strings.Join(s.Automatic, ", "))
	}
	fmt.Fprintf(b, "\n  [fitted.%s]\n  system = %q\n", name, s.ID)
	if s.Label {
		fmt.Fprintf(b, "  label  = \"%s...\"   # it wants one beside it\n  at     = { side = \"...\", along = \"... m\", up = \"... m\" }\n", lib.Family(s.Family).Letter)
	}
}

// facts lists those of the facts that are asked for.
func facts(b *strings.Builder, s *components.System, words *components.Words, title string, wanted func(fact.Decl) bool) {
	listed := slices.DeleteFunc(slices.Clone(s.Facts), func(d fact.Decl) bool { return !wanted(d) })
	if len(listed) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s:\n", title)
	for _, d := range listed {
		fmt.Fprintf(b, "  %s: %s\n", d.Name, words.Facts[d.Name])
		if len(d.Of) == 0 {
			fmt.Fprintf(b, "      %s\n", d.Form())
		} else {
			options(b, d, words)
		}
		if d.When != "" {
			fmt.Fprintf(b, "      only where %s\n", d.When)
		}
		if !d.Default.IsZero() {
			fmt.Fprintf(b, "      %s, unless you state it\n", stated(d.Default))
		}
	}
}

// options lists what a choice can be, each with the words that pages use.
func options(b *strings.Builder, d fact.Decl, words *components.Words) {
	if d.Type.Kind == fact.Choices {
		b.WriteString("      a list of any of these:\n")
	}
	w := tabwriter.NewWriter(b, 0, 4, 2, ' ', 0)
	for _, option := range d.Of {
		_, _ = fmt.Fprintf(w, "      %q\t%s\n", option, words.Choices[d.Name][option])
	}
	_ = w.Flush() // a strings.Builder takes everything
}

// stated is a value as a spec writes it.
func stated(v fact.Value) string {
	switch v.Kind {
	case fact.Quantity:
		return fmt.Sprintf("%q", v.Quantity.String())
	case fact.Choice:
		return fmt.Sprintf("%q", v.Options[0])
	case fact.Choices:
		return fmt.Sprintf("%q", v.Options)
	case fact.Count:
		return fmt.Sprint(v.Count)
	case fact.YesNo:
		return fmt.Sprint(v.Yes)
	case fact.Date:
		return v.Date.String()
	}
	return fmt.Sprintf("%q", v.Text)
}

// noVan fills in words that name nothing of a van.
type noVan struct{}

var _ prose.Filler = noVan{}

func (noVan) Value(string, string) (string, bool)         { return "", false }
func (noVan) Link(string, string) (string, bool)          { return "", false }
func (noVan) Embed(string, string, string) (string, bool) { return "", false }
