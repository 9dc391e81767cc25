package prose

import (
	"strconv"
	"strings"

	"doorpocket/components/problem"
)

// While the tree is rendered, holes travel through the HTML as marks: a NUL,
// fields parted by \x01, a NUL. Any NUL of the source is replaced before it is
// parsed, so a mark cannot be forged.
const (
	markEdge  = "\x00"
	markField = "\x01"
)

func mark(fields ...string) string {
	return markEdge + strings.Join(fields, markField) + markEdge
}

// field makes text safe to stand in a mark.
func field(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' {
			return ' '
		}
		return r
	}, s)
}

// pieces parts rendered HTML at its marks. place finds where a hole stands in
// the source, from the offset at which the hole or its link begins.
func pieces(rendered string, place func(p Piece, offset int) problem.Span) []Piece {
	var list []Piece
	for i, part := range strings.Split(rendered, markEdge) {
		switch {
		case i%2 == 1:
			fields := strings.Split(part, markField)
			p := markPiece(fields)
			if p.Name != "" {
				offset, _ := strconv.Atoi(fields[len(fields)-1])
				p.At = place(p, offset)
			}
			list = append(list, p)
		case part != "":
			list = append(list, Piece{Kind: Static, HTML: part, Text: plain(part)})
		}
	}
	return list
}

func markPiece(f []string) Piece {
	switch f[0] {
	case "item":
		return Piece{Kind: Open, Frame: Item}
	case "group":
		return Piece{Kind: Open, Frame: Group}
	case "value":
		return Piece{Kind: Value, Name: f[1], Unit: f[2]}
	case "link":
		return Piece{Kind: LinkOpen, Scheme: f[1], Name: f[2]}
	case "linkend":
		return Piece{Kind: LinkClose}
	case "embed":
		return Piece{Kind: Embed, Scheme: f[1], Name: f[2], Alt: f[3]}
	default:
		return Piece{Kind: Close}
	}
}
