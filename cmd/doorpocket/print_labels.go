package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"doorpocket/build/label"
	"doorpocket/build/paper"
	"doorpocket/build/sheets"
	"doorpocket/build/spec"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
	"doorpocket/layouts"
)

// printLabels makes sheets of labels.
type printLabels struct {
	Vans     []string `arg:"" optional:"" offers:"@vans"`
	Fleet    string   `name:"fleet" offers:"@folders"`
	Out      string   `name:"out" offers:"@files"`
	Grid     string   `name:"grid" offers:"@grids"`
	Size     string   `name:"size"`
	Start    int      `name:"start" default:"1"`
	Family   []string `name:"family" offers:"@families"`
	Cut      string   `name:"cut" default:"none" offers:"none|marks|outline"`
	Distance string   `name:"distance"`
	New      bool     `name:"new"`
	On       string   `name:"on"`
}

// usualGrid is the grid where none is named.
const usualGrid = "a4-3x7-64x36"

// Run is called by the command line.
func (c *printLabels) Run(out *speaker) error {
	if err := pdfName(c.Out); err != nil {
		return err
	}
	grid, err := c.grid(out)
	if err != nil {
		return err
	}
	if c.Start < 1 || c.Start > grid.PerPage() {
		return errUsage{fmt.Errorf("--start %d: a sheet of %s has the labels 1 to %d", c.Start, grid.Name, grid.PerPage())}
	}
	if !slices.Contains(sheets.Cuts, c.Cut) {
		return errUsage{fmt.Errorf("--cut is %s, not %q", strings.Join(sheets.Cuts, ", "), c.Cut)}
	}
	p, vans, err := c.read(out)
	if err != nil {
		return err
	}
	if err := p.families(c.Family); err != nil {
		return err
	}
	if vans, err = choose(c.Vans, vans, func(v labelled) (string, string) { return v.code, v.name }); err != nil {
		return err
	}
	var stickers []sheets.Sticker
	wanted := c.wanted(p.fleet.Register)
	for _, v := range vans {
		stickers = append(stickers, slices.DeleteFunc(v.stickers, func(s sheets.Sticker) bool { return !wanted(s) })...)
	}
	memo, err := c.memo(p, stickers)
	if err != nil {
		return err
	}
	if len(stickers) == 0 {
		return c.nothing(out)
	}
	if err := c.print(out, p, vans, stickers, grid); err != nil {
		return err
	}
	return memo.write(out, stickers)
}

// labelled is what labels need to know of a van: of a large fleet no more is
// kept.
type labelled struct {
	code, name string
	day        manifest.Date // of its spec
	stickers   []sheets.Sticker
}

// read reads the fleet, and gives its vans by code.
func (c *printLabels) read(out *speaker) (printing, []labelled, error) {
	var vans []labelled
	p, err := printingOf(out, c.Fleet, "", func(s source) (*spec.Fleet, problem.List) {
		return s.each(func(op *spec.Operator, r spec.Read) {
			vans = append(vans, labelled{
				code: r.Van.Code, name: r.Van.Name, day: r.Van.SpecDate,
				stickers: slices.Collect(sheets.Stickers(op, []*spec.Van{r.Van}, nil)),
			})
		})
	})
	slices.SortFunc(vans, func(a, b labelled) int { return strings.Compare(a.code, b.code) })
	return p, vans, err
}

// wanted chooses among the labels by what was asked for.
func (c *printLabels) wanted(register *label.Register) func(sheets.Sticker) bool {
	return func(s sheets.Sticker) bool {
		e := register.Find(s.Ref())
		printed := e != nil && !e.Printed.IsZero()
		return !(c.New && printed) && (len(c.Family) == 0 || slices.Contains(c.Family, s.Family))
	}
}

// nothing says that there is no label to print, which is fine where only new
// ones were asked for.
func (c *printLabels) nothing(out *speaker) error {
	if c.New {
		out.say("Every label has been printed: nothing was written.")
		return nil
	}
	return fmt.Errorf("there is no label to print: nothing was written")
}

func (c *printLabels) print(out *speaker, p printing, vans []labelled, stickers []sheets.Sticker, grid sheets.Grid) error {
	call, err := p.words.Say("label_call", "number", strings.ReplaceAll(p.fleet.Call.Helpline, " ", "\u00a0"))
	if err != nil {
		return err
	}
	title, err := p.words.Say("labels_of", "name", p.fleet.Name)
	if err != nil {
		return err
	}
	job := sheets.Job{
		Stock: p.stock, About: paper.About{Title: title, Lang: p.lang, Date: latest(vans)},
		Grid: grid, Start: c.Start, Cut: sheets.Cut(c.Cut), Call: call,
	}
	var files lot
	defer files.drop()
	made, err := job.Print(slices.Values(stickers), func(file int) (io.WriteCloser, error) {
		return files.create(numbered(c.Out, file))
	})
	if err != nil {
		return err
	}
	if err := files.keep(); err != nil {
		return err
	}
	if !made.Fine() {
		out.warn("Warning: the modules of %s are %.2f mm; below 0.4 mm many printers and phones fail. Take larger labels.", made.ModuleOf, made.Module)
	}
	out.say("%s on %s of %s", count(made.Labels, "label"), count(made.Pages, "page"), grid.Name)
	out.say("Modules %.2f mm, symbols %.1f mm: read from %.0f mm", made.Module, made.Symbol, math.Floor(made.Symbol*10))
	for n := range made.Files {
		out.say("%s", numbered(c.Out, n+1))
	}
	return nil
}

// latest is the day of the newest spec, so that a sheet printed twice is the
// same.
func latest(vans []labelled) time.Time {
	var last time.Time
	for _, v := range vans {
		day := time.Date(v.day.Year, time.Month(v.day.Month), v.day.Day, 0, 0, 0, 0, time.UTC)
		if day.After(last) {
			last = day
		}
	}
	return last
}

// grid is the sheet asked for, with the distance asked for.
func (c *printLabels) grid(out *speaker) (sheets.Grid, error) {
	if c.Grid != "" && c.Size != "" {
		return sheets.Grid{}, errUsage{fmt.Errorf("--grid and --size exclude each other: a size is one label a page")}
	}
	grid, err := gridNamed(out, c.Grid)
	if c.Size != "" {
		grid, err = single(c.Size)
	}
	if err != nil || c.Distance == "" {
		return grid, err
	}
	q, err := quantity.Parse(c.Distance, quantity.Length)
	if err != nil {
		return grid, errUsage{fmt.Errorf("--distance: %w", err)}
	}
	metres, err := quantity.As[quantity.Metres](q)
	if err != nil || metres < 0.05 || metres > 10 {
		return grid, errUsage{fmt.Errorf("--distance %s: from 5 cm to 10 m", c.Distance)}
	}
	grid.Distance = float64(metres) * 1000
	return grid, nil
}

var sizePattern = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) ?x ?([0-9]+(?:\.[0-9]+)?)(?: ?mm)?$`)

// single is a label of a size such as 60x40.
func single(size string) (sheets.Grid, error) {
	m := sizePattern.FindStringSubmatch(size)
	if m == nil {
		return sheets.Grid{}, errUsage{fmt.Errorf("--size %q is no size: write width x height in millimetres, for example 60x40", size)}
	}
	width, errW := strconv.ParseFloat(m[1], 64)
	height, errH := strconv.ParseFloat(m[2], 64)
	if errW != nil || errH != nil || min(width, height) < 12 || max(width, height) > 1000 {
		return sheets.Grid{}, errUsage{fmt.Errorf("--size %s: each side must be from 12 to 1000 mm", size)}
	}
	return sheets.Single(width, height), nil
}

// gridNamed is a grid that comes with the program, or one in a file.
func gridNamed(out *speaker, name string) (sheets.Grid, error) {
	if name == "" {
		name = usualGrid
	}
	if strings.HasSuffix(name, ".toml") {
		data, err := os.ReadFile(name)
		if err != nil {
			return sheets.Grid{}, errUsage{fmt.Errorf("--grid: %w", err)}
		}
		g, found := sheets.ParseGrid(filepath.ToSlash(name), data)
		return g, told(out, found)
	}
	all, err := sheets.Grids(layouts.Files())
	if err != nil {
		return sheets.Grid{}, err
	}
	var names []string
	for _, g := range all {
		if g.Name == name {
			return g, nil
		}
		names = append(names, g.Name)
	}
	return sheets.Grid{}, errUsage{fmt.Errorf("there is no grid %q: %s, or a file of your own that ends in .toml", name, hint(name, names))}
}
