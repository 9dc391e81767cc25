package render

import (
	"html/template"

	"doorpocket/build/guide"
	"doorpocket/build/spec"
)

// sheetPage is the page of a sheet in the staff tree, laid out for paper.
type sheetPage struct {
	Frame
	Sheet   SaidSheet
	Drawing template.HTML
	signs   map[string]template.HTML
}

// Sign is the picture of a safety sign.
func (p sheetPage) Sign(id string) template.HTML { return p.signs[id] }

// sheetPages renders the sheets of a van for staff, and gives the links to them.
func (v *van) sheetPages(op *spec.Operator, sheets []*guide.Sheet) []link {
	said, err := v.r.SaidSheets(v.guide, sheets)
	v.fail(err)
	var links []link
	for _, s := range said {
		path := "sheets/" + s.ID + "/"
		page := sheetPage{Frame: v.r.staffFrame(v.w, op, v.w.must("sheet_of", "title", s.Title, "name", s.Name), s.Code+"/"+path), Sheet: s, signs: v.r.signs}
		page.Paper = v.w.paperOfSheet()
		if s.Marks != nil {
			page.Drawing = template.HTML(s.Marks.Drawing)
		}
		v.page(path, "staff-sheet", page)
		links = append(links, link{Href: path + "index.html", Title: s.Title, About: s.About})
	}
	return links
}
