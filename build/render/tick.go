package render

import (
	"encoding/json"

	"doorpocket/build/guide"
)

// tickJSON is what the script that adds up ticked rows needs to know.
type tickJSON struct {
	Title  string      `json:"title"`
	Sum    string      `json:"sum"` // with # in its place
	Unit   string      `json:"unit"`
	Limits []limitJSON `json:"limits"`
}

type limitJSON struct {
	Name  string     `json:"name"`
	Steps []stepJSON `json:"steps"`
}

type stepJSON struct {
	Upto  json.Number `json:"upto,omitempty"`
	Text  string      `json:"text"`
	Class string      `json:"tone,omitempty"`
}

func (v *van) tickData(t *guide.Tick) string {
	data := tickJSON{Title: v.w.must("tick_title"), Sum: v.w.must("tick_sum", "sum", "#"), Unit: t.Unit}
	for _, l := range t.Limits {
		limit := limitJSON{Name: l.Name}
		for _, s := range l.Steps {
			limit.Steps = append(limit.Steps, stepJSON{Upto: json.Number(s.Upto), Text: s.Text, Class: tones[s.Tone]})
		}
		data.Limits = append(data.Limits, limit)
	}
	text, err := json.Marshal(data)
	if err != nil {
		panic(err) // words and numbers can always be encoded
	}
	return string(text)
}

func tableRowOf(t *guide.Table, row []guide.Cell) tableRow {
	var r tableRow
	for _, c := range row {
		r.Cells = append(r.Cells, tableCell{Text: c.Text, Class: tones[c.Tone]})
	}
	if t.Tick != nil && len(row) > t.Tick.Column && row[0].Tick != "" && row[t.Tick.Column].Number != "" {
		r.Tick, r.Value = row[0].Tick, row[t.Tick.Column].Number
	}
	return r
}
