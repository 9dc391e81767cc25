package spec

import (
	"fmt"
	"strings"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// DueRules is how the operator wants to be told of what falls due.
type DueRules struct {
	Soon  int            // a day within so many days is near
	Years map[string]int // lives that differ from the library's, by duty
}

// soonDays is how long before the day somebody should make an appointment.
const soonDays = 30

// due reads [due] of fleet.toml.
func (l *loader) due(r *manifest.Reader) {
	rules := DueRules{Soon: soonDays, Years: map[string]int{}}
	t := r.Table("due")
	if e, ok := t.Raw("soon"); ok {
		d := fact.Decl{Name: "soon", Type: fact.Type{Kind: fact.Quantity, Dimension: quantity.Time}}
		if v := d.Decode(e, &l.problems); !v.IsZero() {
			seconds, err := quantity.As[quantity.Seconds](v.Quantity)
			if err == nil {
				rules.Soon = int(seconds / (24 * 60 * 60))
			}
		}
	}
	years := t.Table("years")
	for _, key := range years.Keys() {
		n, ok := years.Int(key.Name, 1, 40)
		duty := l.fleet.Library.Duty(key.Name)
		if duty == nil || duty.Years == 0 {
			l.unknownLife(years, key.Name)
		} else if ok {
			rules.Years[key.Name] = n
		}
	}
	l.fleet.Due = rules
}

// unknownLife reports a life of something that has none.
func (l *loader) unknownLife(r *manifest.Reader, name string) {
	var valid []string
	for _, d := range l.fleet.Library.Duties {
		if d.Years > 0 {
			valid = append(valid, d.Name)
		}
	}
	detail := "A life in years can be set for: " + strings.Join(valid, ", ") + "."
	if near := problem.Nearest(name, valid); near != "" {
		detail = fmt.Sprintf("Did you mean %q? ", near) + detail
	}
	r.ProblemAt(r.KeySpan(name), "unknown-name", fmt.Sprintf("Nothing has a life under the name %q", name), detail)
}

// Wants reports whether a van should state the day of a duty.
func (v *Van) Wants(d *components.Duty) bool {
	if d.System != "" {
		return v.Aboard(d.System)
	}
	for _, sign := range d.Has {
		if v.shows(sign) {
			return true
		}
	}
	return len(d.Has) == 0
}
