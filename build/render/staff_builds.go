package render

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"doorpocket/build/survey"
)

// builds writes what differs between the vans of each build sheet, and the list
// of the sheets.
func (s *staffPress) builds() {
	vans := map[string][]int{} // rows by build sheet
	for i, row := range s.rows {
		if row.Build != "" {
			vans[row.Build] = append(vans[row.Build], i)
		}
	}
	group := staffGroup{Heads: []staffHead{{Text: s.w.must("staff_build")}, {Text: s.w.must("staff_vans_count"), Number: true}, {Text: s.w.must("builds_differ"), Number: true}}}
	for _, name := range slices.Sorted(maps.Keys(vans)) {
		differing := s.build(name, vans[name])
		group.Rows = append(group.Rows, []staffCell{{Link: &link{Href: name + "/index.html", Title: name}}, numberCell(len(vans[name])), numberCell(differing)})
	}
	list := staffList{Empty: s.w.must("builds_none")}
	if len(group.Rows) > 0 {
		list.Groups = []staffGroup{group}
	}
	s.listPage("builds/", s.w.must("builds_title"), s.w.must("builds_about"), list)
}

// variant is one way in which vans differ from their sheet, with those that do.
type variant struct {
	survey.Difference
	vans []string
}

// build writes the page of one sheet, and gives in how many things its vans
// differ.
func (s *staffPress) build(name string, rows []int) int {
	found := map[survey.Difference]*variant{}
	things := map[string]bool{}
	for _, i := range rows {
		for _, d := range s.rows[i].Survey.Own {
			if found[d] == nil {
				found[d] = &variant{Difference: d}
			}
			found[d].vans = append(found[d].vans, s.rows[i].Code)
			things[d.Key()] = true
		}
	}
	all := slices.SortedFunc(maps.Values(found), func(a, b *variant) int {
		return cmp.Or(cmp.Compare(a.Fitted, b.Fitted), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Fact, b.Fact), -cmp.Compare(len(a.vans), len(b.vans)), cmp.Compare(a.Now, b.Now), cmp.Compare(a.Was, b.Was))
	})
	group := staffGroup{Sift: true, Heads: words(s.w.must("builds_thing"), s.w.must("builds_what"), s.w.must("builds_sheet"), s.w.must("builds_van"), s.w.must("list_which"))}
	file := [][]string{{"fitted", "system", "kind", "fact", "build_sheet", "van", "which"}}
	for _, v := range all {
		what, was, now := s.different(v.Difference)
		which := s.codes("../../", v.vans)
		if len(v.vans) == len(rows) && len(rows) > 1 {
			which = textCell(s.w.must("builds_all"))
		}
		group.Rows = append(group.Rows, []staffCell{{Text: s.title(v.System), Small: v.Fitted}, {Text: what, Small: v.Fact}, textCell(was), textCell(now), which})
		file = append(file, []string{v.Fitted, v.System, string(v.Kind), v.Fact, was, now, strings.Join(v.vans, " ")})
	}
	title := s.w.must("builds_of", "build", name)
	list := staffList{Empty: s.w.must("builds_alike")}
	if len(all) > 0 {
		list.Groups, list.Table = []staffGroup{group}, name+".csv"
		s.table("builds/"+name+"/"+name+".csv", file)
	}
	s.listPage("builds/"+name+"/", title, s.w.must("builds_of_about", "count", len(rows)), list)
	return len(things)
}

// different says in what a van differs, what the sheet says and what the van
// does.
func (s *staffPress) different(d survey.Difference) (what, was, now string) {
	there, absent := s.w.must("builds_there"), s.w.must("builds_absent")
	switch d.Kind {
	case survey.Added:
		return s.w.must("builds_fitted"), absent, there
	case survey.Absent:
		return s.w.must("builds_fitted"), there, absent
	case survey.Other:
		return s.w.must("builds_fitted"), s.title(d.Was), s.title(d.Now)
	case survey.Value:
		what = s.fact(d.System, d.Fact)
	case survey.Named:
		what = s.w.must("builds_title_own")
	default:
		what = s.w.must("builds_" + string(d.Kind))
	}
	none := s.w.must("list_not_stated")
	return what, cmp.Or(d.Was, none), cmp.Or(d.Now, none)
}
