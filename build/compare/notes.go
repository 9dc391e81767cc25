package compare

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/components/fact"
)

// Note is a [[changed]] for the file in which the change was made, without its
// day: with it, hirers who know the van are told.
type Note struct {
	File string // below the fleet folder
	Text string // lines of TOML
}

// TOML writes the note with its day.
func (n Note) TOML(on string) string { return "[[changed]]\non     = " + on + "\n" + n.Text }

// inFleet is the name of a file below the fleet folder.
func (s *Side) inFleet(file string) string { return strings.TrimPrefix(file, s.prefix) }

// sheetOf is the file of a van's build sheet, "" for none.
func sheetOf(v *spec.Van) string {
	if v.Build == "" {
		return ""
	}
	return "builds/" + v.Build + ".toml"
}

// notes are what hirers of a van may want to know, in the form of its files. Days
// until which something keeps are left out: the page of the thing has them.
func (c *comparison) notes(old, new *guide.Guide) []Note {
	var all []Note
	own := c.new.side.inFleet(new.Van.File)
	for _, p := range pair(old.Van, new.Van) {
		switch {
		case p.new == nil:
			if !p.old.Automatic {
				all = append(all, Note{c.goneFrom(new.Van, p.old), "gone   = \"" + p.old.System.ID + "\"\n"})
			}
		case p.new.Automatic && p.new != new.Van.Body:
		case p.old == nil || p.old.System.ID != p.new.System.ID:
			all = append(all, Note{c.new.side.inFleet(p.new.Span.File), "fitted = \"" + p.new.Name + "\"\n"})
		default:
			all = append(all, c.factNotes(own, old, new, p)...)
		}
	}
	return all
}

func (c *comparison) factNotes(own string, old, new *guide.Guide, p couple) []Note {
	var all []Note
	for i := range p.new.System.Facts {
		d := &p.new.System.Facts[i]
		was, _ := valueOf(old, p.old, p.old.System.Fact(d.Name))
		now, _ := valueOf(new, p.new, d)
		if was.Same(now) || d.Type.Kind == fact.Date {
			continue
		}
		file := c.new.side.inFleet(now.At.File)
		if !slices.Contains(c.new.side.texts(), file) {
			file = own // a default of the library, or not stated any more
		}
		text := fmt.Sprintf("fitted = %q\nfact   = %q\n", p.new.Name, d.Name)
		if !was.IsZero() {
			text += "was    = " + was.TOML() + "\n"
		}
		all = append(all, Note{file, text})
	}
	return all
}

// goneFrom is the file from which a thing was taken: the build sheet, where that
// had it and has it no more, or else the spec.
func (c *comparison) goneFrom(v *spec.Van, f *spec.Fitted) string {
	sheet := sheetOf(v)
	if sheet == "" || c.old.side.inFleet(f.Span.File) != sheet || strings.Contains(string(contents(c.new.side.files, sheet)), "[fitted."+f.Name+"]") {
		return c.new.side.inFleet(v.File)
	}
	return sheet
}

// gatherNotes puts the notes of all vans together, each once, by file.
func gatherNotes(results []result) []Note {
	var all []Note
	seen := map[Note]bool{}
	for _, r := range results {
		for _, n := range r.notes {
			if !seen[n] {
				seen[n] = true
				all = append(all, n)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Note) int { return strings.Compare(a.File, b.File) })
	return all
}

// WithNotes adds notes to the text of a file, those that it does not have yet, and
// tells how many they were.
func WithNotes(text []byte, notes []Note, on string) (after []byte, added int) {
	end := "\n"
	if strings.Contains(string(text), "\r\n") {
		end = "\r\n"
	}
	have := strings.ReplaceAll(string(text), "\r\n", "\n")
	var b strings.Builder
	for _, n := range notes {
		if strings.Contains(have, n.Text) {
			continue
		}
		b.WriteString("\n" + n.TOML(on))
		added++
	}
	if added == 0 {
		return text, 0
	}
	more := b.String()
	if have != "" && !strings.HasSuffix(have, "\n") {
		more = "\n" + more
	}
	return append(slices.Clone(text), strings.ReplaceAll(more, "\n", end)...), added
}
