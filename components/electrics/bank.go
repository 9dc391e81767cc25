package electrics

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// houseVoltage is what the power of a 12-volt appliance is divided by. A battery
// mostly has a little more, so the current is rather less than reckoned.
//
// Source: nominal voltage.
const houseVoltage quantity.Volts = 12

// usualRating is the discharge for which a capacity is printed where the battery
// says nothing else.
//
// Source: common practice (20-hour rating).
const usualRating quantity.Seconds = 20 * 3600

// bank is the leisure battery of the van.
type bank struct {
	capacity quantity.Coulombs
	rated    quantity.Seconds
	Chemistry
}

// bankOf reads the leisure battery of the van. There is none where found is
// false.
func bankOf(in table.Input) (b bank, found bool, err error) {
	stated := in.WithRole("battery-capacity")
	switch len(stated) {
	case 0:
		return bank{}, false, nil
	case 1:
		b, err = readBank(stated[0])
		return b, err == nil, err
	}
	return bank{}, false, fmt.Errorf("the van states %d leisure batteries, and nobody knows which feeds what", len(stated))
}

func readBank(stated table.Stated) (bank, error) {
	chemistry, ok := stated.Fitted.Fact("chemistry")
	if !ok {
		return bank{}, fmt.Errorf("%s: chemistry is not stated", stated.Fitted.Name)
	}
	known, err := ChemistryNamed(chemistry.Option)
	if err != nil {
		return bank{}, err
	}
	b := bank{rated: usualRating, Chemistry: known}
	if b.capacity, err = calc.Take[quantity.Coulombs](stated.Fact); err != nil {
		return bank{}, err
	}
	if rated, ok := stated.Fitted.Fact("rated_hours"); ok {
		if b.rated, err = calc.Take[quantity.Seconds](rated); err != nil {
			return bank{}, err
		}
	}
	if usable, ok := stated.Fitted.Fact("usable"); ok {
		if b.Usable, err = calc.Take[quantity.Fraction](usable); err != nil {
			return bank{}, err
		}
	}
	if b.Usable > 1 {
		return bank{}, calc.Outside("usable is %g, more than the whole charge", float64(b.Usable))
	}
	return b, nil
}

// lasts is how long the usable charge gives a steady current.
func (b bank) lasts(current quantity.Amperes) (quantity.Seconds, error) {
	empty, err := Lasts(b.capacity, b.rated, b.Exponent, current)
	if err != nil {
		return 0, err
	}
	return calc.Positive("the time", empty*quantity.Seconds(b.Usable))
}

// usableCharge is the charge that may be used.
func (b bank) usableCharge() quantity.Coulombs {
	return b.capacity * quantity.Coulombs(b.Usable)
}
