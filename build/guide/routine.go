package guide

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"doorpocket/build/route"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
	"doorpocket/components/quantity"
)

// Routine is a routine of this van with its steps in order.
type Routine struct {
	*components.Routine
	Words components.RoutineWords
	Path  string // below the van
	Steps []*Step
}

// Step is one step of a routine.
type Step struct {
	*components.Step
	Page    *Page // nil for one of the operator's own that is about nothing fitted
	Place   spec.Place
	Own     bool
	Words   prose.Doc
	Caution *Caution // the caution that stands before it, nil for none
	Number  int      // its place in the routine, from 1
	Waits   bool     // one waits when it is done, for its Wait
	HeldUp  int      // the number of the first step that waits, 0 for none
	Awaits  []*Step  // the steps before it whose Wait must be over
	at      route.Place
	done    string // where the step says that it is done, "" for at its thing
}

// Name is what constraints call a step: "family/system:step", or "own:step".
func (s *Step) Name() string {
	if s.Own {
		return components.OwnScope + ":" + s.ID
	}
	return s.Page.Fitted.System.ID + ":" + s.ID
}

// Key tells a step from all others of its van: the same step may be there of
// two roof lights.
func (s *Step) Key() string {
	if s.Own {
		return s.Name()
	}
	return s.Page.Fitted.Name + ":" + s.ID
}

// routines composes the hirers' routines, in the order of the library.
func (b *builder) routines() {
	for _, r := range b.kit.operator.Library.Routines {
		if r.Staff {
			continue
		}
		if routine := b.routine(r, b.guide.Van.Added); len(routine.Steps) > 0 {
			b.guide.Routines = append(b.guide.Routines, routine)
		}
	}
}

// StaffRoutines composes the routines for staff on the van of a guide: those of
// the library and the operator's own, with what was added to them. They are
// never part of the guide.
func (k *Kit) StaffRoutines(g *Guide, own []*components.Routine, added spec.Added) ([]*Routine, problem.List) {
	b := builder{kit: k, guide: g}
	var all []*Routine
	for _, r := range slices.Concat(k.operator.Library.Routines, own) {
		if !r.Staff {
			continue
		}
		if routine := b.routine(r, added); len(routine.Steps) > 0 {
			all = append(all, routine)
		}
	}
	return all, b.problems
}

func (b *builder) routine(r *components.Routine, added spec.Added) *Routine {
	routine := &Routine{Routine: r, Words: r.Words[b.guide.Lang], Path: "do/" + r.ID + "/"}
	loose := append(b.librarySteps(r, added), b.ownSteps(r, added)...)
	constrained := b.constrained(loose)
	order, err := route.Order(b.body(), b.begin(r), constrained)
	var cycle *route.CycleError
	if errors.As(err, &cycle) {
		b.reportCycle(r, loose, cycle)
		return routine
	}
	for at, i := range order {
		loose[i].Number = at + 1
		loose[i].Waits = !loose[i].Wait.IsZero() && len(loose[i].Holds) == 0
		for _, before := range constrained[i].Await {
			held := &loose[before]
			held.Waits = true
			loose[i].Awaits = append(loose[i].Awaits, held)
			if held.HeldUp == 0 {
				held.HeldUp = at + 1
			}
		}
	}
	for _, i := range order {
		routine.Steps = append(routine.Steps, &loose[i])
	}
	return routine
}

// librarySteps are the steps of what is fitted, and those that an own routine
// takes in by name.
func (b *builder) librarySteps(r *components.Routine, added spec.Added) []Step {
	var loose []Step
	for _, p := range b.guide.Pages {
		for i := range p.Fitted.System.Steps {
			s := &p.Fitted.System.Steps[i]
			wanted := slices.Contains(s.Routines, r.ID) || named(added.Includes[r.ID], Step{Step: s, Page: p})
			if wanted && b.guide.Van.Holds(p.Fitted, s.When) {
				loose = append(loose, b.step(p, s, p.Words.Steps[s.ID]))
			}
		}
	}
	return loose
}

// ownSteps are the operator's. One about something fitted stands where the van
// has that.
func (b *builder) ownSteps(r *components.Routine, added spec.Added) []Step {
	var loose []Step
	for _, own := range added.Steps {
		if !slices.Contains(own.Routines, r.ID) {
			continue
		}
		var page *Page
		var fitted *spec.Fitted
		if own.Fitted != "" {
			if page = b.guide.byName[own.Fitted]; page == nil {
				continue
			}
			fitted = page.Fitted
		}
		if !b.guide.Van.Holds(fitted, own.When) {
			continue
		}
		step := b.step(page, &own.Step, own.Words[b.guide.Lang])
		step.Own = true
		if own.Place.Side != "" {
			step.Place = own.Place
			step.at = b.place(own.Place)
		}
		loose = append(loose, step)
	}
	return loose
}

func (b *builder) step(p *Page, s *components.Step, words prose.Doc) Step {
	step := Step{Step: s, Page: p, Words: words}
	step.Place, step.at = b.where(p, s)
	step.done = b.done(p, s)
	if p == nil {
		return step
	}
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
	pages := map[*Page]int{}
	for i, p := range b.guide.Pages {
		pages[p] = i
	}
	byName := map[string][]int{}
	for i, s := range steps {
		thing := -2 - i // an own step about nothing fitted is a thing by itself
		if s.Page != nil {
			thing = pages[s.Page]
		}
		list[i] = route.Step{ID: s.Name(), Place: s.at, Thing: thing, Wait: float64(secondsOf(s.Wait))}
		byName[s.Name()] = append(byName[s.Name()], i)
		if !s.Own {
			family := s.Page.Fitted.System.Family + ":" + s.ID
			byName[family] = append(byName[family], i)
		}
	}
	w := newWaits(list)
	for i, s := range steps {
		for _, ref := range s.After {
			for _, j := range byName[ref] {
				w.add(i, j)
			}
		}
		for _, ref := range slices.Concat(s.Before, s.Holds) {
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
	list = w.list()
	for i := range list {
		for _, j := range list[i].After {
			if !steps[j].Wait.IsZero() && (len(steps[j].Holds) == 0 || named(steps[j].Holds, steps[i])) {
				list[i].Await = append(list[i].Await, j)
			}
		}
	}
	return list
}

// where is the place at which a step is done, as the page says it and as one
// walks: at the thing, unless the step says otherwise. What is in the kitchen
// or the lounge is inside, whether or not the spec says where.
func (b *builder) where(p *Page, s *components.Step) (spec.Place, route.Place) {
	door := route.Place{Zone: route.Inside, Along: b.body().Door.Along}
	var place spec.Place
	if p != nil {
		place = p.Fitted.Place
	}
	switch b.done(p, s) {
	case components.WhereOutside:
		if place = p.Fitted.Place; place.Side == "roof" {
			return place, route.Place{Zone: b.zone(b.guide.option("body.door_side")), Along: metres(place.Along.Quantity)}
		}
	case components.WhereAnywhere:
		return spec.Place{}, route.Place{}
	case components.WhereAnywhereInside:
		return spec.Place{}, door
	case components.WhereCab:
		return spec.Place{}, route.Place{Zone: route.Inside, Along: driverSeat}
	case components.WhereInside:
		if place.Along.IsZero() {
			return spec.Place{}, door
		}
		// Across what is set into a wall nothing is stated: it is at that wall.
		if width := b.guide.Van.Value(nil, "body.width"); place.Side == "nearside" {
			place.Across.Kind = fact.Quantity
			place.Across.Quantity, _ = quantity.New(0, quantity.SI(quantity.Length))
		} else if place.Side == "offside" {
			place.Across = width
		}
		place.Side, place.Up = "inside", fact.Value{}
	}
	if place.Side == "" && p != nil && slices.Contains(insideFamilies, p.Fitted.System.Family) {
		return place, door
	}
	return place, b.place(place)
}

// done is where a step says that it is done, "" for at its thing.
func (b *builder) done(p *Page, s *components.Step) string {
	var f *spec.Fitted
	if p != nil {
		f = p.Fitted
	}
	if s.Where == components.WhereOutside && p == nil || !b.guide.Van.Holds(f, s.WhereIf) {
		return ""
	}
	return s.Where
}

// insideFamilies are the families of which everything is in the living area.
var insideFamilies = []string{"kitchen", "living"}

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

// named reports whether one of the constraints means the step: as
// "family/system:step", as "family:step", or as "own:step".
func named(constraints []string, s Step) bool {
	if s.Own {
		return slices.Contains(constraints, s.Name())
	}
	system := s.Page.Fitted.System
	return slices.ContainsFunc(constraints, func(ref string) bool {
		scope, id, _ := strings.Cut(ref, ":")
		return id == s.ID && (scope == system.ID || scope == system.Family)
	})
}

// reportCycle names the steps that wait for each other, each with its file.
func (b *builder) reportCycle(r *components.Routine, steps []Step, cycle *route.CycleError) {
	var ring []string
	for at, i := range cycle.Steps {
		ring = append(ring, fmt.Sprintf("%s (%s)", cycle.IDs[at], steps[i].At))
	}
	ring = append(ring, cycle.IDs[0])
	p := problem.New(problem.Error, steps[cycle.Steps[0]].At, "step-cycle",
		fmt.Sprintf("Steps of routine %s wait for each other", r.ID),
		fmt.Sprintf("On %s %s. Remove one of these constraints.", b.guide.Van.Name, strings.Join(ring, " waits for ")))
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

func (b *builder) place(p spec.Place) route.Place {
	return route.Place{Zone: b.zone(p.Side), Along: metres(p.Along.Quantity)}
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
