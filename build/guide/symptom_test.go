package guide

import (
	"math/rand/v2"
	"slices"
	"testing"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/quantity"
)

func randomChecks(r *rand.Rand) []Check {
	checks := make([]Check, 1+r.IntN(7))
	for i := range checks {
		effort, _ := quantity.New(float64(10+r.IntN(900)), quantity.SI(quantity.Time))
		checks[i] = Check{Check: &components.Check{Likelihood: components.Likelihood(1 + r.IntN(3)), Effort: fact.Value{Kind: fact.Quantity, Quantity: effort}}}
	}
	return checks
}

// expected is the effort until the cause is found, on the average, where one of
// the checks finds it: each is done only if those before it found nothing.
func expected(order []Check) float64 {
	all, spent, cost := 0.0, 0.0, 0.0
	for _, c := range order {
		spent += float64(seconds(c))
		cost += spent * chance[c.Likelihood]
		all += chance[c.Likelihood]
	}
	return cost / all
}

func permutations(list []Check, at int, try func([]Check)) {
	if at == len(list) {
		try(list)
		return
	}
	for i := at; i < len(list); i++ {
		list[at], list[i] = list[i], list[at]
		permutations(list, at+1, try)
		list[at], list[i] = list[i], list[at]
	}
}

// No other order of the checks finds the cause with less effort on the average.
func TestNoOrderOfChecksIsCheaper(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		checks := randomChecks(r)
		slices.SortStableFunc(checks, sooner)
		ours := expected(checks)
		permutations(slices.Clone(checks), 0, func(other []Check) {
			if cost := expected(other); cost < ours-1e-9 {
				t.Fatalf("%.3f s, not %.3f s", cost, ours)
			}
		})
	}
}

// Danger stands before everything else, whatever it costs.
func TestDangerIsCheckedFirst(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 60 {
		checks := randomChecks(r)
		for i := range checks {
			checks[i].Danger = r.IntN(3) == 0
		}
		slices.SortStableFunc(checks, sooner)
		if i := slices.IndexFunc(checks, func(c Check) bool { return !c.Danger }); i >= 0 && slices.ContainsFunc(checks[i:], func(c Check) bool { return c.Danger }) {
			t.Fatal("a danger stands after something else")
		}
	}
}
