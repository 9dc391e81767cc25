package electrics_test

import (
	"slices"
	"testing"

	"doorpocket/components"
	"doorpocket/components/electrics"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

func library(t *testing.T) *components.Library {
	t.Helper()
	lib, _ := components.Load(components.Embedded()) // what is wrong elsewhere is for the tests of the library to say
	return lib
}

// Everything on 12 volts in the library has its typical day: a new system
// without one would leave every van without its typical day.
func TestEveryConsumerHasItsTypicalDay(t *testing.T) {
	for _, s := range library(t).Systems() {
		for _, d := range s.Facts {
			if d.Role != "dc-power" {
				continue
			}
			in := table.Input{All: []table.Fitted{battery(t, "agm", "2000 Ah"), consumerOf(t, "it", s.ID, d.Name, "24 W")}}
			result, err := electrics.Days12VTable(in)
			if err != nil || len(result.Lacks) > 0 {
				t.Errorf("%s, %s: %v, %v", s.ID, d.Name, result.Lacks, err)
			}
		}
	}
}

// Every kind of battery that a van can state is known, and what the page says of
// it is what the tables count.
func TestEveryChemistryIsKnown(t *testing.T) {
	s := library(t).System("electrics/leisure-battery")
	for _, kind := range s.Fact("chemistry").Of {
		known, err := electrics.ChemistryNamed(kind)
		if err != nil {
			t.Error(err)
		}
		if _, err := electrics.RestStates(kind); err != nil {
			t.Error(err)
		}
		name := "usable_lead"
		if kind == "lithium" {
			name = "usable_lithium"
		}
		if said, err := quantity.As[quantity.Fraction](s.Constants[name].Value.Quantity); err != nil || said != known.Usable {
			t.Errorf("the page says %v, %v, and the tables count %g for %s", s.Constants[name].Value.Quantity, err, float64(known.Usable), kind)
		}
	}
}

// Every supply that a van can state has its table.
func TestEverySupplyHasItsTable(t *testing.T) {
	kettle := fitted(t, "sockets", "electrics/mains-sockets", "kettle", "appliance", "1 kW")
	d := library(t).System("electrics/hook-up-inlet").Fact("supply")
	if d.Role != "mains-supply" {
		t.Errorf("supply has the role %q", d.Role)
	}
	for _, option := range d.Of {
		in := table.Input{All: []table.Fitted{pitch(option), kettle}}
		tables := 0
		for _, work := range []table.Func{electrics.HookUpTogetherTable, electrics.HookUpTogether120VTable} {
			result, err := work(in)
			if err != nil {
				t.Fatal(err)
			}
			if len(result.Rows) > 0 {
				tables++
			}
		}
		if tables != 1 {
			t.Errorf("%s has %d tables", option, tables)
		}
	}
}

// The circuits whose fuse another system states too are declared.
func TestFuseCircuitsAreDeclared(t *testing.T) {
	s := library(t).System("electrics/fuses-12v")
	var circuits []string
	for _, d := range s.Facts {
		if d.Role == "fuse" {
			circuits = append(circuits, d.Name)
		}
	}
	for _, name := range []string{"water_pump", "toilet"} {
		if !slices.Contains(circuits, name) {
			t.Errorf("no circuit %s", name)
		}
	}
}
