package render

import (
	"fmt"
	"html/template"
	"math"
	"slices"
	"strings"

	"doorpocket/build/guide"
	photos "doorpocket/build/pictures"
	"doorpocket/build/spec"
)

// PictureFolder is where pictures stand below the hirer tree: all vans share
// them.
const PictureFolder = "pictures/"

// Widths at which the style sheet shows pictures, so that a phone loads no
// larger file than it needs.
const (
	sizes     = "(min-width: 47em) 45em, calc(100vw - 2em)"
	sizesTall = "(min-width: 29em) 27em, calc(100vw - 2em)"
)

type pictureView struct {
	Src, Srcset, Sizes string
	Modern             string // the set in a format that not every browser reads, "" for none
	Width, Height      int
	Tall               bool // higher than wide
	Alt                string
	Marks              []markOnPicture
	Radius             int // of a mark, in pixels of the largest variant
	Letters, Drop      int // the height of its number, and how far below the middle its line is
}

// markOnPicture is a mark at a place in pixels of the largest variant.
type markOnPicture struct {
	X, Y   int
	Number int
	Text   string
}

// onPicture puts marks on a picture as it is shown. On a phone, where a picture
// is as wide as the page, they are as large whatever its pixels.
func (p *pictureView) onPicture(marks []spec.Mark) {
	p.Radius = max(1, p.Width/24)
	if p.Tall {
		p.Radius = max(1, p.Width/18) // shown no wider than this narrower place
	}
	p.Letters, p.Drop = p.Radius*5/4, p.Radius*9/20
	for i, m := range marks {
		inside := func(part float64, whole int) int { // a mark at the edge stays whole
			return min(max(int(math.Round(part*float64(whole))), p.Radius), whole-p.Radius)
		}
		p.Marks = append(p.Marks, markOnPicture{X: inside(m.Across, p.Width), Y: inside(m.Down, p.Height), Number: i + 1, Text: m.Text})
	}
}

// picture shows a picture on the page at from, "" for one that was not made.
func (v *van) picture(from string, p spec.Picture) template.HTML {
	made, ok := v.guide.Operator.Pictures[p.File]
	if !ok {
		return ""
	}
	folder := v.up(from) + "../" + PictureFolder
	largest := made.Largest()
	view := pictureView{Src: folder + made.Variants[0].Name, Width: largest.Width, Height: largest.Height,
		Tall: largest.Height > largest.Width, Sizes: sizes, Alt: p.Alt}
	if view.Tall {
		view.Sizes = sizesTall
	}
	view.onPicture(p.Marks)
	view.Modern = srcset(folder, made.Modern)
	if len(made.Variants) > 1 {
		view.Srcset = srcset(folder, made.Variants)
	}
	return v.part("picture", view)
}

// srcset lists files with their widths, for a browser to choose from.
func srcset(folder string, variants []photos.Variant) string {
	var set []string
	for _, v := range variants {
		set = append(set, fmt.Sprintf("%s %dw", folder+v.Name, v.Width))
	}
	return strings.Join(set, ", ")
}

// picture is one that the words of a page ask for by its stem. Words of their
// own for it come before those of the spec.
func (f filler) picture(stem, alt string) (string, bool) {
	p := f.Page.Fitted.Picture(stem)
	if p == nil {
		return "", false
	}
	f.van.asked = append(f.van.asked, p.File)
	shown := *p
	if alt != "" {
		shown.Alt = alt
	}
	markup := f.van.picture(f.from, shown)
	return string(markup), markup != ""
}

// rest are the pictures of a page's system that its words do not show already.
func (v *van) rest(p *guide.Page, view systemView) []template.HTML {
	var all []template.HTML
	for _, picture := range p.Fitted.Pictures {
		if !v.shown(view, picture) {
			all = append(all, v.picture(p.Path, picture))
		}
	}
	return all
}

// shown looks for a picture in the words as filled in, since a paragraph that
// asks for one may have been left out. Two of the same bytes have one name: only
// what the words asked for can be there.
func (v *van) shown(view systemView, p spec.Picture) bool {
	made, ok := v.guide.Operator.Pictures[p.File]
	if !ok || !slices.Contains(v.asked, p.File) {
		return false
	}
	name := made.Variants[0].Name
	for _, s := range view.Sections {
		if strings.Contains(string(s.Body), name) {
			return true
		}
	}
	return strings.Contains(string(view.Intro), name)
}
