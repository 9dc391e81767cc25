package render

import (
	"encoding/json"
	"slices"
	"strings"

	"doorpocket/build/guide"
)

// tickJSON is what the script that adds up ticked rows needs to know.
type tickJSON struct {
	Title  string      `json:"title"`
	Sum    string      `json:"sum"` // with # in its place
	Unit   string      `json:"unit"`
	Limits []limitJSON `json:"limits"`
}

// limitJSON is one limit: Sum says which of a row's numbers are added up for it.
type limitJSON struct {
	Name  string      `json:"name"`
	Sum   int         `json:"sum,omitempty"`
	Left  json.Number `json:"left,omitempty"`
	Steps []stepJSON  `json:"steps"`
}

// stepJSON is a step; # in its text stands for what is left, or too much.
type stepJSON struct {
	Upto  json.Number `json:"upto,omitempty"`
	Text  string      `json:"text"`
	Class string      `json:"tone,omitempty"`
}

func (v *van) tickData(t *guide.Tick) string {
	data := tickJSON{Title: v.w.must("tick_title"), Sum: v.w.must("tick_sum", "sum", "#"), Unit: t.Unit}
	columns := summed(t)
	for _, l := range t.Limits {
		limit := limitJSON{Name: l.Name, Sum: slices.Index(columns, l.Column), Left: json.Number(l.Left)}
		for _, s := range l.Steps {
			limit.Steps = append(limit.Steps, stepJSON{Upto: json.Number(s.Upto), Text: strings.ReplaceAll(s.Text, "{$left}", "#"), Class: tones[s.Tone]})
		}
		data.Limits = append(data.Limits, limit)
	}
	text, err := json.Marshal(data)
	if err != nil {
		panic(err) // words and numbers can always be encoded
	}
	return string(text)
}

// summed lists the columns that are added up, that of the whole first.
func summed(t *guide.Tick) []int {
	columns := []int{t.Column}
	for _, l := range t.Limits {
		if !slices.Contains(columns, l.Column) {
			columns = append(columns, l.Column)
		}
	}
	return columns
}
