package spec

import (
	"fmt"
	"slices"

	"doorpocket/components/problem"
	"doorpocket/components/prose"
)

// checkEmbeds reports the pictures that a page of the operator's own system
// wants to show and that the van does not name. Pages of the library cannot
// know what an operator has taken pictures of: they do without.
func (l *loader) checkEmbeds(v *Van, f *Fitted) {
	if l.given.System(f.System.ID) == f.System {
		return
	}
	for _, lang := range l.fleet.Languages {
		words := f.System.Words[lang]
		if words == nil {
			continue // that is said elsewhere
		}
		l.checkPictures(v, f, words.Page.Intro)
		for _, s := range words.Page.Sections {
			if v.Holds(f, s.Stands) {
				l.checkPictures(v, f, s.Body)
			}
		}
	}
}

func (l *loader) checkPictures(v *Van, f *Fitted, d prose.Doc) {
	for _, embed := range pictureEmbeds(d) {
		if f.Picture(embed.Name) == nil {
			l.problems.Add(problem.New(problem.Error, embed.At, "missing-picture",
				fmt.Sprintf("No picture %q for %s on %s", embed.Name, f.header(), v.Name), f.pictureAdvice(embed.Name)).
				WithNote(f.Span, "fitted here"))
		}
	}
}

// header is how a spec writes where a fitted system begins.
func (f *Fitted) header() string {
	if f.Name == bodyName {
		return "[body]"
	}
	return fmt.Sprintf("[fitted.%s]", f.Name)
}

func (f *Fitted) pictureAdvice(stem string) string {
	var stems []string
	for _, p := range f.Pictures {
		stems = append(stems, p.Stem())
	}
	if near := problem.Nearest(stem, stems); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	if f.Automatic {
		return fmt.Sprintf("No spec lists pictures for it. Call the picture after %q and put it into the van's own folder of pictures, or take the line out of the page.", f.Name)
	}
	return fmt.Sprintf("Put the picture into the folder pictures and name it there, for example: pictures = [{ file = %q, alt = \"...\" }]", stem+".jpg")
}

// noPictures reports pictures on a page that belongs to no fitted system, where
// there are none to choose from.
func (l *loader) noPictures(page *prose.Page) {
	for _, d := range page.Docs() {
		for _, embed := range pictureEmbeds(d) {
			l.problems.Add(problem.New(problem.Error, embed.At, "missing-picture", fmt.Sprintf("Picture %q on a page that belongs to no system", embed.Name),
				"A picture belongs to what is fitted, and is shown on its page. Take the line out."))
		}
	}
}

func pictureEmbeds(d prose.Doc) []prose.Piece {
	return slices.DeleteFunc(d.Embeds(), func(p prose.Piece) bool { return p.Scheme != "picture" })
}
