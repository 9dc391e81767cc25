package electrics

import (
	"fmt"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// LeadDropTable says what the van's own lead takes away: a row for every usual
// pitch with all its amps drawn, once with a cool lead and once with a warm one.
// A pitch that gives more than the lead may carry has one row that says so.
//
// Columns: current, lead, volts, share, heat.
func LeadDropTable(in table.Input) (table.Result, error) {
	s, err := supplyOf(in)
	if err != nil {
		return table.Result{}, err
	}
	lead, lack := leadOf(in.Self)
	if lack != nil {
		return table.Result{Lacks: []table.Lack{*lack}}, nil
	}
	var result table.Result
	for _, current := range s.leads {
		least, err := Thinnest(current)
		if err != nil {
			return table.Result{}, err
		}
		if lead.area < least*(1-sizeWithin) {
			result.Rows = append(result.Rows, table.Row{
				{Quantity: quantity.Of(current)}, {Word: "too-thin", Tone: table.Bad}, {}, {}, {},
			})
			result.Lacks = append(result.Lacks, table.Lack{Use: lead.use, Reason: fmt.Sprintf(
				"a lead of %g mm² is too thin for a pitch of %g A, which wants %g mm² or more", float64(lead.area/mm2), float64(current), float64(least/mm2))})
			continue
		}
		rows, err := lead.rows(current, s.voltage)
		if err != nil {
			return table.Result{Lacks: []table.Lack{{Use: lead.use, Reason: err.Error()}}}, nil
		}
		result.Rows = append(result.Rows, rows...)
	}
	return result, nil
}

// lead is the lead of the van.
type lead struct {
	use    table.Use // the fact that says how thick it is
	length quantity.Metres
	area   quantity.SquareMetres
}

func leadOf(inlet table.Fitted) (lead, *table.Lack) {
	l := lead{use: table.Use{Fitted: inlet.Name, Fact: "lead_area"}}
	length, err := take[quantity.Metres](inlet, "lead_length")
	if err != nil {
		return l, &table.Lack{Use: table.Use{Fitted: inlet.Name, Fact: "lead_length"}, Reason: err.Error()}
	}
	area, err := take[quantity.SquareMetres](inlet, "lead_area")
	if err != nil {
		return l, &table.Lack{Use: l.use, Reason: err.Error()}
	}
	l.length, l.area = length, area
	return l, nil
}

// take gives the number of a named fact, which may not be stated.
func take[T quantity.Measure](f table.Fitted, name string) (T, error) {
	fact, ok := f.Fact(name)
	if !ok {
		fact.Name = name
	}
	return calc.Take[T](fact)
}

func (l lead) rows(current quantity.Amperes, voltage quantity.Volts) ([]table.Row, error) {
	var rows []table.Row
	for _, state := range []struct {
		word   string
		copper quantity.Kelvins
	}{{"cool", coolCopper}, {"warm", warmCopper}} {
		drop, err := LeadDrop(l.length, l.area, current, state.copper)
		if err != nil {
			return nil, err
		}
		heat, err := LeadHeat(drop, current)
		if err != nil {
			return nil, err
		}
		rows = append(rows, table.Row{
			{Quantity: quantity.Of(current)}, {Word: state.word}, {Quantity: quantity.Of(drop)},
			{Quantity: quantity.Of(quantity.Fraction(drop / voltage))}, {Quantity: quantity.Of(heat)},
		})
	}
	return rows, nil
}
