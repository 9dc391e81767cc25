package table

import (
	"slices"
	"testing"
)

// input is a van with two hobs, one of them with two facts of a role.
var input = Input{All: []Fitted{
	{Name: "hob", System: "kitchen/hob", Facts: []Fact{
		{Name: "low", Role: "gas-rate"}, {Name: "burners", Count: 2}, {Name: "high", Role: "gas-rate"}},
		Constants: []Fact{{Name: "settle"}}},
	{Name: "tank", System: "gas/refillable-tank", Facts: []Fact{{Name: "capacity", Role: "gas-store"}, {Name: "tools", Options: []string{"jack", "kit"}}}},
	{Name: "second", System: "kitchen/hob", Facts: []Fact{{Name: "all", Role: "gas-rate"}}},
}}

// What is fitted, and what plays a role, comes in the order of the van.
func TestInput(t *testing.T) {
	var names []string
	for _, f := range input.Of("kitchen/hob") {
		names = append(names, f.Name)
	}
	if !slices.Equal(names, []string{"hob", "second"}) || input.Of("kitchen/oven") != nil {
		t.Errorf("fitted hobs: %v", names)
	}
	var uses []Use
	for _, s := range input.WithRole("gas-rate") {
		uses = append(uses, s.Use())
	}
	if want := []Use{{"hob", "low"}, {"hob", "high"}, {"second", "all"}}; !slices.Equal(uses, want) {
		t.Errorf("gas is used by %v, want %v", uses, want)
	}
	if input.WithRole("mass") != nil || input.WithRole("") == nil {
		t.Error("a role that nothing plays, or the facts without one")
	}
}

func TestFitted(t *testing.T) {
	hob, tank := input.All[0], input.All[1]
	if f, ok := hob.Fact("burners"); !ok || f.Count != 2 {
		t.Errorf("%+v, %v", f, ok)
	}
	if f, ok := hob.Fact("settle"); ok {
		t.Errorf("a constant is taken for a fact: %+v", f)
	}
	if f, ok := hob.Constant("settle"); !ok || f.Name != "settle" {
		t.Errorf("%+v, %v", f, ok)
	}
	if f, ok := hob.Constant("burners"); ok {
		t.Errorf("a fact is taken for a constant: %+v", f)
	}
	tools, _ := tank.Fact("tools")
	if !tools.Has("kit") || tools.Has("rope") || (Fact{}).Has("") {
		t.Errorf("options of %+v", tools)
	}
}
