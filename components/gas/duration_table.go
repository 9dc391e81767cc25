package gas

import (
	"cmp"
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// hour is the least that the table shows.
const hour quantity.Seconds = 3600

// flame is an appliance at one setting.
type flame struct {
	stated table.Stated
	rate   quantity.KilogramsPerSecond
}

// DurationTable says how long the gas lasts: a row for every appliance of the
// van at every setting, with the gas of one full cylinder or tank of the store
// whose page it is, and with all the gas on board. The thirstiest appliance
// stands first, its settings together, the highest first.
//
// The table counts whole hours, down; what does not last one is a lack and not
// a row of zero.
//
// Columns: appliance, rate, one, all. The column all is empty where another
// store of the van cannot be reckoned with.
func DurationTable(in table.Input) (table.Result, error) {
	self, err := storeOf(in.Self)
	if err != nil {
		return table.Result{}, err
	}
	all, lacks := aboard(in, self)
	burning, unknown := flames(in)
	result := table.Result{Lacks: append(lacks, unknown...)}
	for _, f := range burning {
		row, err := f.row(self.one, all)
		if err != nil {
			result.Lacks = append(result.Lacks, table.Lack{Use: f.stated.Use(), Reason: err.Error()})
			continue
		}
		result.Rows = append(result.Rows, row)
	}
	return result, nil
}

// row works out one row; an unknown mass of all the gas is zero.
func (f flame) row(one, all quantity.Kilograms) (table.Row, error) {
	lasts, err := Duration(one, f.rate)
	if err != nil {
		return nil, err
	}
	if lasts < hour {
		return nil, fmt.Errorf("at %s one full store lasts less than an hour, and the table counts whole hours", f.stated.Fact.Quantity)
	}
	row := table.Row{
		{Uses: []table.Use{f.stated.Use()}},
		{Quantity: f.stated.Fact.Quantity},
		{Quantity: quantity.Of(lasts)},
		{},
	}
	if all == 0 {
		return row, nil
	}
	lasts, err = Duration(all, f.rate)
	row[3].Quantity = quantity.Of(lasts)
	return row, err
}

// flames lists the gas appliances at their settings in the order of the table.
func flames(in table.Input) ([]flame, []table.Lack) {
	var found []flame
	var lacks []table.Lack
	most := map[string]quantity.KilogramsPerSecond{} // by fitted system
	for _, stated := range in.WithRole("gas-rate") {
		rate, err := calc.Take[quantity.KilogramsPerSecond](stated.Fact)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: stated.Use(), Reason: err.Error()})
			continue
		}
		found = append(found, flame{stated: stated, rate: rate})
		most[stated.Fitted.Name] = max(most[stated.Fitted.Name], rate)
	}
	place := places(in)
	slices.SortStableFunc(found, func(a, b flame) int {
		left, right := a.stated.Fitted.Name, b.stated.Fitted.Name
		return cmp.Or(cmp.Compare(most[right], most[left]), cmp.Compare(place[left], place[right]), cmp.Compare(b.rate, a.rate))
	})
	return found, lacks
}

// places gives the place of each fitted system on the van, which keeps two
// that are equally thirsty apart.
func places(in table.Input) map[string]int {
	place := map[string]int{}
	for i, f := range in.All {
		place[f.Name] = i
	}
	return place
}
