package clipboard_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"doorpocket/build/clipboard"
	"doorpocket/build/guide"
	"doorpocket/build/paper"
	"doorpocket/build/render"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/content"
	"doorpocket/layouts"
)

// press reads font and words once.
var press = sync.OnceValues(func() (clipboard.Press, error) {
	stock, err := paper.Open(layouts.Files())
	if err != nil {
		return clipboard.Press{}, err
	}
	r, err := render.New(layouts.Files())
	return clipboard.Press{Stock: stock, Render: r, Page: paper.A4}, err
})

func pressOf(t *testing.T) clipboard.Press {
	t.Helper()
	p, err := press()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

var library = sync.OnceValue(func() *components.Library {
	lib, _ := components.Load(components.Embedded())
	return lib
})

var demo = sync.OnceValue(func() *spec.Fleet {
	fleet, _ := spec.Load(content.Fleet(), "content/", library())
	return fleet
})

// work is a van with its sheets.
type work struct {
	read   spec.Read
	guide  *guide.Guide
	sheets []*guide.Sheet
	printed
}

func sheetsOf(fleet *spec.Fleet, r spec.Read) work {
	kit := guide.NewKit(&fleet.Operator, fleet.Languages[0])
	g, _ := kit.Build(r.Van)
	var added spec.Added
	if r.Staff != nil {
		added = r.Staff.Added
	}
	routines, _ := kit.StaffRoutines(g, fleet.StaffRoutines, added)
	return work{read: r, guide: g, sheets: g.Sheets(routines, r)}
}

// demoVans are the demonstration vans with all their sheets, printed and read
// back once for all tests.
func demoVans(t *testing.T) []work {
	t.Helper()
	once.Do(func() {
		for _, r := range demo().Reads() {
			w := sheetsOf(demo(), r)
			w.printed = printOf(t, pressOf(t), w, w.sheets...)
			vans = append(vans, w)
		}
	})
	if len(vans) == 0 {
		t.Fatal("no vans")
	}
	return vans
}

var (
	once    sync.Once
	vans    []work
	scratch string // for files that several tests read
)

func TestMain(m *testing.M) {
	var err error
	if scratch, err = os.MkdirTemp("", "clipboard"); err != nil {
		panic(err)
	}
	status := m.Run()
	_ = os.RemoveAll(scratch)
	os.Exit(status)
}

// printed is a PDF read back.
type printed struct {
	file  string
	made  []clipboard.Made
	pages []string // words with single spaces
}

func printOf(t *testing.T, p clipboard.Press, w work, sheets ...*guide.Sheet) printed {
	t.Helper()
	var b bytes.Buffer
	made, err := p.Print(w.guide, sheets, &b)
	if err != nil {
		t.Fatalf("%s: %v", w.read.Van.Name, err)
	}
	file, err := os.CreateTemp(scratch, "*.pdf")
	if err != nil {
		t.Fatal(err)
	}
	out := printed{file: file.Name(), made: made}
	if _, err := file.Write(b.Bytes()); err != nil || file.Close() != nil {
		t.Fatal("the PDF could not be written", err)
	}
	for page := range strings.SplitSeq(strings.TrimSuffix(run(t, "pdftotext", "-raw", out.file, "-"), "\f"), "\f") {
		out.pages = append(out.pages, squeezed(page))
	}
	return out
}

func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		t.Fatalf("%s %v: %v", name, args, err)
	}
	return string(out)
}

func squeezed(text string) string { return strings.Join(strings.Fields(text), " ") }

// tight is text without spaces: where a line ends is of no matter.
func tight(text string) string { return strings.Join(strings.Fields(text), "") }

// parts are the pages of each sheet.
func (p printed) parts(t *testing.T) [][]string {
	t.Helper()
	var all [][]string
	rest := p.pages
	for _, m := range p.made {
		if m.Pages < 1 || m.Pages > len(rest) {
			t.Fatalf("%+v, but %d pages are left", m, len(rest))
		}
		all, rest = append(all, rest[:m.Pages]), rest[m.Pages:]
	}
	if len(rest) > 0 {
		t.Errorf("%d pages belong to no sheet", len(rest))
	}
	return all
}

// Every page of every sheet of every demonstration van says whose it is, and
// the PDF is sound.
func TestFootOfEveryPage(t *testing.T) {
	for _, w := range demoVans(t) {
		p := w.printed
		if out, err := exec.Command("qpdf", "--check", p.file).CombinedOutput(); err != nil {
			t.Errorf("qpdf: %v\n%s", err, out)
		}
		registration := w.read.Staff.Paper().Registration
		if registration == "" {
			t.Fatalf("%s states no registration", w.read.Van.Name)
		}
		for i, pages := range p.parts(t) {
			for n, text := range pages {
				for _, want := range []string{
					w.read.Van.Code + " " + w.read.Van.Name + " · " + registration,
					fmt.Sprintf("%s, page %d of %d", w.sheets[i].Words.Title, n+1, len(pages)),
					"Spec of " + w.guide.SpecDate() + " · revision " + p.made[i].Revision,
				} {
					if !strings.Contains(text, want) {
						t.Errorf("%s, %s: page %d does not say %q", w.read.Van.Name, w.sheets[i].ID, n+1, want)
					}
				}
			}
		}
		if most := 14; p.made[0].Pages > most {
			t.Errorf("the handover of %s takes %d pages, more than %d", w.read.Van.Name, p.made[0].Pages, most)
		}
	}
}

// Each step stands once on its sheet, after those before it, with its caution
// before it on the same page; on a handover the facts of each thing are there.
func TestStepsAndCautions(t *testing.T) {
	for _, w := range demoVans(t) {
		p := w.printed
		for i, pages := range p.parts(t) {
			sheet := w.sheets[i]
			said, err := pressOf(t).Render.SaidSheets(w.guide, []*guide.Sheet{sheet})
			if err != nil {
				t.Fatal(err)
			}
			steps := 0
			at, from := 0, 0 // page, and how far it is read
			for _, leg := range said[0].Walk {
				for _, step := range leg.Steps {
					steps++
					// The row reads: number, what to do, waits, what it is about, facts.
					row := tight(strconv.Itoa(step.Number) + step.Text)
					page, after := find(pages, row, at, from)
					if page < 0 {
						t.Errorf("%s, %s: step %d is not where it should be: %q", w.read.Van.Name, sheet.ID, step.Number, step.Text)
						continue
					}
					text := tight(pages[page])
					if c := step.Caution; c != nil {
						begin := 0
						if page == at {
							begin = from
						}
						before := text[begin : after-len(row)]
						if want := tight(c.Hazard + c.Consequence + c.Avoid); !strings.Contains(before, want) {
							t.Errorf("%s, %s: step %d without its caution before it: %q", w.read.Van.Name, sheet.ID, step.Number, c.Hazard)
						}
					}
					for _, fact := range step.Say {
						if !strings.Contains(text[after:], tight(fact.Name+": "+fact.Text)) {
							t.Errorf("%s, %s: step %d lacks %q", w.read.Van.Name, sheet.ID, step.Number, fact.Name)
						}
					}
					at, from = page, after
				}
			}
			if steps != len(sheet.Steps) || steps == 0 {
				t.Errorf("%s, %s: %d steps of %d", w.read.Van.Name, sheet.ID, steps, len(sheet.Steps))
			}
		}
	}
}

// find looks for a text from a place on; it gives the page and where the text
// ends there, without spaces.
func find(pages []string, want string, at, from int) (page, after int) {
	for n := at; n < len(pages); n++ {
		text := tight(pages[n])
		if n > at {
			from = 0
		}
		if i := strings.Index(text[from:], want); i >= 0 {
			return n, from + i + len(want)
		}
	}
	return -1, 0
}

var (
	rectangle = regexp.MustCompile(`(?m)^.*?(-?[0-9.]+) (-?[0-9.]+) (-?[0-9.]+) (-?[0-9.]+) re S Q$`)
	word      = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">(.*?)</word>`)
)

const point = 25.4 / 72 // millimetres

// A box for a pen is at least 5 mm wide and high, and there is one for every
// step.
func TestBoxesFitAPen(t *testing.T) {
	for _, w := range demoVans(t) {
		boxes, steps := 0, 0
		for _, m := range rectangle.FindAllStringSubmatch(run(t, "qpdf", "--qdf", "--object-streams=disable", w.file, "-"), -1) {
			wide, high := number(t, m[3])*point, number(t, m[4])*point
			if wide == high {
				if boxes++; wide < 5 {
					t.Errorf("%s: a box of %.1f mm", w.read.Van.Name, wide)
				}
			}
		}
		for _, s := range w.sheets {
			steps += len(s.Steps)
		}
		if boxes < steps || steps == 0 {
			t.Errorf("%s: %d boxes for %d steps", w.read.Van.Name, boxes, steps)
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// No word stands in the margin that a printer may not reach, on either size of
// paper, and none stands over another.
func TestWordsKeepToThePage(t *testing.T) {
	const margin = 9.0
	look := func(w work, p printed, size paper.Size) {
		for n, page := range strings.Split(run(t, "pdftotext", "-bbox", p.file, "-"), "<page ")[1:] {
			type box struct{ x1, y1, x2, y2 float64 }
			var seen []box
			for _, m := range word.FindAllStringSubmatch(page, -1) {
				b := box{number(t, m[1]) * point, number(t, m[2]) * point, number(t, m[3]) * point, number(t, m[4]) * point}
				if b.x1 < margin || b.x2 > size.Width-margin || b.y1 < margin || b.y2 > size.Height-margin {
					t.Errorf("%s, page %d: %q stands in the margin: %.1f %.1f %.1f %.1f mm", w.read.Van.Name, n+1, m[5], b.x1, b.y1, b.x2, b.y2)
				}
				for _, o := range seen {
					if min(b.x2, o.x2)-max(b.x1, o.x1) > 0.3 && min(b.y2, o.y2)-max(b.y1, o.y1) > 1.6 {
						t.Errorf("%s, page %d: %q stands over another word", w.read.Van.Name, n+1, m[5])
					}
				}
				seen = append(seen, b)
			}
			if len(seen) < 20 {
				t.Errorf("%s, page %d: %d words", w.read.Van.Name, n+1, len(seen))
			}
		}
	}
	for i, w := range demoVans(t) {
		look(w, w.printed, paper.A4)
		if i == 0 {
			press := pressOf(t)
			press.Page = paper.Letter
			look(w, printOf(t, press, w, w.sheets...), paper.Letter)
		}
	}
}

// What is written down and signed: readings that the van has, once for each
// cylinder, drawings of all five views, both signatures on the hirer's sheets.
func TestRecord(t *testing.T) {
	for _, w := range demoVans(t) {
		p := w.printed
		for i, pages := range p.parts(t) {
			sheet, text := w.sheets[i], squeezed(strings.Join(pages, " "))
			if !strings.Contains(text, "Odometer") {
				t.Errorf("%s, %s: no odometer", w.read.Van.Name, sheet.ID)
			}
			if has := w.read.Van.Aboard("vehicle/fuel"); sheet.Hirer && strings.Contains(text, "Fuel empty") != has {
				t.Errorf("%s, %s: a fuel gauge although fuel aboard is %v", w.read.Van.Name, sheet.ID, has)
			}
			if f := w.read.Van.Find("gas/cylinder-locker"); f != nil && sheet.Hirer {
				if n := f.Values["cylinders"].Count; n > 1 && !strings.Contains(text, fmt.Sprintf("Gas cylinder %d", n)) {
					t.Errorf("%s, %s: not every cylinder is weighed", w.read.Van.Name, sheet.ID)
				}
			}
			for _, words := range []string{"Signature", "Staff"} {
				if !strings.Contains(text, words) {
					t.Errorf("%s, %s: no %q", w.read.Van.Name, sheet.ID, words)
				}
			}
			last := pages[len(pages)-1]
			for _, words := range []string{"Hirer", "Marks on the van"} {
				if strings.Contains(last, words) != sheet.Hirer {
					t.Errorf("%s, %s: %q on the last page: %v", w.read.Van.Name, sheet.ID, words, !sheet.Hirer)
				}
			}
			for _, words := range []string{"Front", "Rear", "Offside", "Nearside", "Roof"} {
				if sheet.Hirer && !strings.Contains(last, words) {
					t.Errorf("%s, %s: no view %q on the last page", w.read.Van.Name, sheet.ID, words)
				}
			}
		}
	}
}

// What a hirer signs holds nothing of [staff] but the plates and the known
// marks, whatever an operator writes there; what stays with staff may.
func TestHirersCopyHoldsNoSecret(t *testing.T) {
	for _, w := range demoVans(t) {
		shown := w.read.Staff.Paper()
		checked := 0
		for i, pages := range w.parts(t) {
			sheet, text := w.sheets[i], tight(strings.Join(pages, " "))
			for _, e := range w.read.Staff.Entries {
				if e.Text == "" || !e.Own && (e.Key == "registration" || e.Key == "marks") {
					continue
				}
				checked++
				secret := strings.Contains(text, tight(e.Text))
				if secret && (sheet.Hirer || e.Key != "notes") {
					t.Errorf("%s, %s: %s stands on the sheet: %q", w.read.Van.Name, sheet.ID, e.Key, e.Text)
				}
				if e.Key == "notes" && !e.Own && !sheet.Hirer && !secret {
					t.Errorf("%s, %s: the notes are missing", w.read.Van.Name, sheet.ID)
				}
			}
			if sheet.Hirer != strings.Contains(text, "Hirer") || sheet.Hirer == strings.Contains(text, "Forstaffonly") {
				t.Errorf("%s, %s: for whom it is does not stand on it", w.read.Van.Name, sheet.ID)
			}
			if shown.Marks != "" && sheet.Hirer && !strings.Contains(text, tight(shown.Marks)) {
				t.Errorf("%s, %s: the known marks are missing", w.read.Van.Name, sheet.ID)
			}
		}
		if checked == 0 {
			t.Errorf("%s has no secrets to look for", w.read.Van.Name)
		}
	}
}

// The same sheets give the same bytes and, on page and PDF, one revision; where
// the content differs, so does that.
func TestRevision(t *testing.T) {
	w := demoVans(t)[0]
	var first, second bytes.Buffer
	a, err := pressOf(t).Print(w.guide, w.sheets, &first)
	if err != nil {
		t.Fatal(err)
	}
	b, err := pressOf(t).Print(w.guide, w.sheets, &second)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) || !slices.Equal(a, b) {
		t.Error("two prints differ")
	}
	changed := *w.sheets[0]
	changed.Paper.Marks += "."
	said, err := pressOf(t).Render.SaidSheets(w.guide, []*guide.Sheet{w.sheets[0], &changed})
	if err != nil {
		t.Fatal(err)
	}
	if said[0].Revision != a[0].Revision || said[0].Revision == said[1].Revision {
		t.Errorf("revisions %s, %s and %s", a[0].Revision, said[0].Revision, said[1].Revision)
	}
}
