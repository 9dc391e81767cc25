package render

import (
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/roster"
	"doorpocket/build/spec"
	"doorpocket/components/reading"
)

// Paths of the staff's pages of the whole fleet, below the staff tree.
const (
	fleetPath   = "fleet/"
	fleetCSV    = "systems.csv"
	batchesPath = "builds/"
	factsPath   = "facts/" // below a van
)

// mostCodes is how many codes of vans are listed; of more it says only how many
// there are.
const mostCodes = 12

type fleetSystem struct {
	Title, Name   string
	Vans          int
	With, Without []link // a few codes, of the side that is the smaller one
	Everywhere    bool
}

type fleetFamily struct {
	Title, Href string
	Systems     []fleetSystem
}

type staffFleetView struct {
	frame
	Vans     int
	CSV      string
	Families []fleetFamily
}

type matrixRow struct {
	link
	Build string
	Cells []int
}

type matrixView struct {
	frame
	Heading string
	Columns []string
	Rows    []matrixRow
}

// staffFleet renders which systems the vans have: a page of all systems, one of
// every family with a row for each van, and a table for a spreadsheet.
func (r *Renderer) staffFleet(w *Words, op *spec.Operator, rows []roster.Row) ([]File, error) {
	lang := op.Languages[0]
	families := roster.Families(op.Library, rows)
	view := staffFleetView{frame: r.staffFrame(w, op, w.must("fleet_systems"), fleetPath), Vans: len(rows), CSV: fleetCSV}
	var files []File
	for _, f := range families {
		family := fleetFamily{Title: f.Words[lang].Title, Href: f.ID + "/index.html"}
		for _, s := range f.Systems {
			family.Systems = append(family.Systems, fleetSystemOf(s, lang))
		}
		view.Families = append(view.Families, family)
		page, err := r.matrix(w, op, f, rows)
		if err != nil {
			return nil, err
		}
		files = append(files, page)
	}
	table, err := roster.CSV(families, rows)
	if err != nil {
		return nil, err
	}
	files = append(files, File{Path: fleetPath + fleetCSV, Data: table})
	data, err := r.execute("staff-fleet", view)
	return append(files, File{Path: fleetPath + "index.html", Data: data}), err
}

func fleetSystemOf(s roster.System, lang string) fleetSystem {
	one := fleetSystem{Title: s.ID, Name: s.ID, Vans: len(s.With), Everywhere: len(s.Without) == 0}
	if words := s.Words[lang]; words != nil {
		one.Title = words.Title
	}
	switch few := len(s.With) <= len(s.Without); {
	case few && len(s.With) <= mostCodes:
		one.With = codeLinks(s.With, "../")
	case !few && len(s.Without) <= mostCodes:
		one.Without = codeLinks(s.Without, "../")
	}
	return one
}

// codeLinks lead to the staff's pages of vans.
func codeLinks(codes []string, up string) []link {
	var all []link
	for _, code := range codes {
		all = append(all, link{Href: up + code + "/index.html", Code: code})
	}
	return all
}

// matrix is the page of one family: how many of each system every van has.
func (r *Renderer) matrix(w *Words, op *spec.Operator, f roster.Family, rows []roster.Row) (File, error) {
	path := fleetPath + f.ID + "/"
	view := matrixView{Heading: f.Words[op.Languages[0]].Title}
	view.frame = r.staffFrame(w, op, view.Heading, path)
	view.Scripts = r.sortScript("../../")
	for _, s := range f.Systems {
		title := s.ID
		if words := s.Words[op.Languages[0]]; words != nil {
			title = words.Title
		}
		view.Columns = append(view.Columns, title)
	}
	for _, row := range rows {
		line := matrixRow{link: link{Href: "../../" + row.Code + "/index.html", Code: row.Code, Title: row.Name}, Build: row.Build}
		for _, s := range f.Systems {
			line.Cells = append(line.Cells, row.Count(s.ID))
		}
		view.Rows = append(view.Rows, line)
	}
	data, err := r.execute("staff-matrix", view)
	return File{Path: path + "index.html", Data: data}, err
}

// sortScript is the address of the script that sorts and filters tables; up is
// the way to the staff tree.
func (r *Renderer) sortScript(up string) []string {
	for _, s := range r.staffShared {
		if strings.HasPrefix(s.Path, "parts/sort-") {
			return []string{up + s.Path}
		}
	}
	panic("no script to sort with") // the names are ours
}

// ownPageRow is a page of the operator's own and how hard it is to read.
type ownPageRow struct {
	Title, Lang string
	Words       int
	Grade       float64
}

// ownPages tells how hard the operator's own pages in English are to read; of
// other languages there is no measure.
func ownPages(op *spec.Operator) []ownPageRow {
	const measured = "en"
	plain := guide.NewKit(op, measured).Plain(&spec.Van{Name: "van"})
	var all []ownPageRow
	for _, own := range op.Pages {
		words, ok := own.Words[measured]
		if !ok {
			continue
		}
		var text strings.Builder
		for _, d := range words.Page.Docs() {
			text.WriteString(guide.Filler{Guide: plain}.Text(d) + "\n\n")
		}
		count := reading.Count(text.String())
		all = append(all, ownPageRow{Title: words.Title, Lang: measured, Words: count.Words, Grade: count.Grade()})
	}
	return all
}
