package gas

import (
	"doorpocket/components/heating"
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// netHeat is the heat in J/kg that burning the gas gives where the water of the
// exhaust leaves as steam, as it does from the appliances of a van: the net or
// lower calorific value. A mixture counts as butane, the leaner by mass.
//
// Source: ISO 6976:2016, molar values at 25 °C divided by the molar masses:
// propane 2043.11 kJ/mol; n-butane as in the package heating.
var netHeat = map[string]float64{
	"propane": 2_043_110 / 0.04409562,
	"butane":  heating.ButaneHeat,
	"mixture": heating.ButaneHeat,
}

// grossHeat is the same with the water of the exhaust condensed: more than
// this no appliance can give out.
//
// Source: ISO 6976:2016: n-butane 2877.40 kJ/mol; propane as in the package
// heating.
var grossHeat = map[string]float64{
	"propane": heating.PropaneGrossHeat,
	"butane":  2_877_400 / 0.0581222,
	"mixture": heating.PropaneGrossHeat,
}

// HeatMass is the gas that must burn for an amount of heat.
//
//	m = Q / (η · H)
//
// with the heat Q in J that reaches the water or the room, the part η of the
// net heat of the gas that does so, above 0 and at most 1, the net heat H in
// J/kg and the mass m in kg. The gas is one of propane, butane and mixture;
// another is refused.
//
// Accuracy: that of η; H is good to 0.1 % for a pure gas.
//
// Source: definition of the calorific value; netHeat.
func HeatMass(heat quantity.Joules, efficiency quantity.Fraction, gas string) (quantity.Kilograms, error) {
	if _, err := calc.Positive("the heat", heat); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the efficiency", efficiency); err != nil {
		return 0, err
	}
	if efficiency > 1 {
		return 0, calc.Outside("the efficiency is %g, which must not be above 1", float64(efficiency))
	}
	net, known := netHeat[gas]
	if !known {
		return 0, calc.Outside("nobody knows the heat of %q", gas)
	}
	return calc.Positive("the mass of gas", quantity.Kilograms(float64(heat)/(float64(efficiency)*net)))
}

// RunMass is the gas that an appliance uses for an amount of heat, by what its
// plate says of its highest setting.
//
//	m = Q · r / P
//
// with the heat Q in J, the rate r in kg/s, the heat output P in W and the mass
// m in kg. A plate that promises more heat than its gas holds, gross, is
// refused: one of its two figures is wrong.
//
// Source: definition of power; grossHeat.
func RunMass(heat quantity.Joules, rate quantity.KilogramsPerSecond, output quantity.Watts, gas string) (quantity.Kilograms, error) {
	if _, err := calc.Positive("the heat", heat); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the rate of use", rate); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the heat output", output); err != nil {
		return 0, err
	}
	gross, known := grossHeat[gas]
	if !known {
		return 0, calc.Outside("nobody knows the heat of %q", gas)
	}
	if most := float64(rate) * gross; float64(output) > most {
		return 0, calc.Outside("a heat output of %.4g W is more than the %.4g W in the gas", float64(output), most)
	}
	return calc.Positive("the mass of gas", quantity.Kilograms(float64(heat)*float64(rate)/float64(output)))
}
