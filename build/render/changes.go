package render

import (
	"bytes"
	"html/template"
	"strings"

	"github.com/alecthomas/chroma/v2"
	chromahtml "github.com/alecthomas/chroma/v2/formatters/html"
	"github.com/alecthomas/chroma/v2/styles"

	"doorpocket/build/compare"
	"doorpocket/build/spec"
)

type changedFile struct {
	Name, Counts string
	Lines        template.HTML
}

type changesView struct {
	Frame
	Heading, About string
	Sections       []compare.Section
	Same           int
	Files          []changedFile
	More           int // files whose lines are not shown
}

// mostFiles is how many files are shown line by line: a page must stay one that a
// browser can open.
const mostFiles = 100

// ChangesPath is where the page of changes stands in the staff tree.
const ChangesPath = "changes/index.html"

// Changes renders what changed since an earlier state of the fleet, for staff,
// with the lines of the files that changed.
func (r *Renderer) Changes(op *spec.Operator, report *compare.Report) (File, error) {
	w, err := r.mainWords(op)
	if err != nil {
		return File{}, err
	}
	voice := Voice{r, w}
	view := changesView{Frame: r.staffFrame(w, op, w.must("changes_title"), "changes/"), Same: report.Same}
	view.Heading, view.About = report.Headline(voice)
	words := *report
	words.Files = nil // shown line by line
	view.Sections = words.Sections(voice)
	for i, f := range report.Files {
		if i == mostFiles {
			view.More = len(report.Files) - i
			break
		}
		view.Files = append(view.Files, changedFile{Name: f.Name, Counts: w.must("compare_lines", "added", f.Added, "removed", f.Removed), Lines: difference(f)})
	}
	data, err := r.execute(w, "changes", view)
	return File{Path: ChangesPath, Data: data}, err
}

// difference shows the lines of a file that changed, with those around them.
// Each begins with its sign, so that nothing hangs on colour alone.
func difference(f compare.File) template.HTML {
	var b strings.Builder
	b.WriteString(`<pre class="listing" tabindex="0" dir="ltr">`)
	for i, h := range f.Hunks {
		if i > 0 {
			b.WriteString("<span class=\"d-gap\">⋮</span>\n")
		}
		was, now := side(f.Name, h, '+'), side(f.Name, h, '-')
		for _, l := range h.Lines {
			var text string
			if l.Mark != '+' {
				text, was = was[0], was[1:]
			}
			if l.Mark != '-' {
				text, now = now[0], now[1:]
			}
			b.WriteString(`<span class="` + lineClass[l.Mark] + `">` + string(l.Mark) + " " + text + "</span>\n")
		}
	}
	b.WriteString("</pre>")
	return template.HTML(b.String())
}

var lineClass = map[byte]string{'+': "d-new", '-': "d-old", ' ': "d-both"}

// side marks up the lines of one side of a hunk: all but those that only the
// other side has.
func side(name string, h compare.Hunk, other byte) []string {
	var text strings.Builder
	for _, l := range h.Lines {
		if l.Mark != other {
			text.WriteString(l.Text + "\n")
		}
	}
	tokens := []chroma.Token{{Type: chroma.Text, Value: text.String()}}
	if strings.HasSuffix(name, ".toml") {
		tokens = tokensOf(text.String())
	}
	var lines []string
	for _, line := range chroma.SplitTokensIntoLines(tokens) {
		lines = append(lines, marked(line))
	}
	return lines
}

// marked marks up one line, without its end.
func marked(line []chroma.Token) string {
	for i := range line {
		line[i].Value = strings.TrimSuffix(line[i].Value, "\n")
	}
	var b bytes.Buffer
	format := chromahtml.New(chromahtml.WithClasses(true), chromahtml.ClassPrefix("t-"), chromahtml.PreventSurroundingPre(true))
	if err := format.Format(&b, styles.Fallback, chroma.Literator(line...)); err != nil {
		b.Reset()
		for _, t := range line {
			b.WriteString(template.HTMLEscapeString(t.Value))
		}
	}
	return strings.TrimSuffix(b.String(), "\n")
}
