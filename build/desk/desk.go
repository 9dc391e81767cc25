// Package desk writes computed tables for whoever sits at a desk with a
// customer on the phone: as text for a terminal, as CSV and as JSON.
package desk

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"doorpocket/build/guide"
	"doorpocket/build/roster"
)

// Forms are the ways in which tables can be written.
var Forms = []string{"text", "csv", "json"}

// Table is a table and the page that shows it.
type Table struct {
	*guide.Table
	Page *guide.Page
}

// Tables lists the tables of a guide in the order of its pages. A table that
// says the same on a second page is listed once.
func Tables(g *guide.Guide) []Table {
	var all []Table
	for _, p := range g.Pages {
		for _, id := range slices.Sorted(maps.Keys(p.Tables)) {
			t := Table{Table: p.Tables[id], Page: p}
			if !slices.ContainsFunc(all, t.same) {
				all = append(all, t)
			}
		}
	}
	return all
}

// same reports whether another table is this one with the same rows.
func (t Table) same(other Table) bool {
	return t.ID == other.ID && slices.EqualFunc(t.Rows, other.Rows, slices.Equal[[]guide.Cell])
}

// Write writes tables in one of the Forms.
func Write(g *guide.Guide, tables []Table, form string) (string, error) {
	switch form {
	case "csv":
		return asCSV(tables)
	case "json":
		return asJSON(g, tables)
	}
	var b strings.Builder
	for _, t := range tables {
		asText(&b, g, t)
	}
	return b.String(), nil
}

func asText(b *strings.Builder, g *guide.Guide, t Table) {
	heading := fmt.Sprintf("%s, %s: %s", g.Van.Name, t.Page.Title, t.Caption)
	fmt.Fprintf(b, "%s\n%s\n", heading, strings.Repeat("-", utf8.RuneCountInString(heading)))
	w := tabwriter.NewWriter(b, 0, 4, 2, ' ', 0)
	line := func(cells []string) { _, _ = fmt.Fprintln(w, strings.Join(cells, "\t")) }
	line(t.Heads)
	for _, row := range t.Rows {
		var cells []string
		for _, c := range row {
			cells = append(cells, strings.ReplaceAll(c.Text, "\u00a0", " "))
		}
		line(cells)
	}
	_ = w.Flush() // a strings.Builder takes everything
	fill := guide.Filler{Guide: g, Page: t.Page}
	b.WriteString("\n")
	for _, a := range t.Assumptions {
		fmt.Fprintf(b, "- %s\n", fill.Text(a))
	}
	for _, s := range t.Sources {
		fmt.Fprintf(b, "- Source: %s\n", s)
	}
	b.WriteString("\n")
}

// asCSV writes numbers alone, with the unit in the head of their column. Where
// several pages show the table, each with its own rows, the first column names
// the page.
func asCSV(tables []Table) (string, error) {
	var rows [][]string
	for _, t := range tables {
		var page []string
		if len(tables) > 1 {
			page = []string{t.Page.Title}
		}
		heads := slices.Clone(t.Heads)
		for i, unit := range t.Units {
			if unit != "" {
				heads[i] += " (" + unit + ")"
			}
		}
		rows = append(rows, append(slices.Clone(page), heads...))
		for _, row := range t.Rows {
			cells := slices.Clone(page)
			for _, c := range row {
				cells = append(cells, plain(c))
			}
			rows = append(rows, cells)
		}
	}
	return csvOf(rows)
}

func csvOf(rows [][]string) (string, error) {
	var b bytes.Buffer
	if err := csv.NewWriter(&b).WriteAll(roster.HarmlessAll(rows)); err != nil {
		return "", fmt.Errorf("CSV: %w", err)
	}
	return b.String(), nil
}

func plain(c guide.Cell) string {
	if c.Number != "" {
		return c.Number
	}
	return strings.ReplaceAll(c.Text, "\u00a0", " ")
}

// jsonTable is a table as JSON.
type jsonTable struct {
	Van         string       `json:"van"`
	Table       string       `json:"table"`
	Page        string       `json:"page"`
	Caption     string       `json:"caption"`
	Columns     []jsonColumn `json:"columns"`
	Rows        [][]any      `json:"rows"`
	Assumptions []string     `json:"assumptions"`
	Sources     []string     `json:"sources"`
}

type jsonColumn struct {
	Head string `json:"head"`
	Unit string `json:"unit,omitempty"`
}

func asJSON(g *guide.Guide, tables []Table) (string, error) {
	var all []jsonTable
	for _, t := range tables {
		fill := guide.Filler{Guide: g, Page: t.Page}
		j := jsonTable{Van: g.Van.Code, Table: t.ID, Page: t.Page.Title, Caption: t.Caption, Sources: t.Sources}
		for i, head := range t.Heads {
			j.Columns = append(j.Columns, jsonColumn{Head: head, Unit: t.Units[i]})
		}
		for _, row := range t.Rows {
			var cells []any
			for _, c := range row {
				if c.Number != "" {
					cells = append(cells, json.Number(c.Number))
				} else {
					cells = append(cells, plain(c))
				}
			}
			j.Rows = append(j.Rows, cells)
		}
		for _, a := range t.Assumptions {
			j.Assumptions = append(j.Assumptions, fill.Text(a))
		}
		all = append(all, j)
	}
	return jsonOf(all)
}

func jsonOf(value any) (string, error) {
	data, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		return "", fmt.Errorf("JSON: %w", err)
	}
	return string(data) + "\n", nil
}
