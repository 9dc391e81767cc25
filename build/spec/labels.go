package spec

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"doorpocket/build/label"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// statedLabel is what a spec or build sheet says of a label.
type statedLabel struct {
	code string // label.None for none wanted, "" for the register's
	label.Stated
}

// kept is what the register is compared with, nil for nothing.
func (s statedLabel) kept() *label.Stated {
	none := problem.Span{}
	if s.LabelAt == none && s.WasAt == none && s.ReplacesAt == none {
		return nil
	}
	return &s.Stated
}

// Gone is a label of a van whose thing is no longer what it was registered for.
// Its page says what became of that.
type Gone struct {
	Code   string
	Name   string             // under which it was fitted
	System *components.System // nil where the library has it no more
	Became label.Fate
	Now    Standing // what stands in its place, zero for nothing
}

// Standing is a label that stands for something, perhaps in another van.
type Standing struct {
	label.Ref
	Van    string             // the name of the van
	Name   string             // under which it is fitted
	Title  string             // the operator's own name for it, "" for the library's
	System *components.System // nil where the library does not have it
}

// LeftVan is a van that was sold or retired. Its labels may still be about.
type LeftVan struct {
	Code, Name string
	Became     label.Fate
	Gone       []Gone
}

// statedLabel reads label, was and replaces.
func (l *loader) statedLabel(r *manifest.Reader, f *Fitted) {
	if code, ok := r.Text("label"); ok {
		switch {
		case code == label.None:
			f.Label, f.label.code = "", code
		case !label.ValidLabel(code):
			r.Problem("label", "bad-label", fmt.Sprintf("%q is no label code", code), "A label code is a capital letter and a number from 1 to 99, for example \"G1\".")
		default:
			f.Label, f.label.code = code, code
		}
		f.label.LabelAt = r.Span("label")
	}
	if names, ok := r.Texts("was", manifest.OrSingle, manifest.Example(`"old-name"`)); ok {
		f.label.Was, f.label.WasAt = names, r.Span("was")
	}
	if names, ok := r.Texts("replaces", manifest.OrSingle, manifest.Example(`"old-name"`)); ok {
		f.label.Replaces, f.label.ReplacesAt = names, r.Span("replaces")
	}
}

// Was lists the names by which the spec says that it was called before.
func (f *Fitted) Was() []string { return f.label.Was }

// WantsLabel reports whether one can stick a label beside it and the spec does not
// say that none is wanted.
func (f *Fitted) WantsLabel() bool {
	return f.System.Label && !f.Automatic && f.label.code != label.None
}

// labelWishes reads what fleet.toml says of labels.
func (l *loader) labelWishes(r *manifest.Reader) {
	w := &l.fleet.wish
	w.Address, _ = r.Text("address")
	w.At = r.Span("address")
	if former, ok := r.Text("former_address", manifest.Example(`"https://guide.example"`)); ok {
		if _, err := label.ParseBase(former); err != nil {
			r.Problem("former_address", "bad-address", "Former address of the guides is not understood", upper(err.Error())+".")
		} else if former == w.Address {
			r.Problem("former_address", "senseless-key", "The former address is the present one", "Write the address that the guides had before, or take it out.")
		}
		w.Former = former
	}
	l.fleet.Level = label.LevelQ
	if level, ok := r.Text("error_correction"); ok {
		if chosen, ok := label.ParseLevel(level); ok {
			l.fleet.Level = chosen
		} else {
			r.Problem("error_correction", "unknown-option", fmt.Sprintf("Unknown error correction %q", level), "Write L, M, Q or H: about 7, 15, 25 or 30 % of the symbol may be lost. Q is usual.")
		}
	}
}

// kept reads a file that commands keep, under the name by which problems know it.
// A fleet may be without it.
func (l *loader) kept(file string) (name string, data []byte, ok bool) {
	data, err := fs.ReadFile(l.files, file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", nil, false
	case err != nil:
		l.problems.Errorf(l.span(file), "unreadable-file", "File cannot be read", "The system says: %v. Check its permissions.", err)
		return "", nil, false
	}
	name = l.prefix + file
	l.fleet.Sources[name] = data
	return name, data, true
}

// readRegister reads labels.toml, and which vans have left the fleet.
func (l *loader) readRegister() {
	name, data, ok := l.kept(label.RegisterFile)
	if !ok {
		return
	}
	register, found := label.ParseRegister(name, data)
	l.problems.Add(found...)
	l.fleet.Register = register
	if register == nil {
		return
	}
	for _, entry := range register.Vans {
		if entry.Became == label.Stands {
			continue
		}
		left := &LeftVan{Code: entry.Code, Name: entry.Name, Became: entry.Became}
		for _, e := range register.Of(entry.Code) {
			g := l.goneOf(register, e, nil)
			if e.Became == label.Stands || g.Now == (Standing{}) {
				g.Became = entry.Became
			}
			left.Gone = append(left.Gone, g)
		}
		slices.SortFunc(left.Gone, byCode)
		l.fleet.Left = append(l.fleet.Left, left)
	}
	slices.SortFunc(l.fleet.Left, func(a, b *LeftVan) int { return strings.Compare(a.Code, b.Code) })
}

// registered gives what is fitted in a van its registered codes, and lists its
// labels whose things are gone.
func (l *loader) registered(v *Van) {
	if l.fleet.Register == nil || v.Code == "" {
		return
	}
	plan := label.MakeOne(l.fleet.Register, l.labelVan(v))
	for _, f := range v.Fitted {
		if code := plan.Code(v.Code, f.Name); code != "" {
			f.Label = code
		}
	}
	for _, e := range plan.Register().Of(v.Code) {
		if e.Became != label.Stands {
			g := l.goneOf(plan.Register(), e, v)
			if g.Now == (Standing{}) {
				g.Became = label.Removed
			}
			v.Gone = append(v.Gone, g)
		}
	}
	slices.SortFunc(v.Gone, byCode)
}

func byCode(a, b Gone) int { return label.CompareCodes(a.Code, b.Code) }

// goneOf says what became of a label's thing. v is its van, nil where that has
// left.
func (l *loader) goneOf(next *label.Register, e *label.Entry, v *Van) Gone {
	g := Gone{Code: e.Code, Name: e.Fitted, System: l.fleet.Library.System(e.System), Became: e.Became}
	whole := l.fleet.Register
	last := e
	for range len(whole.All()) + 1 { // a register has no circles
		at := next.Find(last.Now)
		if at == nil {
			at = whole.Find(last.Now)
		}
		if at == nil {
			break
		}
		last = at
	}
	van := whole.Van(last.Van)
	if last == e || last.Became != label.Stands || van == nil || van.Became != label.Stands {
		return g
	}
	g.Now = Standing{Ref: last.Ref, Van: van.Name, Name: last.Fitted, System: l.fleet.Library.System(last.System)}
	if v != nil && v.Code == last.Van {
		if f := v.Named(last.Fitted); f != nil {
			g.Now.Title, g.Now.System = f.Title, f.System
		}
	}
	return g
}

// checkRegister compares the register with all vans. Where one could not be read
// whole, what is missing would seem to be gone.
func (l *loader) checkRegister(vans []Summary) {
	l.fleet.vans = nil
	sound := true
	for _, v := range vans {
		sound = sound && v.Sound
		l.fleet.vans = append(l.fleet.vans, v.Labels)
	}
	l.alikeCodes(vans)
	if l.fleet.Register == nil || !sound || l.settling {
		return
	}
	plan := l.fleet.PlanLabels(nil, manifest.Date{})
	l.problems.Add(plan.Problems...)
	l.waiting(plan)
}

// PlanLabels compares the register with the vans. leaving are vans that leave the
// fleet on a day.
func (f *Fleet) PlanLabels(leaving map[string]label.Fate, on manifest.Date) *label.Plan {
	wish := f.wish
	wish.Leaving, wish.On = leaving, on
	return label.Make(f.Register, f.vans, wish)
}

// labelVan is a van as the register sees it.
func (l *loader) labelVan(v *Van) label.Van {
	lv := label.Van{Code: v.Code, Name: v.Name, SpecDate: v.SpecDate, At: v.At, Things: make([]label.Thing, 0, len(v.Fitted))}
	for _, f := range v.Fitted {
		s, wants := f.label, f.System.Label && !f.Automatic
		lv.Things = append(lv.Things, label.Thing{
			Name: f.Name, System: f.System.ID, Letter: l.letter(f), Label: s.code, Wants: wants, At: f.Span, Stated: s.kept(),
		})
	}
	return lv
}

// waiting says what the register does not know yet. A label that would lead
// nowhere is an error.
func (l *loader) waiting(plan *label.Plan) {
	pending := 0
	for _, c := range plan.Changes {
		switch c.Verb {
		case label.Remove, label.Replace, label.Move:
			e := l.fleet.Register.Find(c.Ref)
			l.problems.Errorf(e.At, "label-nowhere", fmt.Sprintf("%s would lead nowhere: %s is not fitted any more", c.Ref, c.Fitted),
				"Run doorpocket labels: it notes what became of it, and the label leads to a page that says so.")
		case label.Give, label.AddVan:
			// That something has no label is said where it is fitted.
		default:
			pending++
		}
	}
	if pending > 0 {
		l.problems.Warnf(problem.Span{File: l.fleet.Register.File}, "labels-pending", "The register does not know of all that the specs say", "%s. Run doorpocket labels.", count(pending, "change waits", "changes wait"))
	}
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// alikeCodes warns of vans whose codes can be taken for each other, also of one
// that has left: its stickers may still be about.
func (l *loader) alikeCodes(vans []Summary) {
	type place struct {
		code string
		at   problem.Span
	}
	first := map[string]place{}
	if r := l.fleet.Register; r != nil {
		for _, v := range r.Vans {
			if v.Became != label.Stands {
				first[label.Shape(v.Code)] = place{v.Code, v.At}
			}
		}
	}
	for _, v := range vans {
		shape := label.Shape(v.Code)
		other, taken := first[shape]
		if taken && v.Code != "" && other.code != v.Code {
			l.problems.Add(problem.New(problem.Warning, v.At, "codes-alike", fmt.Sprintf("Codes %s and %s look alike", other.code, v.Code),
				"Somebody who reads the one off a label may type the other, and read about the wrong van. Give a van another code before its labels are printed.").WithNote(other.at, "written here"))
		}
		if !taken {
			first[shape] = place{v.Code, v.At}
		}
	}
}
