package manifest

import (
	"fmt"

	"doorpocket/components/problem"
)

// leaveOut reports keys that were written twice, and blanks the later ones.
func (p *parser) leaveOut(conflicts []conflict) {
	for i, c := range conflicts {
		if i < maxReported {
			p.reportConflict(c)
		}
		p.blank(c.from, c.to)
	}
}

// reportConflict names both places of a key that was written twice.
func (p *parser) reportConflict(c conflict) {
	span, first := p.source.Span(c.start, c.end), p.source.Span(c.first.start, c.first.end)
	summary, detail := explainConflict(c)
	p.found.Add(problem.New(problem.Error, span, "duplicate-key", summary, detail).
		WithLine(p.source.quoted(span.Start.Line)).WithNote(first, "first written here"))
}

// explainConflict says what to do about a name that is taken.
func explainConflict(c conflict) (summary, detail string) {
	name, first := quote(c.name), c.first.value
	switch {
	case first.origin == repeated && c.header:
		return "Header in single brackets for the list " + name,
			"Each item of this list begins with double brackets. Write [[...]] here too, or use another name."
	case c.header && first.shape == table && first.origin != written:
		return "Duplicate table " + name,
			"A table may begin only once; what is written here is not used. Put all of its keys in one place, or give one of the two another name."
	case c.header || c.through || first.shape == table || first.origin == repeated:
		return "Name " + name + " that is taken",
			"This name is in use, and nothing can be added to it here. Use another name, or put everything in one place."
	}
	return "Duplicate key " + name,
		"A key may be written only once in a table; what is written here is not used. Remove one of the two, or give one another name."
}

// blank replaces a part of the text by spaces. Line endings stay, so that all
// other places stay as well.
func (p *parser) blank(from, to int) {
	for i := from; i < to; i++ {
		if p.text[i] != '\n' && p.text[i] != '\r' {
			p.text[i] = ' '
		}
	}
}

// reportLimit says which limit the file goes over.
func (p *parser) reportLimit(l *limitHit) {
	summary, detail := "Tables or lists too deep inside each other",
		"At most 32 levels are read. Write fewer levels."
	switch l.code {
	case "key-too-long":
		summary, detail = "Key that is too long", "The names of a key may have 1000 bytes in all. Use a shorter name."
	case "too-many-keys":
		summary, detail = "Too many keys in one file", fmt.Sprintf("A file may have %d keys. Split it into several files.", p.most.keys)
	}
	p.report(l.start, l.end, l.code, summary, detail)
}
