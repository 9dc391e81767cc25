package render

import (
	"doorpocket/build/booklets"
	"doorpocket/components/manifest"
)

// booklets writes which van has a printed booklet and whether the guide still
// says the same, and gives how many do not.
func (s *staffPress) booklets(list *booklets.List) int {
	old := 0
	group := staffGroup{Sift: true, Heads: words(s.w.must("staff_van"), s.w.must("booklets_on"), s.w.must("booklets_revision"), s.w.must("booklets_state"))}
	var without []string
	for _, row := range s.rows {
		b, ok := list.Of(row.Code)
		if !ok {
			without = append(without, row.Code)
			continue
		}
		state := textCell(s.w.must("booklets_good"))
		if b.Edition != row.Survey.Edition {
			state = textCell(s.w.must("booklets_old"))
			old++
		}
		van := staffCell{Link: &link{Href: "../" + row.Code + "/index.html", Code: row.Code, Title: row.Name}}
		group.Rows = append(group.Rows, []staffCell{van, s.day(b.On), textCell(b.Revision), state})
	}
	page := staffList{Empty: s.w.must("booklets_none")}
	if len(group.Rows) > 0 {
		page.Groups = append(page.Groups, group)
		if len(without) > 0 {
			page.Groups = append(page.Groups, staffGroup{Title: s.w.must("booklets_without"), Heads: words(s.w.must("staff_vans_count")), Rows: [][]staffCell{{s.codes("../", without)}}})
		}
	}
	s.listPage("booklets/", s.w.must("booklets_title"), s.w.must("booklets_about"), page)
	return old
}

// day is a day in words that sorts by the calendar.
func (s *staffPress) day(d manifest.Date) staffCell {
	return staffCell{Text: s.op.Library.Values[s.op.Languages[0]].Date(d), Sort: d.String()}
}
