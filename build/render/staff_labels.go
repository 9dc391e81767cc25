package render

import (
	"strings"

	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components/manifest"
)

// staffPlates are labels of one van.
type staffPlates struct {
	Code, Title string
	Labels      []link
}

// staffGone is a label whose thing is gone, or a van that is.
type staffGone struct {
	link
	Became, On, Printed string
	Now                 *link
}

type staffLabelsView struct {
	Frame
	Counts           string
	Unprinted, Stale []staffPlates
	Gone             []staffGone
}

// staffLabels is the page of the register: what is not printed yet, what leads
// to the former address, what became of the rest.
func (r *Renderer) staffLabels(w *Words, op *spec.Operator) (File, error) {
	register := op.Register
	s := labelsForStaff{w: w, op: op}
	current := 0
	for _, e := range register.All() {
		if register.Current(e) {
			current++
		}
	}
	view := staffLabelsView{
		Frame:     r.staffFrame(w, op, w.must("register"), "labels/"),
		Unprinted: s.plates(register.Unprinted()), Stale: s.plates(register.Stale()), Gone: s.gone(),
		Counts: w.must("register_counts", "count", len(register.All()), "current", current,
			"unprinted", len(register.Unprinted()), "stale", len(register.Stale())),
	}
	data, err := r.execute(w, "staff-labels", view)
	return File{Path: "labels/index.html", Data: data}, err
}

type labelsForStaff struct {
	w  *Words
	op *spec.Operator
}

func (s labelsForStaff) href(ref label.Ref) string {
	return "../../hirers/" + ref.Path() + "index.html"
}

func (s labelsForStaff) date(d manifest.Date) string {
	if d.IsZero() {
		return ""
	}
	return s.op.Library.Values[s.op.Languages[0]].Date(d)
}

// title is what a label stands or stood for, in the words of the library.
func (s labelsForStaff) title(e *label.Entry) string {
	if system := s.op.Library.System(e.System); system != nil {
		if words := system.Words[s.op.Languages[0]]; words != nil {
			return words.Title
		}
	}
	return strings.ReplaceAll(e.Fitted, "-", " ")
}

// plates groups labels by van; they come in that order.
func (s labelsForStaff) plates(list []*label.Entry) []staffPlates {
	var all []staffPlates
	for _, e := range list {
		if len(all) == 0 || all[len(all)-1].Code != e.Van {
			all = append(all, staffPlates{Code: e.Van, Title: s.op.Register.Van(e.Van).Name})
		}
		last := &all[len(all)-1]
		last.Labels = append(last.Labels, link{Href: s.href(e.Ref), Code: e.Code, Title: s.title(e)})
	}
	return all
}

// gone lists the vans that have left, and the labels that stand for nothing any
// more in those that have not.
func (s labelsForStaff) gone() []staffGone {
	var all []staffGone
	for _, v := range s.op.Register.Vans {
		if v.Became != label.Stands {
			all = append(all, staffGone{
				link:   link{Href: "../../hirers/" + v.Code + "/index.html", Code: v.Code, Title: s.w.must("register_van", "name", v.Name, "count", len(s.op.Register.Of(v.Code)))},
				Became: s.w.must("fate_" + string(v.Became)), On: s.date(v.On),
			})
		}
	}
	for _, e := range s.op.Register.All() {
		if e.Became == label.Stands {
			continue
		}
		row := staffGone{link: link{Href: s.href(e.Ref), Code: e.Ref.String(), Title: s.title(e)}, Became: s.w.must("fate_" + string(e.Became)), On: s.date(e.On), Printed: s.date(e.Printed)}
		if e.Printed.IsZero() {
			row.Printed = s.date(e.FormerPrinted)
		}
		if e.Now != (label.Ref{}) {
			last := s.op.Register.Last(e)
			row.Now = &link{Href: s.href(last.Ref), Code: last.Ref.String()}
		}
		all = append(all, row)
	}
	return all
}
