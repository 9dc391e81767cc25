package booklet

import "doorpocket/build/paper"

// The types of a booklet.
var (
	title   = paper.Type{Size: 17, Bold: true}
	heading = paper.Type{Size: 12.5, Bold: true}
	strong  = paper.Type{Size: 9.5, Bold: true}
	body    = paper.Type{Size: 8.5}
	small   = paper.Type{Size: 8}
	fine    = paper.Type{Size: 7, Colour: paper.Grey}
	thin    = paper.Lined(paper.Colour{R: 150, G: 150, B: 150}, 0.2)
)

// layout is an A5 page; lengths are in millimetres.
var layout = paper.Layout{Page: paper.A5, Left: 13, Right: 11, Top: 11, Bottom: 15}

// Colours of the signal words (ANSI Z535.4, ISO 3864-4).
var bars = map[string]paper.Colour{
	"danger": {R: 0x9b, G: 0x24, B: 0x23}, "warning": {R: 0xd0, G: 0x5d, B: 0x29},
	"caution": {R: 0xf9, G: 0xa8}, "notice": {G: 0x53, B: 0x87},
}

// barInk is the colour of the words on them.
var barInk = map[string]paper.Colour{"danger": paper.White, "warning": paper.Black, "caution": paper.Black, "notice": paper.White}

func para(t paper.Type, spans []paper.Span) paper.Para {
	return paper.Para{Type: t, Spans: spans, After: t.Size * 0.16}
}

func plain(t paper.Type, text string) paper.Para { return para(t, paper.Plain(text)) }
