package vehicle_test

import (
	"math"
	"testing"

	"doorpocket/components/internal/published"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
	"doorpocket/components/vehicle"
)

func tyre(t *testing.T, name, text string) table.Fact {
	t.Helper()
	return sample.Fact(t, name, "tyre-pressure", quantity.Pressure, text)
}

func shownTyres(t *testing.T, facts ...table.Fact) []string {
	t.Helper()
	return sample.Shown(t, "vehicle/tyre-pressures", sample.Van(t, "tyres", table.Fitted{Name: "tyres", Facts: facts}))
}

func TestTyrePressures(t *testing.T) {
	size := table.Fact{Name: "size"}
	sample.Same(t, shownTyres(t, tyre(t, "rear", "5.5 bar"), tyre(t, "front", "5.0 bar"), size), []string{
		"front | 5.0 bar | 72.5 psi | 500 kPa",
		"rear | 5.5 bar | 79.8 psi | 550 kPa",
	})
	sample.Same(t, shownTyres(t, tyre(t, "front", "80 psi"), tyre(t, "tag", "4 bar"), tyre(t, "rear", "550 kPa"), tyre(t, "spare", "80 psi")), []string{
		"front | 5.52 bar | 80.0 psi | 552 kPa",
		"rear | 5.5 bar | 79.8 psi | 550 kPa",
		"spare | 5.52 bar | 80.0 psi | 552 kPa",
		"tyres:tag | 4 bar | 58.0 psi | 400 kPa",
	})
}

func TestTyrePressuresLacks(t *testing.T) {
	sample.Same(t, shownTyres(t, tyre(t, "rear", "5.5 bar"), tyre(t, "spare", "0 bar")), []string{
		"rear | 5.5 bar | 79.8 psi | 550 kPa",
		"lacks tyres:front: front is not stated",
		"lacks tyres:spare: spare is 0 bar, which must be above zero: outside what the formula holds for",
	})
	if result, err := vehicle.TyrePressuresTable(table.Input{Self: table.Fitted{Name: "tyres"}}); err == nil || len(result.Rows) > 0 {
		t.Errorf("a van without pressures gives %d rows, %v", len(result.Rows), err)
	}
}

// Every row of the pressure index, stated in psi, shows the bar and the kPa that
// the regulation prints.
func TestTyrePressuresPublished(t *testing.T) {
	checks := published.Read(t, "vehicle")
	index := published.Get(t, checks, "pressure-index")
	for _, row := range index.Rows {
		cells := pressureRow(t, published.Quantity[quantity.Pascals](t, row, "psi"))
		bar := math.Round(in(t, cells[1].Quantity, "bar")*10) / 10
		if want := in(t, published.Quantity[quantity.Pascals](t, row, "bar"), "bar"); bar != want {
			t.Errorf("%s is %g bar, expected %g (%s)", row["psi"], bar, want, index.Source)
		}
		kPa := math.Round(in(t, cells[3].Quantity, "kPa")/10) * 10
		if want := in(t, published.Quantity[quantity.Pascals](t, row, "kpa"), "kPa"); kPa != want {
			t.Errorf("%s is %g kPa, expected %g (%s)", row["psi"], kPa, want, index.Source)
		}
	}
	for _, id := range []string{"one-bar", "five-and-a-half-bar"} {
		c := published.Get(t, checks, id)
		cells := pressureRow(t, published.Quantity[quantity.Pascals](t, c.Values, "bar"))
		c.Same(t, "psi", in(t, cells[2].Quantity, "psi"), in(t, published.Quantity[quantity.Pascals](t, c.Values, "psi"), "psi"))
	}
}

func pressureRow(t *testing.T, q quantity.Quantity) table.Row {
	t.Helper()
	fact := table.Fact{Name: "front", Role: "tyre-pressure", Quantity: q}
	result, err := vehicle.TyrePressuresTable(table.Input{Self: table.Fitted{Name: "tyres", Facts: []table.Fact{fact}}})
	if err != nil || len(result.Rows) != 1 {
		t.Fatalf("%s: %d rows, %v", q, len(result.Rows), err)
	}
	return result.Rows[0]
}

func in(t *testing.T, q quantity.Quantity, unit string) float64 {
	t.Helper()
	u, ok := quantity.UnitNamed(unit)
	if !ok {
		t.Fatalf("no unit %q", unit)
	}
	v, err := q.In(u)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
