package publication

import (
	"fmt"
	"strings"
	"sync"

	"doorpocket/build/guide"
	"doorpocket/build/pictures"
	"doorpocket/build/render"
	"doorpocket/build/spec"
	"doorpocket/build/weight"
	"doorpocket/components/problem"
	"doorpocket/layouts"
)

// Weigh renders the guides of a fleet without errors and warns of each van that
// has pages too heavy for one round trip: which, by how much, and what in them
// weighs so much.
func Weigh(fleet *spec.Fleet) (problem.List, error) {
	r, err := render.New(layouts.Files())
	if err != nil {
		return nil, err
	}
	op := fleet.Operator
	op.Pictures = map[string]pictures.Made{}
	for file, made := range fleet.Pictures {
		op.Pictures[file] = made.Supposed()
	}
	var mu sync.Mutex
	var found problem.List
	for _, lang := range fleet.Languages {
		kit := guide.NewKit(&fleet.Operator, lang)
		err := each(len(fleet.Vans), func(i int) error {
			v := fleet.Vans[i]
			g, _ := kit.Build(v) // its problems are told elsewhere
			g.Operator = &op
			files, err := r.Van(g)
			if err != nil {
				return err
			}
			if heavy := heavyPages(files); len(heavy) > 0 {
				mu.Lock()
				defer mu.Unlock()
				found.Add(tooHeavy(v, heavy))
			}
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	return found, nil
}

func heavyPages(files []render.File) []string {
	var heavy []string
	for _, f := range files {
		if !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		w := weight.Of(f.Data)
		if w.Over() == 0 {
			continue
		}
		var parts []string
		for _, p := range w.Parts {
			parts = append(parts, fmt.Sprintf("%s %d", p.Name, p.Bytes))
		}
		heavy = append(heavy, fmt.Sprintf("%s is %d bytes over: %s.", strings.TrimSuffix(f.Path, "index.html"), w.Over(), strings.Join(parts, ", ")))
	}
	return heavy
}

func tooHeavy(v *spec.Van, heavy []string) problem.Problem {
	what := "A page"
	if len(heavy) > 1 {
		what = fmt.Sprintf("%d pages", len(heavy))
	}
	return problem.New(problem.Warning, v.At, "heavy-page", what+" of "+v.Code+" too heavy for one round trip",
		fmt.Sprintf("A phone with a weak signal waits twice for more than %d compressed bytes. %s Shorten its words, or give it fewer tables.",
			weight.RoundTrip, strings.Join(heavy, " ")))
}
