package gas

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// storeRole marks the fact that says how much one full cylinder or tank holds.
const storeRole = "gas-store"

// store is the gas of one fitted system with everything full.
type store struct {
	one quantity.Kilograms // one cylinder or tank
	all quantity.Kilograms // all that it has
}

// storeOf reads the gas store that a fitted system is. Cylinders are filled by
// mass and counted in the fact cylinders, tanks by volume and counted in tanks.
func storeOf(f table.Fitted) (store, error) {
	stated := f.WithRole(storeRole)
	if len(stated) != 1 {
		return store{}, fmt.Errorf("%s states %d facts of role %s, not one", f.Name, len(stated), storeRole)
	}
	one, counted, err := oneFull(f, stated[0].Fact)
	if err != nil {
		return store{}, fmt.Errorf("%s: %w", f.Name, err)
	}
	n, err := count(f, counted)
	if err != nil {
		return store{}, fmt.Errorf("%s: %w", f.Name, err)
	}
	all, err := calc.Positive("the mass of gas", one*quantity.Kilograms(n))
	return store{one: one, all: all}, err
}

// oneFull gives the gas in one full cylinder or tank and the name of the fact
// that says how many there are.
func oneFull(f table.Fitted, holds table.Fact) (quantity.Kilograms, string, error) {
	if holds.Quantity.Dimension() == quantity.Mass {
		net, err := calc.Take[quantity.Kilograms](holds)
		return net, "cylinders", err
	}
	capacity, err := calc.Take[quantity.CubicMetres](holds)
	if err != nil {
		return 0, "", err
	}
	gas, ok := f.Fact("gas")
	if !ok {
		return 0, "", fmt.Errorf("gas is not stated, so nobody knows what a litre weighs")
	}
	mass, err := TankMass(capacity, gas.Option)
	return mass, "tanks", err
}

func count(f table.Fitted, name string) (int, error) {
	stated, ok := f.Fact(name)
	switch {
	case !ok:
		return 0, fmt.Errorf("%s is not stated", name)
	case stated.Count < 1:
		return 0, fmt.Errorf("%s is %d, which must be 1 or more", name, stated.Count)
	}
	return stated.Count, nil
}

// aboard adds up all the gas of the van. Where one store cannot be reckoned
// with, the sum is unknown; the lacks say why.
func aboard(in table.Input, self store) (quantity.Kilograms, []table.Lack) {
	sum, lacks := self.all, []table.Lack(nil)
	for _, f := range in.All {
		stated := f.WithRole(storeRole)
		if f.Name == in.Self.Name || len(stated) == 0 {
			continue
		}
		other, err := storeOf(f)
		if err != nil {
			reason := fmt.Sprintf("all the gas on board is unknown: %v", err)
			lacks = append(lacks, table.Lack{Use: stated[0].Use(), Reason: reason})
			continue
		}
		sum += other.all
	}
	if len(lacks) > 0 {
		return 0, lacks
	}
	return sum, nil
}
