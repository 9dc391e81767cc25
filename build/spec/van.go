package spec

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"doorpocket/build/label"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// checkCodes reports vans that share a code.
func (l *loader) checkCodes(vans []Summary) {
	first := map[string]Summary{}
	for _, v := range vans {
		before, twice := first[v.Code]
		if twice && v.Code != "" {
			l.problems.Add(problem.New(problem.Error, v.At, "duplicate-code", fmt.Sprintf("A second van with the code %q", v.Code),
				"The code is the van's address and stands on its labels: give one of them another.").WithNote(before.At, "first written here"))
		} else {
			first[v.Code] = v
		}
	}
}

func (l *loader) van(file string) *Van {
	r := l.read(file)
	if r == nil {
		return nil
	}
	v := &Van{File: l.prefix + file, At: r.KeySpan("code")}
	v.Code = l.code(r)
	v.Name, _ = r.Text("name", manifest.Required, manifest.Example(`"Rowan"`))
	v.SpecDate, _ = r.Date("spec_date", manifest.Required)
	var base *sheet
	if build, ok := r.Text("build"); ok {
		v.Build = build
		base = l.sheetNamed(r, build)
	}
	c := l.overlay(r, base, v.Code)
	v.Fitted = c.fitted
	l.embody(v, c, r.At())
	l.staff(v, r)
	r.Done()
	v.Without = c.absent
	l.complete(v, c)
	l.shareOut(v, c.added)
	v.Changed = l.lately(v, slices.Concat(l.extra.changed, c.changed))
	if !c.partial {
		l.lookIncomplete(v, c.looked, c.ownLooked)
	}
	return v
}

// bodyName is the name of a van's own body among what is fitted.
const bodyName = "body"

func (l *loader) code(r *manifest.Reader) string {
	code, ok := r.Text("code", manifest.Required, manifest.Example(`"RW"`))
	if ok && !label.ValidVan(code) {
		detail := "A code is two to four capital letters and digits, a letter first, and no name that some systems reserve: it becomes the van's address and is read out on the telephone."
		if better := strings.ToUpper(strings.Join(strings.Fields(code), "")); label.ValidVan(better) {
			detail = fmt.Sprintf("Did you mean %q? ", better) + detail
		}
		r.Problem("code", "bad-code", fmt.Sprintf("%q is no van code", code), detail)
		return ""
	}
	return code
}

// embody puts the body among the fitted systems.
func (l *loader) embody(v *Van, c content, van problem.Span) {
	values, at := c.body, c.bodyAt
	system := l.fleet.Library.System(components.BodySystem)
	if system == nil {
		return
	}
	if at.File == "" {
		at = van
		l.problems.Errorf(van, "missing-body", "The van has no body", "State its length, width, height and so on in [body], here or in its build sheet.")
		values = nil
	}
	v.Body = &Fitted{Name: bodyName, System: system, Values: values, Pictures: c.joining[bodyName], Automatic: true, Span: at}
	v.Fitted = append(v.Fitted, v.Body)
}

// complete adds what joins by itself and the defaults, puts the fitted systems
// in order and checks the whole.
func (l *loader) complete(v *Van, c content) {
	v.aboard = map[string]bool{}
	for _, f := range v.Fitted {
		v.aboard[f.System.ID] = true
	}
	l.join(v, c)
	l.checkJoined(v, c.joining)
	families := map[string]int{}
	for i, f := range l.fleet.Library.Families {
		families[f.ID] = i
	}
	slices.SortStableFunc(v.Fitted, func(a, b *Fitted) int { return families[a.System.Family] - families[b.System.Family] })
	for i, f := range v.Fitted {
		filled := *f // a sheet's fitted systems are shared between vans
		filled.Values = l.defaults(v, f)
		v.Fitted[i] = &filled
		if f == v.Body {
			v.Body = &filled
		}
	}
	l.registered(v)
	l.check(v)
}

// join adds the systems that are there wherever another is, but for those that
// the spec says are absent.
func (l *loader) join(v *Van, c content) {
	for grown := true; grown; {
		grown = false
		for _, s := range l.fleet.Library.Systems() {
			wanted := slices.ContainsFunc(s.Automatic, v.Aboard) && !v.aboard[s.ID] && !slices.Contains(c.absent, path.Base(s.ID))
			if !wanted {
				continue
			}
			name := path.Base(s.ID)
			if v.Named(name) != nil {
				name = dashed(s)
			}
			v.Fitted = append(v.Fitted, &Fitted{Name: name, System: s, Values: map[string]fact.Value{}, Pictures: c.joining[name], Automatic: true, Span: v.At})
			v.aboard[s.ID] = true
			grown = true
		}
	}
}

// defaults gives the values with the defaults of facts that make sense filled
// in, in the order of the system's file.
func (l *loader) defaults(v *Van, f *Fitted) map[string]fact.Value {
	filled := *f
	filled.Values = make(map[string]fact.Value, len(f.Values))
	for name, value := range f.Values {
		filled.Values[name] = value
	}
	for _, d := range f.System.Facts {
		if _, stated := filled.Values[d.Name]; !stated && !d.Default.IsZero() && l.sensible(v, &filled, d) {
			filled.Values[d.Name] = d.Default
		}
	}
	return filled.Values
}
