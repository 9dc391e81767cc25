package main

import (
	"encoding/csv"
	"fmt"
	"text/tabwriter"
	"time"

	listing "doorpocket/build/due"
	"doorpocket/build/roster"
	"doorpocket/build/spec"
	"doorpocket/components/manifest"
)

// due lists what falls due.
type due struct {
	Folder string `arg:"" optional:"" offers:"@folders"`
	On     string `name:"on"`
	As     string `name:"as" default:"text" offers:"text|csv|calendar"`
}

var dueForms = []string{"text", "csv", "calendar"}

// Run is called by the command line.
func (c *due) Run(out *speaker) error {
	if err := oneForm(c.As, dueForms); err != nil {
		return err
	}
	day, err := dayOf(c.On)
	if err != nil {
		return err
	}
	fleet, err := sound(out, c.Folder)
	if err != nil {
		return err
	}
	switch c.As {
	case "calendar":
		stated, _ := listing.List(fleet)
		_, err = out.out.Write(listing.Calendar(&fleet.Operator, stated))
		return err
	case "csv":
		return c.csv(out, fleet, day)
	}
	return c.text(out, fleet, day)
}

// states are the words of the states, in their order.
var states = []string{"", "soon", "overdue"}

func (c *due) rows(fleet *spec.Fleet, day manifest.Date) [][]string {
	stated, missing := listing.List(fleet)
	var rows [][]string
	row := func(i listing.Item, date, state string) {
		rows = append(rows, []string{date, state, i.Code, i.Name, fleet.Library.Duty(i.Duty).Words[fleet.Languages[0]].Title, i.Fitted})
	}
	for _, i := range stated {
		row(i, i.Day.String(), states[i.On(day, fleet.Due.Soon)])
	}
	for _, i := range missing {
		row(i, "", "not stated")
	}
	return rows
}

func (c *due) csv(out *speaker, fleet *spec.Fleet, day manifest.Date) error {
	w := csv.NewWriter(out.out)
	if err := w.Write([]string{"day", "state", "code", "van", "what", "fitted"}); err != nil {
		return err
	}
	return w.WriteAll(roster.HarmlessAll(c.rows(fleet, day)))
}

func (c *due) text(out *speaker, fleet *spec.Fleet, day manifest.Date) error {
	w := tabwriter.NewWriter(out.out, 0, 0, 2, ' ', 0)
	for _, r := range c.rows(fleet, day) {
		if r[0] == "" {
			r[0] = "          "
		}
		_, _ = fmt.Fprintf(w, "%s\t%s\t%s %s\t%s\n", r[0], r[1], r[2], r[3], r[4])
	}
	return w.Flush()
}

// dayOf reads the day that a person gives, today where there is none.
func dayOf(text string) (manifest.Date, error) {
	at := time.Now()
	if text != "" {
		var err error
		if at, err = time.Parse(time.DateOnly, text); err != nil {
			return manifest.Date{}, errUsage{fmt.Errorf("--on is a day such as 2027-01-31, not %q", text)}
		}
	}
	return manifest.DateOf(at), nil
}
