package sample_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/condition"
	"doorpocket/components/fact"
	"doorpocket/components/problem"
)

// counts is how many rows each table of each page has.
func counts(g *guide.Guide) map[string]int {
	rows := map[string]int{}
	for _, p := range g.Pages {
		for id, t := range p.Tables {
			rows[p.Fitted.Name+" "+id] = len(t.Rows)
		}
	}
	return rows
}

// zero finds a number in a table that is nothing, save on the scales of
// temperature, whose zero is a temperature like any other.
func zero(g *guide.Guide) string {
	for _, p := range g.Pages {
		for id, t := range p.Tables {
			for _, row := range t.Rows {
				for i, c := range row {
					if c.Number != "" && !strings.ContainsAny(c.Number, "123456789") && t.Units[i] != "°C" {
						return fmt.Sprintf("%s of %s, %s: %q", id, p.Fitted.Name, t.Heads[i], c.Text)
					}
				}
			}
		}
	}
	return ""
}

// none are facts without which a van has not the thing or no such limit, so that
// nothing is lost.
var none = []string{
	"gas/cylinder-locker:tare",           // the cylinders have not all the same
	"gas/outside-gas-point:gas_barbecue", // no appliance goes with the van
	"heating/diesel-heater:boiler",       // it warms air only
	"heating/radiator-heating:boiler",
	"water/fresh-tank:travel_volume", // no limit on the road
	"vehicle/body:width_mirrors",     // not measured: the list of sizes is that much shorter
	"vehicle/body:front_overhang",
	"vehicle/fuel:fuel_100_km",       // not known: no range is promised
	"vehicle/speed-limits:own_limit", // the operator sets none
}

// needless reports whether a van may well be without a fact: it has a default,
// makes no sense here, is one setting of several, a thing by itself, or one of
// none.
func needless(lib *components.Library, v *spec.Van, f *spec.Fitted, d fact.Decl) bool {
	when, err := condition.Parse(d.When)
	if err == nil && !v.Holds(f, when) || !d.Default.IsZero() || lib.Roles[d.Role].Things || slices.Contains(none, f.System.ID+":"+d.Name) {
		return true
	}
	return d.Role != "" && slices.ContainsFunc(f.System.Facts, func(other fact.Decl) bool {
		return other.Role == d.Role && other.Name != d.Name && !f.Values[other.Name].IsZero()
	})
}

// A van that has everything, without one of its facts at a time: no table shows
// nothing as a number, and whoever loses a row is told, by the spec where the
// fact is required and else by the table.
func TestLostRowsAreTold(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	for option := range 2 { // the second has the high end of each range
		fleet, _ := spec.Load(sample.Everything(lib, option), "", lib)
		v := fleet.Vans[0]
		kit := guide.NewKit(&fleet.Operator, "en")
		g, before := kit.Tables(v)
		whole := counts(g)
		for _, f := range v.Fitted {
			for _, d := range f.System.Facts {
				value, ok := f.Values[d.Name]
				if !ok || d.Type.Kind == fact.Text || d.Type.Kind == fact.Date || option == 0 && d.When == "" {
					continue // of the other options only what makes sense under a condition is new
				}
				delete(f.Values, d.Name)
				g, found := kit.Tables(v)
				f.Values[d.Name] = value
				if where := zero(g); where != "" {
					t.Errorf("option %d, without %s of %s: a zero in %s", option, d.Name, f.Name, where)
				}
				lost := lostRows(whole, counts(g))
				if lost != "" && !d.Required && !needless(lib, v, f, d) && !more(before, found) {
					t.Errorf("option %d, without %s of %s (%s) nobody is told that %s", option, d.Name, f.Name, d.Role, lost)
				}
			}
		}
	}
}

// more reports whether a problem has come up.
func more(before, now problem.List) bool {
	return slices.ContainsFunc(now, func(p problem.Problem) bool {
		return !slices.ContainsFunc(before, func(q problem.Problem) bool { return p.String() == q.String() && p.Detail == q.Detail })
	})
}

// lostRows names the first table that has fewer rows than before, "" for none.
func lostRows(before, now map[string]int) string {
	for _, id := range slices.Sorted(maps.Keys(before)) {
		if now[id] < before[id] {
			return fmt.Sprintf("%s has %d of %d rows", id, now[id], before[id])
		}
	}
	return ""
}
