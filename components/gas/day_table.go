package gas

import (
	"doorpocket/components/heating"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// frost is the outside temperature for which DayTable shows the heating.
const frost quantity.Kelvins = 273.15

// DayTable says what a typical day uses: a row for each appliance and purpose,
// as hours at the rate shown. Heating is that of a day at 0 °C outside. Hours
// and masses are rounded up.
//
// Columns: purpose, appliance, rate, time, day.
func DayTable(in table.Input) (table.Result, error) {
	gas, err := gasOf(in.Self)
	if err != nil {
		return table.Result{}, err
	}
	var all uses
	all.join(cooking(in))
	all.join(hotWater(in, gas))
	all.join(cooling(in))
	all.join(heatingAt(in, gas, frost))
	result := table.Result{Lacks: all.lacks}
	for _, u := range all.list {
		result.Rows = append(result.Rows, table.Row{
			{Word: u.purpose}, {Uses: []table.Use{u.use}}, {Quantity: quantity.Of(u.rate)}, {Quantity: quantity.Of(u.time)}, {Quantity: quantity.Of(u.mass())},
		})
	}
	return result, nil
}

// heatingAt is the heating of a day at an outside temperature; nothing where
// the van has no gas heater or it is warm outside.
func heatingAt(in table.Input, gas string, outside quantity.Kelvins) uses {
	var u uses
	heater, lacks := roomHeater(in)
	if len(lacks) > 0 || heater.rate == 0 || outside >= heating.Warm {
		return uses{lacks: lacks}
	}
	loss, lack := heating.LossOf(in.All)
	if lack != nil {
		return uses{lacks: []table.Lack{*lack}}
	}
	day, err := warming(heater, loss.Coefficient, outside, gas)
	if err != nil {
		u.lack(heater.stated.Fitted.Name, heater.stated.Fact.Name, err)
		return u
	}
	u.list = append(u.list, day)
	return u
}
