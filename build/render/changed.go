package render

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"doorpocket/build/guide"
)

type changedDay struct {
	Day   string
	Items []link
}

// changedView is the page of what changed lately.
type changedView struct {
	Frame
	Heading string
	Days    []changedDay
}

// changed renders what changed lately, where there is anything.
func (v *van) changed() {
	if len(v.guide.Changed) == 0 {
		return
	}
	title := v.w.must("changed_title")
	view := changedView{Frame: v.frame(guide.ChangedPath, title, ""), Heading: title}
	for _, c := range v.guide.Changed {
		if n := len(view.Days); n == 0 || view.Days[n-1].Day != c.Day {
			view.Days = append(view.Days, changedDay{Day: c.Day})
		}
		last := &view.Days[len(view.Days)-1]
		item := link{Title: v.w.SayChanged(c)}
		if c.Page != nil {
			item = v.link(guide.ChangedPath, c.Page)
			item.About = v.w.SayChanged(c)
		}
		last.Items = append(last.Items, item)
	}
	v.page(guide.ChangedPath, "changed", view)
}

// changedLink leads to what changed lately from the van's start, nil where there
// is nothing.
func (v *van) changedLink() *link {
	if len(v.guide.Changed) == 0 {
		return nil
	}
	return &link{Href: v.href("", guide.ChangedPath), Title: v.w.must("changed_title"), About: v.w.must("changed_last", "day", v.guide.Changed[0].Day)}
}

// SayChanged says what changed in a sentence of its own.
func (w *Words) SayChanged(c guide.Changed) string {
	key := "changed_new"
	switch {
	case c.Text != "":
		return c.Text
	case c.Gone != "":
		key = "changed_gone"
	case c.What == "":
	case c.Was == "":
		key = "changed_stated"
	case c.Now == "":
		key = "changed_unstated"
	case c.Number:
		key = "change_number"
	default:
		key = "change_words"
	}
	text := w.must(key, "what", c.What, "now", c.Now, "was", c.Was, "title", c.Gone)
	return strings.TrimSuffix(upper(text), ".") + "."
}

// upper begins a sentence with a capital letter.
func upper(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}
