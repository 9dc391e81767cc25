package render

import (
	"cmp"
	"slices"

	"doorpocket/build/spec"
	"doorpocket/build/survey"
)

// whyUnshown are the words for why a photograph is not shown, by the code of the
// problem that says more.
var whyUnshown = map[string]string{
	"picture-without-words": "unshown_words",
	"stray-picture":         "unshown_stray",
	"bad-picture":           "unshown_bad",
	"unreadable-file":       "unshown_bad",
	spec.NeedsProgram:       "unshown_program",
	"file-not-read":         "unshown_kind",
	"unknown-album":         "unshown_album",
}

// withUnshown puts a table of the photographs that somebody put into the fleet's
// folder and that no page shows before the others, where there are such.
func (s *staffPress) withUnshown(others []staffGroup) []staffGroup {
	all := slices.Clone(s.stray)
	for _, row := range s.rows {
		all = append(all, row.Survey.Unshown...)
	}
	slices.SortFunc(all, func(a, b survey.Unshown) int { return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Code, b.Code)) })
	group := staffGroup{Title: s.w.must("unshown_title"), About: s.w.must("unshown_about"), Sift: true,
		Heads: words(s.w.must("unshown_file"), s.w.must("unshown_why"))}
	for _, u := range slices.Compact(all) { // several vans may be the poorer for one
		why, ok := whyUnshown[u.Code]
		if !ok {
			why = "unshown_bad"
		}
		group.Rows = append(group.Rows, []staffCell{textCell(u.File), textCell(s.w.must(why))})
	}
	if len(group.Rows) == 0 {
		return others
	}
	for i := range others {
		others[i].Title = s.w.must("bare_title")
	}
	return append([]staffGroup{group}, others...)
}
