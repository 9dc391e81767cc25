package guide

import (
	"cmp"
	"slices"

	"doorpocket/components"
	"doorpocket/components/quantity"
)

// Symptom is something wrong on this van with its checks in order.
type Symptom struct {
	*components.Symptom
	Words  components.SymptomWords
	Path   string // below the van
	Checks []Check
}

// Check is one check of a symptom.
type Check struct {
	*components.Check
	Page  *Page
	Words components.CheckWords
}

// symptoms composes what can be wrong on this van, in the order of the library.
func (b *builder) symptoms() {
	for _, s := range b.kit.operator.Library.Symptoms {
		symptom := &Symptom{Symptom: s, Words: s.Words[b.guide.Lang], Path: "wrong/" + s.ID + "/"}
		for _, p := range b.guide.Pages {
			for i := range p.Fitted.System.Checks {
				c := &p.Fitted.System.Checks[i]
				if c.Symptom == s.ID && b.guide.Van.Holds(p.Fitted, c.When) {
					symptom.Checks = append(symptom.Checks, Check{Check: c, Page: p, Words: p.Words.Checks[c.ID]})
				}
			}
		}
		if len(symptom.Checks) > 0 {
			slices.SortStableFunc(symptom.Checks, sooner)
			b.guide.Symptoms = append(b.guide.Symptoms, symptom)
		}
	}
}

// sooner puts danger first, then the likelier cause, then the quicker check.
func sooner(a, b Check) int {
	if a.Danger != b.Danger {
		if a.Danger {
			return -1
		}
		return 1
	}
	return cmp.Or(cmp.Compare(a.Likelihood, b.Likelihood), cmp.Compare(seconds(a), seconds(b)))
}

func seconds(c Check) quantity.Seconds {
	s, err := quantity.As[quantity.Seconds](c.Effort.Quantity)
	if err != nil {
		return 0
	}
	return s
}
