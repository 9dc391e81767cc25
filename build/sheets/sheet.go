package sheets

import (
	"errors"
	"fmt"
	"io"
	"iter"
	"math"

	"doorpocket/build/label"
	"doorpocket/build/paper"
)

// Cut is what shows where to cut.
type Cut string

// The ways to show it: nothing, small crosses at the corners, or the outline.
const (
	CutNone    Cut = "none"
	CutMarks   Cut = "marks"
	CutOutline Cut = "outline"
)

// Cuts lists the ways.
var Cuts = []string{string(CutNone), string(CutMarks), string(CutOutline)}

// Job is labels to print.
type Job struct {
	Stock *paper.Stock
	About paper.About
	Grid  Grid
	Start int // the first label of the first sheet that is still there, from 1
	Cut   Cut
	Call  string // whom to call, as printed
	// PagesPerFile is how many pages one file holds at most, so that memory
	// stays flat; 0 for the usual 100.
	PagesPerFile int
}

// Made tells what was printed.
type Made struct {
	Labels, Pages, Files int
	Module               float64 // the smallest, in millimetres
	ModuleOf             string  // the code of its label
	Symbol               float64 // the narrowest symbol without quiet zone, in millimetres
}

// Fine reports whether usual printers can print every module.
func (m Made) Fine() bool { return m.Labels == 0 || m.Module >= leastModule }

const usualPages = 100

// Print draws the stickers. A file is opened for each lot of pages, counted
// from 1, and closed when it is full.
func (j Job) Print(stickers iter.Seq[Sticker], open func(file int) (io.WriteCloser, error)) (Made, error) {
	if j.PagesPerFile == 0 {
		j.PagesPerFile = usualPages
	}
	if j.Start < 1 || j.Start > j.Grid.PerPage() {
		return Made{}, fmt.Errorf("the first label is %d, but a sheet has the labels 1 to %d", j.Start, j.Grid.PerPage())
	}
	p := printing{Job: j, open: open, next: j.Start - 1, made: Made{Module: math.Inf(1), Symbol: math.Inf(1)}}
	for s, symbol := range encoded(stickers) {
		if err := p.sticker(s, symbol); err != nil {
			return p.made, err
		}
	}
	return p.made, p.finish()
}

// printing is a job at work.
type printing struct {
	Job
	open func(int) (io.WriteCloser, error)
	doc  *paper.Doc
	next int // the label of the page
	made Made
}

func (p *printing) sticker(s Sticker, symbol symbolOrError) error {
	if symbol.err != nil {
		return symbol.err
	}
	if err := p.check(s, symbol.Symbol); err != nil {
		return err
	}
	if err := p.page(); err != nil {
		return err
	}
	x, y := p.Grid.At(p.next)
	p.cut(x, y)
	if err := (face{doc: p.doc, grid: p.Grid, call: p.Call}).draw(s, symbol.Symbol, x, y); err != nil {
		return err
	}
	p.next++
	p.made.Labels++
	return p.doc.Err()
}

// check holds the symbol against the distance from which it is to be read: a
// symbol is read from up to ten times its width; common practice.
func (p *printing) check(s Sticker, symbol label.Symbol) error {
	qr, _, _ := p.Grid.parts()
	module := qr.w / float64(symbol.Side())
	width := module * float64(symbol.Size)
	if module < p.made.Module {
		p.made.Module, p.made.ModuleOf = module, s.Code()
	}
	p.made.Symbol = min(p.made.Symbol, width)
	if width*10 < p.Grid.Distance-tolerance {
		return &DistanceError{Label: s.Code(), Width: width, Distance: p.Grid.Distance, Grid: p.Grid}
	}
	return nil
}

// DistanceError says that a symbol is too small. Lengths are in millimetres.
type DistanceError struct {
	Label           string
	Width, Distance float64
	Grid            Grid
}

func (e *DistanceError) Error() string {
	return fmt.Sprintf("label %s: its symbol is %.1f mm wide on a label of %g x %g mm, so it is read from %.0f mm at most; from %.0f mm it must be %.1f mm wide: take larger labels or a shorter distance",
		e.Label, e.Width, rounded(e.Grid.Width), rounded(e.Grid.Height), e.Width*10, e.Distance, e.Distance/10)
}

// rounded is a length to a tenth of a millimetre, for messages.
func rounded(v float64) float64 { return math.Round(v*10) / 10 }

// page makes sure that there is a page with room for a label.
func (p *printing) page() error {
	if p.doc != nil && p.next < p.Grid.PerPage() {
		return nil
	}
	if p.doc != nil && p.doc.Pages() >= p.PagesPerFile {
		if err := p.finish(); err != nil {
			return err
		}
	}
	if p.doc == nil {
		p.doc = p.Stock.New(p.About)
	}
	if p.next >= p.Grid.PerPage() {
		p.next = 0
	}
	p.doc.Page(p.Grid.Page)
	p.made.Pages++
	return nil
}

func (p *printing) finish() error {
	if p.doc == nil {
		return nil
	}
	p.made.Files++
	w, err := p.open(p.made.Files)
	if err != nil {
		return err
	}
	err = errors.Join(p.doc.Write(w), w.Close())
	p.doc = nil
	return err
}

// The look of cut marks, in millimetres.
const (
	cutArm  = 1.5
	cutLine = 0.1
)

func (p *printing) cut(x, y float64) {
	w, h := p.Grid.Width, p.Grid.Height
	pen := paper.Lined(paper.Grey, cutLine)
	switch p.Cut {
	case CutOutline:
		p.doc.Rect(x, y, w, h, pen)
	case CutMarks:
		for _, at := range [][2]float64{{x, y}, {x + w, y}, {x, y + h}, {x + w, y + h}} {
			p.doc.Cross(at[0], at[1], cutArm, pen)
		}
	}
}
