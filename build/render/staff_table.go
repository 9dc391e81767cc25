package render

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"doorpocket/build/roster"
	"doorpocket/build/spec"
	"doorpocket/build/survey"
)

// staffList is a page of the staff tree with tables of one form.
type staffList struct {
	Frame
	Heading, About string
	Back           string // the way to the staff's start
	Table          string // the file of the same as CSV, "" for none
	Groups         []staffGroup
	Empty          string // what it says where there is nothing to list
}

// staffGroup is a table with a heading over it.
type staffGroup struct {
	Title, About string
	Heads        []staffHead
	Rows         [][]staffCell
	Sift         bool // the script may filter and sort it
}

type staffHead struct {
	Text   string
	Number bool
}

// staffCell is what stands in a cell: a link, a text, and codes of vans.
type staffCell struct {
	Link   *link
	Text   string
	Small  string // below the text
	Codes  []link
	More   string // codes that are not shown
	Number bool
	Sort   string // by what the cell is sorted, where not by what it says
}

func textCell(text string) staffCell { return staffCell{Text: text} }

func numberCell(n int) staffCell { return staffCell{Text: strconv.Itoa(n), Number: true} }

func words(texts ...string) []staffHead {
	var heads []staffHead
	for _, text := range texts {
		heads = append(heads, staffHead{Text: text})
	}
	return heads
}

// mostCodes is how many vans a cell names: a page must stay one that a phone can
// open, however large the fleet. The file beside it names all.
const mostCodes = 24

// codes are links to vans from a page that is one folder down for each of up.
func (s *staffPress) codes(up string, codes []string) staffCell {
	var cell staffCell
	for _, code := range codes[:min(len(codes), mostCodes)] {
		cell.Codes = append(cell.Codes, link{Href: up + code + "/index.html", Code: code, Title: s.names[code]})
	}
	if more := len(codes) - mostCodes; more > 0 {
		cell.More = s.w.must("list_more", "count", more)
	}
	return cell
}

// listPage renders a page of tables at a folder below the staff tree.
func (s *staffPress) listPage(folder, title, about string, list staffList) {
	list.Frame = s.r.staffFrame(s.w, s.op, title, folder)
	list.Heading, list.About, list.Back = title, about, strings.Repeat("../", strings.Count(folder, "/"))
	for _, g := range list.Groups {
		if g.Sift {
			list.Scripts = append(list.Scripts, list.Back+s.r.staffScript("sift"))
			break
		}
	}
	s.page(folder, "staff-list", list)
}

// page renders a page at a folder below the staff tree.
func (s *staffPress) page(folder, name string, view any) {
	if s.err != nil {
		return
	}
	data, err := s.r.execute(s.w, name, view)
	if err != nil {
		s.err = err
	}
	s.files = append(s.files, File{Path: folder + "index.html", Data: data})
}

// table writes the same as a file that spreadsheets open.
func (s *staffPress) table(path string, rows [][]string) {
	var b bytes.Buffer
	b.WriteString("\ufeff") // without it some spreadsheets take the letters for others
	out := csv.NewWriter(&b)
	out.UseCRLF = true
	for _, row := range roster.HarmlessAll(rows) {
		if err := out.Write(row); err != nil && s.err == nil {
			s.err = err
		}
	}
	out.Flush()
	s.files = append(s.files, File{Path: path, Data: b.Bytes()})
}

// staffPress renders the pages of the whole fleet for staff.
type staffPress struct {
	r     *Renderer
	w     *Words
	op    *spec.Operator
	rows  []StaffRow
	stray []survey.Unshown  // photographs of no van alone that no page shows
	names map[string]string // of vans by code
	files []File
	err   error
}

// title is what a system is called.
func (s *staffPress) title(id string) string {
	if system := s.op.Library.System(id); system != nil {
		if words := system.Words[s.op.Languages[0]]; words != nil {
			return words.Title
		}
	}
	return id
}

// fact is what a fact of a system is called.
func (s *staffPress) fact(id, key string) string {
	if system := s.op.Library.System(id); system != nil {
		if words := system.Words[s.op.Languages[0]]; words != nil && words.Facts[key] != "" {
			return words.Facts[key]
		}
	}
	return key
}
