// Package sample makes fleets for tests from the library alone: every system
// with every fact, so that nothing in the library goes without being published.
package sample

import (
	"fmt"
	"strings"
	"testing/fstest"

	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/quantity"
)

// FleetTOML is the fleet.toml of every sample.
const FleetTOML = `name = "Sample Fleet"
address = "https://guide.sample.example"
languages = ["en"]
[call]
helpline = "+44 1632 960111"
emergency = "112"
`

// Body is a plausible [body].
const Body = `[body]
kind = "low-profile"
steering = "right"
length = "7.2 m"
width = "2.3 m"
width_mirrors = "2.7 m"
height = "2.9 m"
wheelbase = "4.0 m"
front_overhang = "0.95 m"
door_side = "nearside"
door_along = "3.4 m"
berths = 4
seats = 4
fuel = "diesel"
gearbox = "manual"
`

// Everything is a fleet of one van that has every system of the library with
// every fact stated: each choice at its option-th option, round and round, so
// that a few fleets together show every option.
func Everything(lib *components.Library, option int) fstest.MapFS {
	var b strings.Builder
	b.WriteString("code = \"EV\"\nname = \"Everything\"\nspec_date = 2026-10-02\n\n" + Body)
	numbers := map[string]int{}
	for _, s := range lib.Systems() {
		if s.ID == components.BodySystem {
			continue
		}
		fitted(&b, lib, s, option, numbers)
	}
	return fstest.MapFS{
		"fleet.toml":   {Data: []byte(FleetTOML)},
		"vans/ev.toml": {Data: []byte(b.String())},
	}
}

func fitted(b *strings.Builder, lib *components.Library, s *components.System, option int, numbers map[string]int) {
	fmt.Fprintf(b, "\n[fitted.%s]\nsystem = %q\n", strings.ReplaceAll(s.ID, "/", "-"), s.ID)
	if s.Label {
		letter := lib.Family(s.Family).Letter
		numbers[letter]++
		n := numbers[letter]
		sides := []string{"nearside", "offside", "inside", "rear", "roof", "under", "front"}
		fmt.Fprintf(b, "label = \"%s%d\"\nat = { side = %q, along = \"%d.%d m\", up = \"0.6 m\" }\n", letter, n, sides[(n+len(s.ID))%len(sides)], n%7, n%10)
	}
	for _, d := range s.Facts {
		fmt.Fprintf(b, "%s = %s\n", d.Name, value(d, option))
	}
}

// value is a value that a fact can have, as TOML writes it.
func value(d fact.Decl, option int) string {
	switch d.Type.Kind {
	case fact.Choice:
		return fmt.Sprintf("%q", d.Of[option%len(d.Of)])
	case fact.Choices:
		return "[" + quoted(d.Of) + "]"
	case fact.Count:
		if d.Low.IsZero() {
			return "1"
		}
		return fmt.Sprint(min(d.Low.Count+option, d.High.Count))
	case fact.YesNo:
		return fmt.Sprint(option%2 == 0)
	case fact.Date:
		return "2028-03-14"
	case fact.Text:
		return fmt.Sprintf("%q", "The "+strings.ReplaceAll(d.Name, "_", " ")+" of the sample.")
	}
	if !d.Low.IsZero() {
		if option%2 == 1 && !d.High.IsZero() {
			return fmt.Sprintf("%q", d.High.Quantity.String())
		}
		return fmt.Sprintf("%q", d.Low.Quantity.String())
	}
	return fmt.Sprintf("%q", "1 "+quantity.Units(d.Type.Dimension)[0].Name())
}

func quoted(options []string) string {
	var all []string
	for _, o := range options {
		all = append(all, fmt.Sprintf("%q", o))
	}
	return strings.Join(all, ", ")
}
