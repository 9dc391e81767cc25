package render

import (
	"fmt"

	"doorpocket/build/survey"
)

// grades writes how hard the operator's own pages are to read.
func (s *staffPress) grades() []survey.Reading {
	readings := survey.Readings(s.op)
	group := staffGroup{Heads: []staffHead{{Text: s.w.must("grade_page")}, {Text: s.w.must("grade_grade"), Number: true}, {Text: s.w.must("grade_words"), Number: true}, {Text: s.w.must("grade_hardest")}}}
	for _, r := range readings {
		verdict := ""
		if r.Hard() {
			verdict = s.w.must("grade_hard", "grade", survey.EasyGrade)
		}
		group.Rows = append(group.Rows, []staffCell{{Text: r.Title, Small: r.File}, {Text: fmt.Sprintf("%.1f", r.Counts.Grade()), Small: verdict, Number: true}, numberCell(r.Counts.Words), textCell(r.Hardest)})
	}
	list := staffList{Empty: s.w.must("grade_none")}
	if len(group.Rows) > 0 {
		list.Groups = []staffGroup{group}
	}
	s.listPage("reading/", s.w.must("grade_title"), s.w.must("grade_about", "grade", survey.EasyGrade), list)
	return readings
}
