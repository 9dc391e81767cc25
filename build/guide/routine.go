package guide

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"doorpocket/build/route"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
	"doorpocket/components/quantity"
)

// Routine is a routine of this van with its steps in order.
type Routine struct {
	*components.Routine
	Words components.RoutineWords
	Path  string // below the van
	Steps []Step
}

// Step is one step of a routine.
type Step struct {
	*components.Step
	Page    *Page
	Words   prose.Doc
	Caution *Caution // the caution that stands before it, nil for none
}

// routines composes the hirers' routines, in the order of the library.
func (b *builder) routines() {
	for _, r := range b.kit.operator.Library.Routines {
		if r.Staff {
			continue
		}
		if routine := b.routine(r); len(routine.Steps) > 0 {
			b.guide.Routines = append(b.guide.Routines, routine)
		}
	}
}

func (b *builder) routine(r *components.Routine) *Routine {
	routine := &Routine{Routine: r, Words: r.Words[b.guide.Lang], Path: "do/" + r.ID + "/"}
	var loose []Step
	for _, p := range b.guide.Pages {
		for i := range p.Fitted.System.Steps {
			s := &p.Fitted.System.Steps[i]
			if slices.Contains(s.Routines, r.ID) && b.guide.Van.Holds(p.Fitted, s.When) {
				loose = append(loose, b.step(p, s))
			}
		}
	}
	order, err := route.Order(b.body(), b.begin(r), b.constrained(loose))
	var cycle *route.CycleError
	if errors.As(err, &cycle) {
		b.reportCycle(r, loose, cycle)
		return routine
	}
	for _, i := range order {
		routine.Steps = append(routine.Steps, loose[i])
	}
	return routine
}

func (b *builder) step(p *Page, s *components.Step) Step {
	step := Step{Step: s, Page: p, Words: p.Words.Steps[s.ID]}
	for i := range p.Cautions {
		if p.Cautions[i].ID == s.Caution {
			step.Caution = &p.Cautions[i]
		}
	}
	return step
}

// constrained turns the constraints of the steps into indexes.
func (b *builder) constrained(steps []Step) []route.Step {
	list := make([]route.Step, len(steps))
	byName := map[string][]int{}
	for i, s := range steps {
		system := s.Page.Fitted.System
		list[i].ID = system.ID + ":" + s.ID
		list[i].Place = b.place(s.Page.Fitted)
		byName[list[i].ID] = append(byName[list[i].ID], i)
		byName[system.Family+":"+s.ID] = append(byName[system.Family+":"+s.ID], i)
	}
	w := newWaits(list)
	for i, s := range steps {
		for _, ref := range s.After {
			for _, j := range byName[ref] {
				w.add(i, j)
			}
		}
		for _, ref := range s.Before {
			for _, j := range byName[ref] {
				w.add(j, i)
			}
		}
	}
	for i, s := range steps {
		for _, set := range s.After {
			w.setAfter(i, set)
		}
		for _, set := range s.Before {
			w.setBefore(i, set)
		}
	}
	return w.list()
}

// begin is where one starts a routine.
func (b *builder) begin(r *components.Routine) route.Place {
	door := b.body().Door
	switch r.Begin {
	case "cab":
		return route.Place{Zone: route.Inside, Along: driverSeat}
	case "outside":
		return door
	}
	return route.Place{Zone: route.Inside, Along: door.Along}
}

// driverSeat is about how far behind the front one sits at the wheel, in
// metres; common practice.
const driverSeat = 1.0

func (b *builder) reportCycle(r *components.Routine, steps []Step, cycle *route.CycleError) {
	first := steps[cycle.Steps[0]]
	p := problem.New(problem.Error, first.At, "step-cycle",
		fmt.Sprintf("Steps of routine %s wait for each other", r.ID),
		fmt.Sprintf("On %s %s. Remove one of the constraints.", b.guide.Van.Name, strings.TrimPrefix(cycle.Error(), "steps wait for each other: ")))
	for _, i := range cycle.Steps[1:] {
		p = p.WithNote(steps[i].At, "this step is in the ring")
	}
	b.problems.Add(p)
}

// metres is a stated length, 0 where it is not stated.
func metres(q quantity.Quantity) float64 {
	m, err := quantity.As[quantity.Metres](q)
	if err != nil {
		return 0
	}
	return float64(m)
}

func (b *builder) body() route.Body {
	size := func(name string) float64 { return metres(b.guide.Van.Value(nil, "body."+name).Quantity) }
	door := route.Place{Along: size("door_along"), Zone: b.zone(b.guide.option("body.door_side"))}
	if door.Along == 0 {
		door.Along = size("length") / 2
	}
	return route.Body{Length: size("length"), Width: size("width"), Door: door}
}

func (b *builder) place(f *spec.Fitted) route.Place {
	return route.Place{Zone: b.zone(f.Place.Side), Along: metres(f.Place.Along.Quantity)}
}

// zone turns a side of the trade into left and right, which depends on the
// side on which one steers.
func (b *builder) zone(side string) route.Zone {
	switch side {
	case "offside", "nearside":
		if (side == "offside") == b.guide.LeftHandDrive() {
			return route.Left
		}
		return route.Right
	case "front":
		return route.Front
	case "rear":
		return route.Rear
	case "inside", "roof":
		return route.Inside // roof lights and vents are worked from inside
	case "under":
		return route.Left
	}
	return route.Anywhere
}

// LeftHandDrive reports whether one steers on the left, so that the offside is
// the left side.
func (g *Guide) LeftHandDrive() bool { return g.option("body.steering") == "left" }

func (g *Guide) option(key string) string {
	v := g.Van.Value(nil, key)
	if len(v.Options) == 0 {
		return ""
	}
	return v.Options[0]
}
