package guide

import (
	"strings"

	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// Gone is the page of a label whose thing is not there any more.
type Gone struct {
	Code, Path string
	Title      string // of what it stood for
	Became     label.Fate
	Now        *Standing // what stands in its place, nil for nothing
}

// Standing is something fitted, perhaps in another van, as a page that leads to
// it needs to know it.
type Standing struct {
	label.Ref
	Van, Title string // names of the van and of the thing
}

// Left is what remains of the guide of a van that has left the fleet.
type Left struct {
	Operator *spec.Operator
	Van      *spec.LeftVan
	Lang     string
	Main     bool
	Gone     []*Gone
}

// Left puts together what remains of the guide of a van that has left.
func (k *Kit) Left(v *spec.LeftVan) *Left {
	return &Left{Operator: k.operator, Van: v, Lang: k.lang, Main: k.lang == k.operator.Languages[0], Gone: k.gone(v.Gone)}
}

func (k *Kit) gone(list []spec.Gone) []*Gone {
	var all []*Gone
	for _, g := range list {
		page := &Gone{Code: g.Code, Path: g.Code + "/", Became: g.Became, Title: k.titleOf(g.System, g.Name)}
		if now := g.Now; now != (spec.Standing{}) {
			page.Now = &Standing{Ref: now.Ref, Van: now.Van, Title: now.Title}
			if page.Now.Title == "" {
				page.Now.Title = k.titleOf(now.System, now.Name)
			}
		}
		all = append(all, page)
	}
	return all
}

// titleOf is what the library calls a system, or else the name under which it
// was fitted.
func (k *Kit) titleOf(system *components.System, name string) string {
	if system != nil {
		if words := system.Words[k.lang]; words != nil {
			return words.Title
		}
	}
	return strings.ReplaceAll(name, "-", " ")
}
