// Package prose compiles the words of the library once, so that a van only
// has to fill them in.
//
// A page is CommonMark with tables plus three things: placeholders such as
// {$capacity} or {$front :unit unit=psi}, addresses that the build resolves
// for one van (table:, figure:, picture:, system:, fitted:, routine:,
// symptom:, page:), and sections that stand only under a condition:
//
//	## Second cylinder {when="cylinders > 1"}
//
// ParsePage and ParseLine turn the source into pieces: finished HTML with
// holes between. Filling a Doc copies the pieces and asks a Filler for what
// belongs in the holes; nothing is parsed again.
//
// A paragraph, list item or table row that names a fact which the van lacks
// is left out whole, and so is a list or table of which nothing is left: no
// page can print a number that nobody stated.
package prose

import (
	"doorpocket/components/condition"
	"doorpocket/components/problem"
)

// Kind says what a Piece is.
type Kind uint8

// The kinds of piece. Open and Close enclose what is left out together.
const (
	Static    Kind = iota + 1 // finished HTML
	Open                      // start of a block that may be left out
	Close                     // its end
	Value                     // a fact of the van
	LinkOpen                  // start of a link that the build resolves
	LinkClose                 // its end
	Embed                     // a table, figure or picture
)

// Frame says what kind of block an Open piece begins.
type Frame uint8

// Item stands or falls by the facts named in it; Group falls when every
// Item directly in it has fallen.
const (
	Item Frame = iota + 1
	Group
)

// Piece is one part of a compiled text.
type Piece struct {
	Kind   Kind
	Frame  Frame        // of an Open
	HTML   string       // of a Static: escaped, ready to write
	Text   string       // of a Static: the same without markup
	Scheme string       // of a LinkOpen or Embed: "system", "table", ...
	Name   string       // the fact, or the target of the address
	Unit   string       // of a Value: the unit asked for, "" for as stated
	Alt    string       // of an Embed: the words given for it
	At     problem.Span // where it stands in the source
}

// Doc is a compiled run of text.
type Doc struct{ Pieces []Piece }

// Section is what stands under one second-level heading.
type Section struct {
	ID     string // unique in its page, made from the title
	Title  Doc
	When   string              // the condition as written, "" for always
	Stands condition.Condition // When as parsed; one that is not understood always holds
	At     problem.Span
	Body   Doc
}

// Page is a compiled page: what stands before the first heading, then the
// sections.
type Page struct {
	Intro    Doc
	Sections []Section
}

// Docs lists every run of text of the page, for checks.
func (p *Page) Docs() []Doc {
	docs := []Doc{p.Intro}
	for _, s := range p.Sections {
		docs = append(docs, s.Title, s.Body)
	}
	return docs
}

// Empty reports whether nothing was written.
func (d Doc) Empty() bool { return len(d.Pieces) == 0 }

// Values lists the places where the text names a fact.
func (d Doc) Values() []Piece { return d.of(Value) }

// Links lists the addresses in the text that the build must resolve.
func (d Doc) Links() []Piece { return d.of(LinkOpen) }

// Embeds lists the tables, figures and pictures the text asks for.
func (d Doc) Embeds() []Piece { return d.of(Embed) }

func (d Doc) of(kind Kind) []Piece {
	var found []Piece
	for _, p := range d.Pieces {
		if p.Kind == kind {
			found = append(found, p)
		}
	}
	return found
}
