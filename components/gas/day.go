package gas

import (
	"fmt"
	"strings"

	"doorpocket/components/heating"
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// A typical day's use. Where no source is named: common practice. The words of
// the tables say each of them.
const (
	cookingTime quantity.Seconds = 3600     // one burner, at its full flame
	allBurners  quantity.Seconds = 3600 / 2 // all of them, where the rate of one is not known
	bakingTime  quantity.Seconds = 3600 / 4 // oven and grill each
	wholeDay    quantity.Seconds = 24 * 3600

	boilersADay = 2 // full boilers, one in the morning and one in the evening
)

// dayUse is the gas of one appliance for one purpose on a day: so long at so
// high a rate.
type dayUse struct {
	purpose string
	use     table.Use
	rate    quantity.KilogramsPerSecond
	time    quantity.Seconds
}

func (u dayUse) mass() quantity.Kilograms {
	return quantity.Kilograms(float64(u.rate) * float64(u.time))
}

// uses are the gas of a day for some purposes. They are not whole where
// something could not be reckoned with, so that their sum would be too small.
type uses struct {
	list  []dayUse
	lacks []table.Lack
}

func (u *uses) lack(f, fact string, err error) {
	u.lacks = append(u.lacks, table.Lack{Use: table.Use{Fitted: f, Fact: fact}, Reason: err.Error()})
}

func (u *uses) join(other uses) {
	u.list = append(u.list, other.list...)
	u.lacks = append(u.lacks, other.lacks...)
}

func (u uses) whole() bool { return len(u.lacks) == 0 }

func (u uses) mass() quantity.Kilograms {
	var sum quantity.Kilograms
	for _, one := range u.list {
		sum += one.mass()
	}
	return sum
}

// run adds the first of the facts that is stated, for a time of its own.
func (u *uses) run(f table.Fitted, purpose string, named []string, times ...quantity.Seconds) {
	for i, name := range named {
		stated, ok := f.Fact(name)
		if !ok {
			continue
		}
		rate, err := calc.Take[quantity.KilogramsPerSecond](stated)
		if err != nil {
			u.lack(f.Name, name, err)
			return
		}
		u.list = append(u.list, dayUse{purpose: purpose, use: table.Use{Fitted: f.Name, Fact: name}, rate: rate, time: times[min(i, len(times)-1)]})
		return
	}
}

// cooking is an hour of one burner, the largest whose rate is stated, and a
// quarter of an hour of oven and of grill.
func cooking(in table.Input) uses {
	var u uses
	for _, f := range in.All {
		switch f.System {
		case "kitchen/hob":
			burners := []string{"gas_large", "gas_medium", "gas_small", "gas_all"}
			u.run(f, "cooking", burners, cookingTime, cookingTime, cookingTime, allBurners)
		case "kitchen/oven":
			u.run(f, "baking", []string{"gas_high"}, bakingTime)
		case "kitchen/grill":
			u.run(f, "grilling", []string{"gas_high"}, bakingTime)
		}
	}
	return u
}

// cooling is the fridge on gas day and night at its mean rate, or at its
// highest where that is not known.
func cooling(in table.Input) uses {
	var u uses
	for _, f := range in.All {
		if f.System == "kitchen/three-way-fridge" {
			u.run(f, "cooling", []string{"gas_mean", "gas_high"}, wholeDay)
		}
	}
	return u
}

// hotWater is the boilers of a day for everything that has one and burns gas.
func hotWater(in table.Input, gas string) uses {
	var u uses
	for _, f := range in.All {
		boiler, rates := f.WithRole("boiler-volume"), f.WithRole(rateRole)
		if len(boiler) == 0 || len(rates) == 0 {
			continue
		}
		flame, err := highest(f)
		if err != nil {
			u.lack(f.Name, rates[0].Fact.Name, err)
			continue
		}
		time, err := waterTime(boiler[0].Fact, flame, gas)
		if err != nil {
			u.lack(f.Name, boiler[0].Fact.Name, err)
			continue
		}
		u.list = append(u.list, dayUse{purpose: "hot-water", use: flame.stated.Use(), rate: flame.rate, time: time})
	}
	return u
}

// waterTime is how long the flame would burn at its highest for the hot water.
func waterTime(boiler table.Fact, f flame, gas string) (quantity.Seconds, error) {
	volume, err := calc.Take[quantity.CubicMetres](boiler)
	if err != nil {
		return 0, err
	}
	heat, err := heating.HeatEnergy(volume*boilersADay, heating.ColdWater, heating.HotWater)
	if err != nil {
		return 0, err
	}
	mass, err := HeatMass(heat, heating.GasUsed, gas)
	if err != nil {
		return 0, err
	}
	return Duration(mass, f.rate)
}

// highest is the highest setting of an appliance that burns gas. One that
// cannot be used may have been the highest, so there is none then.
func highest(f table.Fitted) (flame, error) {
	var most flame
	for _, stated := range f.WithRole(rateRole) {
		rate, err := calc.Take[quantity.KilogramsPerSecond](stated.Fact)
		if err != nil {
			return flame{}, err
		}
		if rate > most.rate {
			most = flame{stated: stated, rate: rate}
		}
	}
	return most, nil
}

// roomHeater is the thirstiest appliance that warms the van with gas; one
// without a rate means that there is none.
func roomHeater(in table.Input) (flame, []table.Lack) {
	var most flame
	for _, f := range in.All {
		rates := f.WithRole(rateRole)
		if !strings.HasPrefix(f.System, "heating/") || f.System == "heating/water-boiler" || len(rates) == 0 {
			continue
		}
		one, err := highest(f)
		if err != nil {
			return flame{}, []table.Lack{{Use: rates[0].Use(), Reason: err.Error()}}
		}
		if one.rate > most.rate {
			most = one
		}
	}
	return most, nil
}

// warming is the gas that keeps a van that loses so much heat warm for a day and
// a night. Where the heater cannot keep up it burns at its highest all the time.
func warming(heater flame, loss heating.WattsPerKelvin, outside quantity.Kelvins, gas string) (dayUse, error) {
	use := dayUse{purpose: "warming", use: heater.stated.Use(), rate: heater.rate}
	need, err := heating.HeatNeed(loss, heating.Warm, outside)
	if err != nil {
		return use, err
	}
	heat := quantity.Joules(float64(need) * float64(wholeDay))
	mass, err := warmthMass(heater, heat, gas)
	if err != nil {
		return use, err
	}
	time, err := Duration(mass, heater.rate)
	use.time = min(time, wholeDay)
	return use, err
}

// warmthMass goes by the heater's own plate where it states its heat output.
func warmthMass(heater flame, heat quantity.Joules, gas string) (quantity.Kilograms, error) {
	stated, ok := heater.stated.Fitted.Fact("heat_gas")
	if !ok {
		return HeatMass(heat, heating.GasUsed, gas)
	}
	output, err := calc.Take[quantity.Watts](stated)
	if err != nil {
		return 0, err
	}
	mass, err := RunMass(heat, heater.rate, output, gas)
	if err != nil {
		return 0, fmt.Errorf("heat_gas with %s: %w", heater.stated.Fact.Name, err)
	}
	return mass, nil
}
