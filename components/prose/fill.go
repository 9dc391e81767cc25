package prose

import (
	"html"
	"strings"
)

// Filler knows one van. Link and Embed are asked only for addresses that the
// text holds; ok false means that the van has no such thing.
type Filler interface {
	// Value is a fact in words for reading, not escaped. ok is false where
	// the van lacks the fact: the block around it is then left out.
	Value(name, unit string) (text string, ok bool)
	// Link is the address of a page of this van.
	Link(scheme, target string) (href string, ok bool)
	// Embed is the finished HTML of a table, figure or picture.
	Embed(scheme, target, alt string) (markup string, ok bool)
}

// HTML is the text filled in for one van.
func (d Doc) HTML(f Filler) string {
	b := filling{filler: f}
	b.fill(d, b.markup)
	return b.String()
}

// Text is the text filled in for one van, without markup, for search and
// for sheets. Embeds are left out.
func (d Doc) Text(f Filler) string {
	b := filling{filler: f}
	b.fill(d, b.words)
	return squeeze(b.String())
}

// filling is the text of one van as it grows; blocks that turn out to name
// an absent fact are cut off again.
type filling struct {
	out    []byte
	filler Filler
	frames []frame
	linked []bool
}

type frame struct {
	kind     Frame
	start    int
	absent   bool // it names a fact this van lacks
	children int
	standing int
	said     bool // it has words or an embed of its own, outside its children
}

func (b *filling) String() string { return string(b.out) }

func (b *filling) fill(d Doc, write func(*Piece)) {
	for i := range d.Pieces {
		switch p := &d.Pieces[i]; p.Kind {
		case Open:
			b.frames = append(b.frames, frame{kind: p.Frame, start: len(b.out)})
		case Close:
			b.close()
		default:
			write(p)
			b.note(p)
		}
	}
}

// note remembers that the innermost block says something of its own.
func (b *filling) note(p *Piece) {
	last := len(b.frames) - 1
	if last < 0 {
		return
	}
	if p.Kind == Value || p.Kind == Embed || p.Kind == Static && strings.TrimSpace(p.Text) != "" {
		b.frames[last].said = true
	}
}

func (b *filling) close() {
	last := len(b.frames) - 1
	f := b.frames[last]
	b.frames = b.frames[:last]
	hollow := f.children > 0 && f.standing == 0 && (f.kind == Group || !f.said)
	fell := f.absent || hollow
	if fell {
		b.out = b.out[:f.start]
	}
	if last > 0 {
		b.frames[last-1].children++
		if !fell {
			b.frames[last-1].standing++
		}
	}
}

// lack notes that the innermost block names a fact this van lacks.
func (b *filling) lack() {
	if last := len(b.frames) - 1; last >= 0 {
		b.frames[last].absent = true
	}
}

func (b *filling) markup(p *Piece) {
	switch p.Kind {
	case Static:
		b.out = append(b.out, p.HTML...)
	case Value:
		if text, ok := b.filler.Value(p.Name, p.Unit); ok {
			b.out = append(b.out, html.EscapeString(text)...)
		} else {
			b.lack()
		}
	case LinkOpen:
		href, ok := b.filler.Link(p.Scheme, p.Name)
		b.linked = append(b.linked, ok)
		if ok {
			b.out = append(b.out, `<a href="`+html.EscapeString(href)+`">`...)
		}
	case LinkClose:
		last := len(b.linked) - 1
		if b.linked[last] {
			b.out = append(b.out, "</a>"...)
		}
		b.linked = b.linked[:last]
	case Embed:
		if markup, ok := b.filler.Embed(p.Scheme, p.Name, p.Alt); ok {
			b.out = append(b.out, markup...)
		} else {
			b.lack()
		}
	}
}

func (b *filling) words(p *Piece) {
	switch p.Kind {
	case Static:
		b.out = append(b.out, p.Text...)
	case Value:
		if text, ok := b.filler.Value(p.Name, p.Unit); ok {
			b.out = append(b.out, strings.ReplaceAll(text, "\u00a0", " ")...)
		} else {
			b.lack()
		}
	}
}
