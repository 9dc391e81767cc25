package heating

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// bodySystem is the system whose facts are those of the van itself.
const bodySystem = "vehicle/body"

// Inside and outside of the test of grade 3, at which a spec states heat_need.
//
// Source: EN 1646-1, section 9, as two test reports describe it.
const (
	Warm      = freezing + 20
	HardFrost = freezing - 15
)

// grades gives the greatest mean U-value of each grade of insulation. A grade
// is a class of the whole van, not a measured value.
//
// Source: EN 1645-1 and EN 1646-1, from memory.
var grades = map[string]Transmittance{"grade-1": 1.7, "grade-2": 1.7, "grade-3": 1.2}

// airChanges is how often the air of a closed van with its safety vents is
// replaced in an hour.
//
// Source: from memory; houses are reckoned with half of it.
const airChanges AirChanges = 1

// Loss is what is known of the heat that a van loses.
type Loss struct {
	Space       Space
	Coefficient WattsPerKelvin
	Estimated   bool // from its size and its grade, not from a stated need
}

// LossOf reads how much heat a van loses from the facts of its body: from the
// stated need if there is one, and else from the size and the grade of
// insulation. Where neither is stated it gives a lack. A van without a body has
// no loss and no lack.
func LossOf(all []table.Fitted) (Loss, *table.Lack) {
	for _, f := range all {
		if f.System == bodySystem {
			return lossOfBody(f)
		}
	}
	return Loss{}, nil
}

func lossOfBody(f table.Fitted) (Loss, *table.Lack) {
	lack := func(name string, err error) (Loss, *table.Lack) {
		return Loss{}, &table.Lack{Use: table.Use{Fitted: f.Name, Fact: name}, Reason: err.Error()}
	}
	space, err := spaceOf(f)
	if err != nil {
		return lack("length", err)
	}
	if stated, ok := f.Fact("heat_need"); ok {
		need, err := calc.Take[quantity.Watts](stated)
		if err != nil {
			return lack("heat_need", err)
		}
		k, err := LossFromNeed(need, Warm, HardFrost)
		if err != nil {
			return lack("heat_need", err)
		}
		return Loss{Space: space, Coefficient: k}, nil
	}
	grade, ok := f.Fact("insulation")
	if !ok {
		return lack("insulation", fmt.Errorf("neither heat_need nor insulation is stated, so nobody knows how much heat the van loses"))
	}
	u, ok := grades[grade.Option]
	if !ok {
		return lack("insulation", calc.Outside("the insulation is %q, which is no grade", grade.Option))
	}
	k, err := LossCoefficient(space, u, airChanges)
	if err != nil {
		return lack("insulation", err)
	}
	return Loss{Space: space, Coefficient: k, Estimated: true}, nil
}

func spaceOf(f table.Fitted) (Space, error) {
	var sizes [3]quantity.Metres
	for i, name := range []string{"length", "width", "height"} {
		stated, _ := f.Fact(name)
		stated.Name = name
		size, err := calc.Take[quantity.Metres](stated)
		if err != nil {
			return Space{}, err
		}
		sizes[i] = size
	}
	return Box(sizes[0], sizes[1], sizes[2])
}
