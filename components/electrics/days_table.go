package electrics

import (
	"cmp"
	"fmt"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// The least that the columns of hours and days show.
const (
	leastHours = hour / 10
	leastDays  = day / 10
)

// Days12VTable says how long a full leisure battery lasts without charging: first
// with a typical day of everything on 12 volts, and then with each thing by
// itself, what takes most in a typical day first. What cannot be reckoned with
// has no row, and the typical day is then left out too: it would promise too
// much.
//
// Columns: use, a-day, days, charge, lasts. Days are those of a typical day in
// which nothing else is used; lasts is left on without a pause. A van without a
// leisure battery has no rows.
func Days12VTable(in table.Input) (table.Result, error) {
	b, found, err := bankOf(in)
	if err != nil || !found {
		return table.Result{}, err
	}
	all, lacks := consumers(in)
	slices.SortStableFunc(all, func(a, b consumer) int { return cmp.Compare(b.charge(), a.charge()) })
	result := table.Result{Lacks: lacks}
	for _, c := range all {
		row, err := b.row(c)
		if err != nil {
			result.Lacks = append(result.Lacks, table.Lack{Use: c.use, Reason: err.Error()})
			continue
		}
		result.Rows = append(result.Rows, row)
	}
	for i := range result.Lacks {
		result.Lacks[i].Reason += "; so the typical day is not worked out either"
	}
	if len(result.Lacks) > 0 || len(all) == 0 {
		return result, nil
	}
	return b.withTypicalDay(result, all)
}

func (b bank) row(c consumer) (table.Row, error) {
	lasts, err := b.lasts(c.current)
	if err != nil {
		return nil, err
	}
	days, err := b.days([]consumer{c}, 0)
	if err != nil {
		return nil, err
	}
	if lasts < leastHours || days < leastDays {
		return nil, fmt.Errorf("the battery lasts for a few minutes only, and the table counts tenths of an hour and of a day")
	}
	return table.Row{
		{Uses: []table.Use{c.use}}, {Quantity: quantity.Of(c.aDay)}, {Quantity: quantity.Of(days)},
		{Quantity: quantity.Of(c.charge())}, {Quantity: quantity.Of(lasts)},
	}, nil
}

func (b bank) withTypicalDay(result table.Result, all []consumer) (table.Result, error) {
	days, err := b.days(all, 0)
	if err != nil {
		return table.Result{}, err
	}
	first := table.Row{{Word: "typical-day"}, {}, {}, {Quantity: quantity.Of(chargeOf(all))}, {}}
	if days >= leastDays {
		first[2].Quantity = quantity.Of(days)
	}
	result.Rows = slices.Insert(result.Rows, 0, first)
	return result, nil
}

// chargeOf is what things take together in a typical day.
func chargeOf(all []consumer) quantity.Coulombs {
	var sum quantity.Coulombs
	for _, c := range all {
		sum += c.charge()
	}
	return sum
}

// drain is the charge that the battery loses in a typical day: what is taken,
// more for a current above that of the rating.
//
//	Q' = Σ t C / T
//
// with the time t a day, the capacity C and the time T for which the battery
// lasts at that current. Things that are on at the same time draw it down a
// little more than that.
func (b bank) drain(all []consumer) (quantity.Coulombs, error) {
	var sum quantity.Coulombs
	for _, c := range all {
		lasts, err := Lasts(b.capacity, b.rated, b.Exponent, c.current)
		if err != nil {
			return 0, err
		}
		sum += b.capacity * quantity.Coulombs(c.aDay/lasts)
	}
	return calc.Positive("the charge of a day", sum)
}

// days is for how long the usable charge covers typical days of which the sun
// gives something back. The error wraps errCovered where it gives as much as is
// taken.
func (b bank) days(all []consumer, sun quantity.Coulombs) (quantity.Seconds, error) {
	drain, err := b.drain(all)
	if err != nil {
		return 0, err
	}
	if sun >= drain {
		return 0, errCovered
	}
	return calc.Positive("the days", day*quantity.Seconds(b.usableCharge()/(drain-sun)))
}
