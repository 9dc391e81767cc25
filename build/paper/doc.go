package paper

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/sfnt"
)

// About is what a document says of itself.
type About struct {
	Title string
	Lang  string    // BCP 47
	Date  time.Time // the document's, never that of printing; zero for none
}

// Doc is one document. The first thing that fails is kept and given by Err and
// Write; what is drawn after it is lost.
type Doc struct {
	stock    *Stock
	pdf      *fpdf.Fpdf
	size     Size
	err      error
	buf      sfnt.Buffer
	advances [2]map[rune]float64
	known    map[rune]bool // characters that the font has
}

// k is points a millimetre.
const k = 72 / 25.4

// New begins a document without pages.
func (s *Stock) New(about About) *Doc {
	d := &Doc{stock: s, advances: [2]map[rune]float64{{}, {}}, known: map[rune]bool{}}
	d.pdf = fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: A4.Width, Ht: A4.Height}})
	d.pdf.SetCatalogSort(true)
	d.pdf.SetAutoPageBreak(false, 0)
	d.pdf.SetMargins(0, 0, 0)
	if about.Date.IsZero() {
		about.Date = time.Unix(0, 0)
	}
	d.pdf.SetCreationDate(about.Date.UTC())
	d.pdf.SetModificationDate(about.Date.UTC())
	d.pdf.SetTitle(about.Title, true)
	d.pdf.SetProducer("doorpocket", true)
	if plainTag.MatchString(about.Lang) {
		d.pdf.SetLang(about.Lang)
	}
	for i, f := range s.faces {
		d.pdf.AddUTF8FontFromBytes("text", styles[i], bytes.Clone(f.data))
	}
	d.fail(d.pdf.Error())
	return d
}

var (
	styles   = [2]string{"", "B"}
	plainTag = regexp.MustCompile(`^[A-Za-z0-9-]+$`)
)

// Page begins a new page.
func (d *Doc) Page(size Size) {
	d.size = size
	orientation := "P"
	if size.Width > size.Height {
		orientation = "L"
	}
	short, long := min(size.Width, size.Height), max(size.Width, size.Height)
	d.pdf.AddPageFormat(orientation, fpdf.SizeType{Wd: short, Ht: long})
}

// Pages is how many pages there are so far.
func (d *Doc) Pages() int { return d.pdf.PageCount() }

// Size is the size of the page at work.
func (d *Doc) Size() Size { return d.size }

// Err is the first thing that failed.
func (d *Doc) Err() error {
	if d.err != nil {
		return d.err
	}
	return d.pdf.Error()
}

func (d *Doc) fail(err error) {
	if d.err == nil {
		d.err = err
	}
}

// Bookmark puts the page at work into the viewer's outline; level 0 is the top.
func (d *Doc) Bookmark(title string, level int, y float64) { d.pdf.Bookmark(title, level, y) }

// Write ends the document and writes it.
func (d *Doc) Write(w io.Writer) error {
	if err := d.Err(); err != nil {
		return err
	}
	var out bytes.Buffer
	if err := d.pdf.Output(&out); err != nil {
		return err
	}
	finished, err := finish(out.Bytes())
	if err != nil {
		return err
	}
	_, err = w.Write(finished)
	return err
}

var (
	catalogEnd = []byte(">>\nendobj\nxref\n")
	trailer    = regexp.MustCompile(`trailer\n<<\n((?s:.*?))>>\nstartxref\n([0-9]+)\n%%EOF\n?$`)
)

// finish adds what the PDF writer has no call for: the preference that viewers
// do not scale when printing, and the identifier, made from the content. The
// catalogue is the last object, so that only the place of the table of objects
// moves.
func finish(pdf []byte) ([]byte, error) {
	end := bytes.LastIndex(pdf, catalogEnd)
	m := trailer.FindSubmatchIndex(pdf)
	if end < 0 || m == nil {
		return nil, errors.New("the PDF does not end as expected")
	}
	xref, err := strconv.Atoi(string(pdf[m[4]:m[5]]))
	if err != nil || xref != end+len(">>\nendobj\n") {
		return nil, errors.New("the PDF's table of objects is not where it should be")
	}
	const preference = "/ViewerPreferences <</PrintScaling /None>>\n"
	sum := sha256.Sum256(pdf)
	var out bytes.Buffer
	out.Write(pdf[:end])
	out.WriteString(preference)
	out.Write(pdf[end:m[3]])
	fmt.Fprintf(&out, "/ID [<%x> <%x>]\n>>\nstartxref\n%d\n%%%%EOF\n", sum[:16], sum[:16], xref+len(preference))
	return out.Bytes(), nil
}
