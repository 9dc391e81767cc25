package render

import (
	"encoding/json"
	"fmt"
	"strings"

	"doorpocket/build/figure"
	"doorpocket/build/guide"
	"doorpocket/components"
)

// SaidSheet is a sheet for staff with all its words, as the page of the staff
// tree and the PDF both show it.
type SaidSheet struct {
	ID, Title, About        string
	Code, Name              string
	Registration, Spec      string // "" where not stated; "Spec of ..."
	Revision                string // the same on page and PDF
	Walk                    []SaidLeg
	Facts, Hirer            bool
	Readings                []SaidReading
	ReadingsTitle, ReadHelp string     // the help is "" where no hirer is there
	Marks                   *SaidMarks // nil where no damage is marked
	Conditions              []string
	ConditionsTitle         string
	Sign                    []string // who signs
	Fill                    []string // what each of them fills in
	Notes, NotesTitle       string   // for staff alone
	DaysTitle               string
	Days                    [][2]string // what falls due, and when
	Found, FoundHelp        string      // over the lines for what was found
	FoundLines              [4]struct{}
	Who                     string // "For staff only", "" on what a hirer signs
}

// SaidLeg is the steps on one side of the van.
type SaidLeg struct {
	Title string // "" for those that are done anywhere
	Steps []SaidStep
}

// SaidStep is a step with the caution that stands before it.
type SaidStep struct {
	Number         int
	Key            string
	Code, Of, Text string
	Say            []guide.Said // the facts of the thing, once on a sheet
	Caution        *SaidCaution
	Await          []string
	Wait           string
}

// SaidCaution is a caution in words.
type SaidCaution struct {
	Signal, Word               string
	Hazard, Consequence, Avoid string
	Signs                      []string
}

// SaidReading is something to write down.
type SaidReading struct {
	Title, Tell, Unit string
	Scale             components.Scale
	Boxes             []string // words under the boxes, "" for none
	Line              bool     // there is a line to write on
}

// SaidMarks is the part on which damage is marked.
type SaidMarks struct {
	Title, Help, KnownTitle, Known string
	Drawing                        string // SVG
	Heads                          []string
	Inside                         string // over the lines for what is inside
}

// SaidSheets gives the sheets of a van in words.
func (r *Renderer) SaidSheets(g *guide.Guide, sheets []*guide.Sheet) ([]SaidSheet, error) {
	v, err := r.paper(g)
	if err != nil {
		return nil, err
	}
	var all []SaidSheet
	for _, s := range sheets {
		said := v.saidSheet(s)
		data, err := json.Marshal(said)
		if err != nil {
			return nil, fmt.Errorf("sheet %s of %s: %w", s.ID, g.Van.Name, err)
		}
		said.Revision = Revision(data)
		all = append(all, said)
	}
	return all, nil
}

func (v *van) saidSheet(s *guide.Sheet) SaidSheet {
	w, g := v.w, v.guide
	said := SaidSheet{
		ID: s.ID, Title: s.Words.Title, About: s.Words.About, Code: g.Van.Code, Name: g.Van.Name,
		Registration: s.Paper.Registration, Spec: w.must("spec_of", "date", g.SpecDate()), Facts: s.Facts, Hirer: s.Hirer,
		Readings: v.saidReadings(s), ReadingsTitle: w.must("sheet_readings"),
		Conditions: s.Conditions, ConditionsTitle: w.must("sheet_conditions", "name", g.Operator.Name),
		Sign: []string{w.must("sheet_staff")}, Fill: []string{w.must("sheet_name"), w.must("sheet_signature"), w.must("sheet_when")},
		Found: w.must("sheet_found"), FoundHelp: w.must("sheet_found_help"),
	}
	for _, leg := range s.Legs {
		said.Walk = append(said.Walk, v.saidLeg(leg))
	}
	if s.Hirer {
		said.Sign = append(said.Sign, w.must("sheet_hirer"))
		said.ReadHelp = w.must("sheet_readings_help")
	}
	if s.Marks {
		said.Marks = v.saidMarks(s.Paper.Marks)
	}
	if b := s.Backstage; b != nil {
		said.Who, said.Notes, said.NotesTitle, said.DaysTitle = w.must("staff_only"), b.Notes, w.must("staff_notes"), w.must("staff_due")
		for _, day := range b.Days {
			said.Days = append(said.Days, [2]string{strings.TrimSpace(day.Of + " " + day.Title), day.On})
		}
	}
	return said
}

func (v *van) saidLeg(leg guide.Leg) SaidLeg {
	said := SaidLeg{}
	switch leg.Where {
	case "":
	case "cab":
		said.Title = v.w.must("sheet_cab")
	default:
		said.Title = v.w.must("side_"+leg.Where, "hand", v.w.must("hand_"+v.hand(leg.Where)))
	}
	for _, s := range leg.Steps {
		fill := v.fill("", s.Page)
		step := SaidStep{Number: s.Number, Key: s.Key(), Text: fill.text(s.Words), Say: s.Say}
		if s.Page != nil {
			step.Code, step.Of = s.Page.Code, s.Page.Title
		}
		if c := s.Caution; c != nil {
			step.Caution = &SaidCaution{Signal: c.Signal, Word: v.w.must("signal_" + c.Signal), Signs: c.Signs,
				Hazard: fill.text(c.Words.Hazard), Consequence: fill.text(c.Words.Consequence), Avoid: fill.text(c.Words.Avoid)}
		}
		step.Wait, step.Await = v.w.Waits(v.guide, s.Step)
		said.Steps = append(said.Steps, step)
	}
	return said
}

// hand is on which hand a side is as one looks forward.
func (v *van) hand(side string) string {
	if v.side(side) == figure.Left {
		return "left"
	}
	return "right"
}

func (v *van) saidReadings(s *guide.Sheet) []SaidReading {
	var all []SaidReading
	empty, full := v.w.must("sheet_empty"), v.w.must("sheet_full")
	for _, r := range s.Readings {
		said := SaidReading{Title: r.Words.Title, Unit: r.Words.Unit, Scale: r.Scale, Tell: v.fill("", r.Page).text(r.Words.Tell)}
		if r.Number > 0 {
			said.Title = fmt.Sprintf("%s %d", said.Title, r.Number)
		}
		switch r.Scale {
		case components.Quarters:
			said.Boxes = []string{empty, "¼", "½", "¾", full}
		case components.Eighths:
			said.Boxes = []string{empty, "", "¼", "", "½", "", "¾", "", full}
		case components.PartFull:
			said.Boxes = []string{full, v.w.must("sheet_part"), empty}
		case components.Tick:
			said.Boxes = []string{""}
		}
		said.Line = r.Scale == components.Number || r.Scale == components.PartFull
		all = append(all, said)
	}
	return all
}

func (v *van) saidMarks(known string) *SaidMarks {
	w, name := v.w, v.guide.Van.Name
	marks := &SaidMarks{Title: w.must("sheet_marks"), Help: w.must("sheet_marks_help"), KnownTitle: w.must("sheet_known"), Known: known,
		Heads: []string{w.must("sheet_mark"), w.must("sheet_mark_where"), w.must("sheet_mark_what"), w.must("sheet_mark_size")}, Inside: w.must("sheet_inside")}
	caption := func(view figure.View) string { return w.must("sheet_" + v.viewName(view)) }
	marks.Drawing = figure.AllRound(v.body(), caption, w.must("sheet_views", "name", name))
	return marks
}
