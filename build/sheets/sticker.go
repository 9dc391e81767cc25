// Package sheets prints what sticks in and on a van: sheets of labels, the card
// for the door, and a page that shows whether a printer keeps to the measure.
package sheets

import (
	"cmp"
	"iter"
	"slices"

	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// Sticker is what is printed on one label. The code in letters and the address
// in the symbol come from the same record.
type Sticker struct {
	Van, Label string      // the codes: RW, G1
	Address    string      // what the symbol holds
	Level      label.Level // of the symbol's error correction
	Titles     []Title     // of the system, the main language first
	Sign       string      // ISO 7010, "" for none
	Family     string
	System     string
}

// Title is a name in one language.
type Title struct{ Lang, Text string }

// Code is the code as it is printed and read out.
func (s Sticker) Code() string { return s.Van + " " + s.Label }

// Ref is the label in the words of the register.
func (s Sticker) Ref() label.Ref { return label.Ref{Van: s.Van, Code: s.Label} }

// maxTitles is in how many languages a label names its system.
const maxTitles = 3

// Stickers gives a sticker for every label of some vans, van by van in the
// order of the codes. want may leave some out; nil wants all.
func Stickers(op *spec.Operator, vans []*spec.Van, want func(Sticker) bool) iter.Seq[Sticker] {
	return func(yield func(Sticker) bool) {
		for _, v := range vans {
			var fitted []*spec.Fitted
			for _, f := range v.Fitted {
				if f.Label != "" {
					fitted = append(fitted, f)
				}
			}
			slices.SortFunc(fitted, func(a, b *spec.Fitted) int { return label.CompareCodes(a.Label, b.Label) })
			for _, f := range fitted {
				s := stickerOf(op, v, f)
				if (want == nil || want(s)) && !yield(s) {
					return
				}
			}
		}
	}
}

func stickerOf(op *spec.Operator, v *spec.Van, f *spec.Fitted) Sticker {
	s := Sticker{
		Van: v.Code, Label: f.Label, Level: op.Level, Address: op.Address.To(label.Path(v.Code, f.Label)),
		Family: f.System.Family, System: f.System.ID, Sign: sign(v, f),
	}
	for _, lang := range op.Languages[:min(len(op.Languages), maxTitles)] {
		title := f.Title // the operator's own name stands for every language
		if words := f.System.Words[lang]; title == "" && words != nil {
			title = words.Title
		}
		if title != "" && !slices.ContainsFunc(s.Titles, func(t Title) bool { return t.Text == title }) {
			s.Titles = append(s.Titles, Title{lang, title})
		}
	}
	return s
}

var gravity = map[string]int{"danger": 0, "warning": 1, "caution": 2, "notice": 3}

// sign is the sign of what the thing is, such as a fire extinguisher, or else
// the first sign of the gravest caution that holds on this van. A sign that
// shows where to find something stands only on that thing.
func sign(v *spec.Van, f *spec.Fitted) string {
	var holding []components.Caution
	for _, c := range f.System.Cautions {
		if v.Holds(f, c.When) {
			holding = append(holding, c)
		}
	}
	slices.SortStableFunc(holding, func(a, b components.Caution) int { return cmp.Compare(gravity[a.Signal], gravity[b.Signal]) })
	first := ""
	for _, c := range holding {
		for _, id := range c.Signs {
			finds := id[0] == 'E' || id[0] == 'F'
			if finds && f.System.Family == "safety" {
				return id
			}
			if first == "" && !finds {
				first = id
			}
		}
	}
	return first
}
