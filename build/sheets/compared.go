package sheets

import (
	"fmt"

	"doorpocket/build/compare"
	"doorpocket/build/spec"
)

// Compared gives the labels of a van as they are compared with those of another
// state of the fleet. Where their address moves all of them are stale, which is
// told once and not of each.
func Compared(op *spec.Operator, v *spec.Van) map[string]compare.Sticker {
	all := map[string]compare.Sticker{}
	for s := range Stickers(op, []*spec.Van{v}, nil) {
		title := s.System
		if len(s.Titles) > 0 {
			title = s.Titles[0].Text
		}
		all[s.Label] = compare.Sticker{Title: title, Rest: fmt.Sprint(s.System, s.Sign, s.Titles)}
	}
	return all
}
