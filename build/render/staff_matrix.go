package render

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"doorpocket/components"
)

// matrixView is the systems of one family against all vans.
type matrixView struct {
	Frame
	Heading string
	Columns []matrixColumn
	Rows    []matrixRow
	Others  []link // the other families
}

type matrixColumn struct {
	Title, ID string
	Count     int
}

type matrixRow struct {
	link
	Build string
	Cells []string // label codes, or a dot for what has none; "" for what is not there
}

// without stands for what is there and has no label.
const withoutLabel = "•"

// matrix writes, for each family, which van has which of its systems, and all of
// it as one file. A page a family stays one that a browser can open, also for
// thousands of vans.
func (s *staffPress) matrix() {
	aboard := make([]map[string]string, len(s.rows)) // by system the cell
	count := map[string]int{}
	for i, row := range s.rows {
		aboard[i] = map[string]string{}
		for entry := range row.Survey.Has.All() {
			id, code, _ := strings.Cut(entry, "=")
			if code == "" {
				code = withoutLabel
			}
			if before, twice := aboard[i][id]; twice {
				code = before + " " + code
			} else {
				count[id]++
			}
			aboard[i][id] = code
		}
	}
	var list staffGroup
	list.Heads = []staffHead{{Text: s.w.must("matrix_family")}, {Text: s.w.must("staff_systems"), Number: true}, {Text: s.w.must("staff_vans_count"), Number: true}}
	families := s.familiesOf(count)
	for _, f := range families {
		columns := s.columns(f, count)
		vans := 0
		for i := range s.rows {
			if slices.ContainsFunc(columns, func(c matrixColumn) bool { return aboard[i][c.ID] != "" }) {
				vans++
			}
		}
		title := f.Words[s.op.Languages[0]].Title
		list.Rows = append(list.Rows, []staffCell{{Link: &link{Href: f.ID + "/index.html", Title: title}}, numberCell(len(columns)), numberCell(vans)})
		s.family(f, families, columns, aboard)
	}
	s.listPage("systems/", s.w.must("matrix_title"), s.w.must("matrix_about"), staffList{Table: "systems.csv", Groups: []staffGroup{list}, Empty: s.w.must("matrix_none")})
	s.matrixFile(count, aboard)
}

func (s *staffPress) familiesOf(count map[string]int) []*components.Family {
	var all []*components.Family
	for _, f := range s.op.Library.Families {
		if len(s.columns(f, count)) > 0 {
			all = append(all, f)
		}
	}
	return all
}

// columns are the systems of a family that some van has.
func (s *staffPress) columns(f *components.Family, count map[string]int) []matrixColumn {
	var all []matrixColumn
	for _, id := range slices.Sorted(maps.Keys(count)) {
		if strings.HasPrefix(id, f.ID+"/") {
			all = append(all, matrixColumn{Title: s.title(id), ID: id, Count: count[id]})
		}
	}
	return all
}

func (s *staffPress) family(f *components.Family, families []*components.Family, columns []matrixColumn, aboard []map[string]string) {
	lang := s.op.Languages[0]
	title := f.Words[lang].Title
	folder := "systems/" + f.ID + "/"
	view := matrixView{Frame: s.r.staffFrame(s.w, s.op, title+" · "+s.w.must("matrix_title"), folder), Heading: title, Columns: columns}
	view.Scripts = []string{"../../" + s.r.staffScript("sift")}
	for _, other := range families {
		if other != f {
			view.Others = append(view.Others, link{Href: "../" + other.ID + "/index.html", Title: other.Words[lang].Title})
		}
	}
	for i, row := range s.rows {
		r := matrixRow{link: link{Href: "../../" + row.Code + "/index.html", Code: row.Code, Title: row.Name}, Build: row.Build}
		for _, c := range columns {
			r.Cells = append(r.Cells, aboard[i][c.ID])
		}
		view.Rows = append(view.Rows, r)
	}
	s.page(folder, "staff-matrix", view)
}

// matrixFile is the whole as one file: a row a van, a column a system.
func (s *staffPress) matrixFile(count map[string]int, aboard []map[string]string) {
	ids := slices.Sorted(maps.Keys(count))
	rows := [][]string{append([]string{"code", "name", "build", "registration", "spec_date", "systems", "labels", "not_stated", "guessed", "without_picture", "without_label"}, ids...)}
	for i, v := range s.rows {
		row := []string{v.Code, v.Name, v.Build, v.Registration, v.SpecDate.String(), strconv.Itoa(v.Systems), strconv.Itoa(v.Labels), strconv.Itoa(v.Survey.Lacking.Len()),
			strconv.Itoa(v.Survey.Guesses.Len()), strconv.Itoa(v.Survey.Bare.Len()), strconv.Itoa(v.Survey.Unlabelled.Len())}
		for _, id := range ids {
			cell := aboard[i][id]
			row = append(row, strings.ReplaceAll(cell, withoutLabel, "yes"))
		}
		rows = append(rows, row)
	}
	s.table("systems/systems.csv", rows)
}
