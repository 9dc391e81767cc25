package render

import (
	"fmt"
	"html/template"

	"doorpocket/build/guide"
	"doorpocket/build/label"
)

// goneWords say what became of something.
var goneWords = map[label.Fate]string{
	label.Removed: "gone_removed", label.Replaced: "gone_replaced", label.Moved: "gone_moved",
	label.Retired: "gone_retired", label.Sold: "gone_sold",
}

// gone is the page of a label whose thing is gone from this van.
func (v *van) gone(x *guide.Gone) {
	name := v.guide.Van.Name
	view := v.r.gone(v.w, x, v.guide.Van.Code, name, func(s *guide.Standing) link {
		return link{Href: v.up(x.Path) + "../" + s.Path() + v.lang() + "index.html", Code: s.String(), Title: s.Title, About: s.Van}
	})
	view.Frame = v.frame(x.Path, v.w.must("gone")+" "+v.guide.Van.Code+" "+x.Code, x.Code)
	view.On = []link{{Href: v.href(x.Path, ""), Code: v.guide.Van.Code, Title: v.w.must("gone_start", "name", name)}}
	v.page(x.Path, "gone", view)
}

// gone says what became of the thing of a label. to links to what stands in its
// place.
func (r *Renderer) gone(w *Words, x *guide.Gone, van, name string, to func(*guide.Standing) link) goneView {
	view := goneView{Heading: w.must("gone"), About: w.wasFor(van, x), NowTitle: w.must("gone_now")}
	if x.Now != nil {
		view.Now = []link{to(x.Now)}
		if x.Now.Ref.Van != van {
			view.NowTitle = w.must("gone_elsewhere")
		}
		if x.Became == label.Moved {
			name = x.Now.Van
		}
	}
	view.Says = []string{w.must(goneWords[x.Became], "name", name)}
	if x.Became != label.Sold && x.Became != label.Retired {
		view.Says = append(view.Says, w.must("gone_tell"))
	}
	return view
}

// wasFor says what the label of something that is gone stood for.
func (w *Words) wasFor(van string, x *guide.Gone) string {
	return w.must("gone_was", "code", van+" "+x.Code, "title", x.Title)
}

// Left renders what remains of the guide of a van that has left the fleet: a
// start that says so, and the page of every label that it had.
func (r *Renderer) Left(l *guide.Left) ([]File, error) {
	w := r.words[l.Lang]
	if w == nil {
		return nil, fmt.Errorf("the interface has no words for language %q: add layouts/words.%s.toml", l.Lang, l.Lang)
	}
	// The van's folder is one deep, its labels are two, and a language that is
	// not the main one adds a folder.
	folder, up := "", ""
	if !l.Main {
		folder, up = l.Lang+"/", "../"
	}
	vans := link{Href: up + "../index.html", Title: w.must("all_vans"), About: w.must("left_other")}
	start := goneView{Heading: w.must("left_"+string(l.Van.Became), "name", l.Van.Name), Says: []string{w.must("left_about")}, On: []link{vans}}
	start.Frame = r.frame(w, l.Operator, l.Lang, start.Heading)
	paper := func(path string) template.CSS {
		return w.paper(l.Operator.Address.Reading(l.Van.Code+"/"+path+folder), l.Van.Code+" "+l.Van.Name)
	}
	start.Paper = paper("")
	start.Code = l.Van.Code
	call, err := w.part("call-box", start.Frame)
	if err != nil {
		return nil, err
	}
	start.CallBox = call
	data, err := r.execute(w, "gone", start)
	if err != nil {
		return nil, err
	}
	files := []File{{Path: l.Van.Code + "/" + folder + "index.html", Data: data}}
	vans.Href = "../" + vans.Href
	for _, x := range l.Gone {
		view := r.gone(w, x, l.Van.Code, l.Van.Name, func(s *guide.Standing) link {
			return link{Href: up + "../../" + s.Path() + folder + "index.html", Code: s.String(), Title: s.Title, About: s.Van}
		})
		view.Frame = r.frame(w, l.Operator, l.Lang, view.Heading+" "+l.Van.Code+" "+x.Code)
		view.Code, view.CallBox, view.Paper = x.Code, call, paper(x.Path)
		view.On = []link{{Href: up + "../" + folder + "index.html", Code: l.Van.Code, Title: w.must("gone_van", "name", l.Van.Name)}, vans}
		data, err := r.execute(w, "gone", view)
		if err != nil {
			return nil, err
		}
		files = append(files, File{Path: l.Van.Code + "/" + x.Path + folder + "index.html", Data: data})
	}
	return files, nil
}
