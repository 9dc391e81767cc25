package render

import (
	"doorpocket/build/booklets"
	"doorpocket/build/due"
	"doorpocket/build/guide"
	"doorpocket/build/spec"
	"doorpocket/build/survey"
	"doorpocket/components/manifest"
)

// StaffRow is what the pages of the whole fleet for staff say of one van.
type StaffRow struct {
	Code, Name, Build, Registration string
	SpecDate                        manifest.Date
	Systems, Labels                 int
	Due                             []due.Item
	Survey                          survey.Record
}

// StaffRowOf is the row of a van that was read. g is its guide in the main
// language, nil where it was not made.
func StaffRowOf(op *spec.Operator, kit *guide.Kit, r spec.Read, g *guide.Guide) StaffRow {
	row := StaffRow{Code: r.Van.Code, Name: r.Van.Name, Build: r.Van.Build, SpecDate: r.Van.SpecDate, Systems: len(r.Van.Fitted), Due: due.OfVan(op, r), Survey: survey.Make(kit, r, g)}
	for _, f := range r.Van.Fitted {
		if f.Label != "" {
			row.Labels++
		}
	}
	row.Registration = r.Staff.Paper().Registration
	return row
}

// StaffFleet is what only staff see of the whole fleet.
type StaffFleet struct {
	Rows     []StaffRow
	Booklets *booklets.List
	Unshown  []survey.Unshown // photographs of no van alone that no page shows
	Changed  bool             // there is a page of what changed since an earlier state
}

// staffVanRow is a van in the list of all.
type staffVanRow struct {
	link
	Build, SpecDate, SpecISO string
	Numbers                  []int
	Registration             string
}

type staffView struct {
	Frame
	Tasks, Looks []link
	Heads        []string // of the numbers
	Vans         []staffVanRow
}

// Staff renders the pages of the whole fleet that only staff see, by their
// paths below the staff tree.
func (r *Renderer) Staff(op *spec.Operator, fleet StaffFleet) ([]File, error) {
	w, err := r.mainWords(op)
	if err != nil {
		return nil, err
	}
	s := &staffPress{r: r, w: w, op: op, rows: fleet.Rows, stray: fleet.Unshown, names: map[string]string{}}
	for _, row := range fleet.Rows {
		s.names[row.Code] = row.Name
	}
	if op.Register != nil {
		page, err := r.staffLabels(w, op)
		if err != nil {
			return nil, err
		}
		s.files = append(s.files, page)
	}
	dates, err := r.due(w, op, fleet.Rows)
	if err != nil {
		return nil, err
	}
	s.files = append(s.files, dates...)
	s.matrix()
	s.builds()
	s.lacks()
	old := s.booklets(fleet.Booklets)
	hard := 0
	for _, reading := range s.grades() {
		if reading.Hard() {
			hard++
		}
	}
	s.start(fleet.Changed, fleet.Booklets, old, hard)
	for _, shared := range r.staffShared {
		s.files = append(s.files, File(shared))
	}
	for _, shared := range r.shared {
		if shared.Path == r.script("routine") {
			s.files = append(s.files, File(shared))
		}
	}
	return s.files, s.err
}

// start is the staff's way in: what is to do, what there is to look at, and all
// vans.
func (s *staffPress) start(changed bool, booklets *booklets.List, old, hard int) {
	w := s.w
	view := staffView{Frame: s.r.staffFrame(w, s.op, w.must("staff_title"), "")}
	view.Scripts = []string{s.r.staffScript("sift")}
	add := func(list *[]link, folder, title, about string) {
		*list = append(*list, link{Href: folder + "index.html", Title: title, About: about})
	}
	add(&view.Tasks, "due/", w.must("staff_due"), w.must("start_due"))
	if r := s.op.Register; r != nil {
		add(&view.Tasks, "labels/", w.must("register"), w.must("register_short", "unprinted", len(r.Unprinted()), "stale", len(r.Stale())))
	}
	for _, l := range lacks {
		n, vans := 0, 0
		for _, row := range s.rows {
			k := l.of(row.Survey).Len()
			n += k
			if k > 0 {
				vans++
			}
		}
		short := w.must(l.words+"_short", "count", n, "vans", vans)
		if n == 0 {
			short = w.must(l.words + "_none")
		}
		add(&view.Tasks, l.folder, w.must(l.words+"_title"), short)
	}
	printed := w.must("booklets_none")
	if count := len(booklets.Vans()); count > 0 {
		printed = w.must("booklets_short", "old", old, "count", count)
	}
	add(&view.Tasks, "booklets/", w.must("booklets_title"), printed)
	add(&view.Tasks, "reading/", w.must("grade_title"), w.must("grade_short", "count", hard))
	if changed {
		add(&view.Looks, "changes/", w.must("changes_title"), w.must("start_changes"))
	}
	add(&view.Looks, "systems/", w.must("matrix_title"), w.must("start_matrix"))
	add(&view.Looks, "builds/", w.must("builds_title"), w.must("start_builds"))
	view.Heads = []string{w.must("staff_systems"), w.must("staff_labels"), w.must("start_lacking"), w.must("start_guesses"), w.must("start_bare")}
	values := s.op.Library.Values[s.op.Languages[0]]
	for _, row := range s.rows {
		view.Vans = append(view.Vans, staffVanRow{link: link{Href: row.Code + "/index.html", Code: row.Code, Title: row.Name}, Build: row.Build,
			SpecDate: values.Date(row.SpecDate), SpecISO: row.SpecDate.String(), Registration: row.Registration,
			Numbers: []int{row.Systems, row.Labels, row.Survey.Lacking.Len(), row.Survey.Guesses.Len(), row.Survey.Bare.Len()}})
	}
	s.page("", "staff", view)
}
