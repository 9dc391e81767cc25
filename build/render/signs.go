package render

import (
	"bytes"
	"fmt"
	"regexp"
)

// signDrawn is a safety sign as it stands in a page.
var signDrawn = regexp.MustCompile(`(?s)<svg xmlns="http://www\.w3\.org/2000/svg"( viewBox="[^"]*")>(.*?)</svg>`)

// drawOnce draws a sign that stands several times in a page only the first time;
// the others refer to it. A routine has many.
func drawOnce(page []byte) []byte {
	times, number := map[string]int{}, map[string]int{}
	for _, sign := range signDrawn.FindAll(page, -1) {
		times[string(sign)]++
	}
	return signDrawn.ReplaceAllFunc(page, func(sign []byte) []byte {
		part := signDrawn.FindSubmatch(sign)
		id, drawn := number[string(sign)], true
		if id == 0 {
			id, drawn = len(number)+1, false
			number[string(sign)] = id
		}
		var b bytes.Buffer
		switch {
		case times[string(sign)] == 1:
			fmt.Fprintf(&b, `<svg%s>%s</svg>`, part[1], part[2])
		case !drawn:
			fmt.Fprintf(&b, `<svg%s><g id="x-s%d">%s</g></svg>`, part[1], id, part[2])
		default:
			fmt.Fprintf(&b, `<svg%s><use href="#x-s%d"/></svg>`, part[1], id)
		}
		return b.Bytes()
	})
}
