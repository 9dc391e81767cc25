package render

import (
	"bytes"
	"fmt"
)

// A safety sign as it stands in a page: what begins it, what ends its first tag,
// and its end.
var (
	signStart = []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="`)
	signBody  = []byte(`">`)
	signEnd   = []byte("</svg>")
)

// drawOnce draws a sign that stands several times in a page only the first time;
// the others refer to it. A routine has many. The result is appended to
// out.
func drawOnce(out, page []byte) []byte {
	times := map[string]int{}
	eachSign(page, func(_, box, drawing []byte) { times[string(box)+string(drawing)]++ })
	number := map[string]int{}
	rest := eachSign(page, func(before, box, drawing []byte) {
		out = append(out, before...)
		sign := string(box) + string(drawing)
		id, drawn := number[sign]
		if !drawn {
			id = len(number) + 1
			number[sign] = id
		}
		switch {
		case times[sign] == 1:
			out = fmt.Appendf(out, `<svg viewBox="%s">%s</svg>`, box, drawing)
		case !drawn:
			out = fmt.Appendf(out, `<svg viewBox="%s"><g id="x-s%d">%s</g></svg>`, box, id, drawing)
		default:
			out = fmt.Appendf(out, `<svg viewBox="%s"><use href="#x-s%d"/></svg>`, box, id)
		}
	})
	return append(out, rest...)
}

// eachSign gives the signs of a page, each with what stands before it and after
// the one before, and returns what is left.
func eachSign(page []byte, do func(before, box, drawing []byte)) (rest []byte) {
	for {
		before, after, found := bytes.Cut(page, signStart)
		box, drawing, whole := bytes.Cut(after, signBody)
		drawing, left, ended := bytes.Cut(drawing, signEnd)
		if !found || !whole || !ended {
			return page
		}
		do(before, box, drawing)
		page = left
	}
}
