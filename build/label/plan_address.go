package label

import (
	"fmt"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// address agrees the register with the fleet's address. Once something was
// printed the address may change once, and only where fleet.toml keeps the
// former one.
func (p *planner) address() {
	r, w := p.next, p.wish
	switch {
	case w.Address == "" || w.Address == r.Address:
		return
	case r.Address == "" || !r.anyPrinted():
		r.Address = w.Address
		p.Changes = append(p.Changes, Change{Verb: SetAddress, Fitted: w.Address})
		return
	}
	note := problem.Note{Span: problem.Span{File: r.File}, Text: "registered with the labels"}
	printed := r.printedNow()
	switch {
	case r.anyFormer():
		p.problem(w.At, "address-changed", "A second change of address", fmt.Sprintf("Labels are about with two addresses already. Write address = %q again.", r.Address), note)
	case w.Former != r.Address:
		p.problem(w.At, "address-changed", fmt.Sprintf("Another address than that of the printed labels, %s", r.Address),
			fmt.Sprintf("%d labels are printed and would go stale. If the guides do move, write former_address = %q below it and run doorpocket labels. Else write the old address again.", printed, r.Address), note)
	default:
		for _, e := range r.Entries {
			if !e.Printed.IsZero() {
				e.FormerPrinted, e.Printed = e.Printed, manifest.Date{}
			}
		}
		p.Changes = append(p.Changes, Change{Verb: MoveAddress, Fitted: w.Address, Was: r.Address})
		r.Address = w.Address
	}
}

func (r *Register) anyPrinted() bool {
	for _, e := range r.Entries {
		if e.EverPrinted() {
			return true
		}
	}
	return false
}

func (r *Register) anyFormer() bool {
	for _, e := range r.Entries {
		if !e.FormerPrinted.IsZero() {
			return true
		}
	}
	return false
}

func (r *Register) printedNow() int {
	n := 0
	for _, e := range r.Entries {
		if !e.Printed.IsZero() {
			n++
		}
	}
	return n
}
