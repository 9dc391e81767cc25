package guide

import (
	"cmp"
	"slices"

	"doorpocket/components"
	"doorpocket/components/fact"
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

// sooner puts danger first, then the check that costs least for what it may
// find: effort over likelihood, ascending. Where one of several independent
// causes is at work, that order has the least expected effort until it is found
// (B. Gluss, "An optimum policy for detecting a fault in a complex system",
// Operations Research 7, 1959; from memory).
func sooner(a, b Check) int {
	if a.Danger != b.Danger {
		if a.Danger {
			return -1
		}
		return 1
	}
	return cmp.Compare(worth(a), worth(b))
}

// chance is how much more often a check of a likelihood finds the cause than
// one that seldom does. Our own estimate.
var chance = map[components.Likelihood]float64{components.Common: 10, components.Occasional: 3, components.Rare: 1}

// worth is the effort of a check over its likelihood; a danger may state neither
// and goes first.
func worth(c Check) float64 {
	if c.Likelihood == 0 {
		return 0
	}
	return float64(seconds(c)) / chance[c.Likelihood]
}

func seconds(c Check) quantity.Seconds { return secondsOf(c.Effort) }

// secondsOf is a stated time, 0 where it is not stated.
func secondsOf(v fact.Value) quantity.Seconds {
	s, err := quantity.As[quantity.Seconds](v.Quantity)
	if err != nil {
		return 0
	}
	return s
}
