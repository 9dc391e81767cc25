package electrics

import (
	"errors"
	"math"
	"testing"
	"testing/quick"

	"doorpocket/components/internal/calc"
	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

const ampHour quantity.Coulombs = 3600

func lasts(t *testing.T, capacity quantity.Coulombs, rated quantity.Seconds, exponent quantity.Fraction, current quantity.Amperes) quantity.Seconds {
	t.Helper()
	got, err := Lasts(capacity, rated, exponent, current)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestLastsPublished(t *testing.T) {
	checks := published.Read(t, "battery")
	for _, id := range []string{"peukert-20h", "peukert-rated"} {
		c := published.Get(t, checks, id)
		got := lasts(t, published.Value[quantity.Coulombs](t, c.Values, "capacity"), published.Value[quantity.Seconds](t, c.Values, "rated"),
			published.Value[quantity.Fraction](t, c.Values, "exponent"), published.Value[quantity.Amperes](t, c.Values, "current"))
		c.Same(t, "time", float64(got), float64(published.Value[quantity.Seconds](t, c.Values, "time")))
	}
	for id, exponent := range map[string]quantity.Fraction{"peukert-agm": 1.1, "peukert-wet": 1.2} {
		c := published.Get(t, checks, id)
		for _, row := range c.Rows {
			current := published.Value[quantity.Amperes](t, row, "current")
			got := quantity.Coulombs(float64(lasts(t, 100*ampHour, 20*hour, exponent, current)) * float64(current))
			c.Same(t, row["current"], float64(got), float64(published.Value[quantity.Coulombs](t, row, "charge")))
		}
	}
}

func TestChemistriesPublished(t *testing.T) {
	checks := published.Read(t, "battery")
	named := func(row map[string]string) Chemistry {
		t.Helper()
		got, err := ChemistryNamed(row["kind"])
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	c := published.Get(t, checks, "exponents")
	for _, row := range c.Rows {
		if got, want := named(row).Exponent, published.Value[quantity.Fraction](t, row, "most"); got != want {
			t.Errorf("exponent of %s is %g, expected %g (%s)", row["kind"], float64(got), float64(want), c.Source)
		}
	}
	for _, row := range published.Get(t, checks, "usable").Rows {
		if got, want := named(row).Usable, published.Value[quantity.Fraction](t, row, "part"); got != want {
			t.Errorf("usable of %s is %g, expected %g", row["kind"], float64(got), float64(want))
		}
	}
	if got, err := ChemistryNamed("nuclear"); err == nil {
		t.Errorf("an unknown kind gives %v", got)
	}
}

// A battery never gives more than its capacity, gives less time to a larger
// current and more time when it is larger; with the exponent 1 it gives its
// capacity always.
func TestLastsProperties(t *testing.T) {
	check := func(c, i, k uint8) bool {
		capacity := quantity.Coulombs(c)*ampHour + 20*ampHour
		current := quantity.Amperes(float64(i)/256*float64(capacity/ampHour)/1.1 + 0.01)
		exponent := 1 + quantity.Fraction(k)/512
		got := lasts(t, capacity, 20*hour, exponent, current)
		plain := lasts(t, capacity, 20*hour, 1, current)
		whole := quantity.Seconds(float64(capacity) / float64(current))
		return got <= whole*(1+noise) && math.Abs(float64(plain/whole)-1) < 1e-9 && got <= plain*(1+noise) &&
			lasts(t, capacity, 20*hour, exponent, current*1.05) < got && lasts(t, capacity*2, 20*hour, exponent, current) > got
	}
	if err := quick.Check(check, nil); err != nil {
		t.Error(err)
	}
}

// Below and above the current of the rating the two forms meet.
func TestLastsIsContinuous(t *testing.T) {
	a, b := lasts(t, 100*ampHour, 20*hour, 1.3, 5*(1-1e-9)), lasts(t, 100*ampHour, 20*hour, 1.3, 5*(1+1e-9))
	if math.Abs(float64(a/b)-1) > 1e-8 {
		t.Errorf("%g s and %g s on the two sides of the rating", float64(a), float64(b))
	}
}

func TestLastsRefuses(t *testing.T) {
	refused := func(what string, got quantity.Seconds, err error) {
		t.Helper()
		if !errors.Is(err, calc.ErrOutside) || got != 0 {
			t.Errorf("%s gives %v, %v", what, float64(got), err)
		}
	}
	for _, v := range bad {
		got, err := Lasts(quantity.Coulombs(v), 20*hour, 1.2, 1)
		refused("capacity", got, err)
		got, err = Lasts(100*ampHour, quantity.Seconds(v), 1.2, 1)
		refused("rating", got, err)
		got, err = Lasts(100*ampHour, 20*hour, quantity.Fraction(v), 1)
		refused("exponent", got, err)
		got, err = Lasts(100*ampHour, 20*hour, 1.2, quantity.Amperes(v))
		refused("current", got, err)
	}
	got, err := Lasts(100*ampHour, 20*hour, 0.99, 1)
	refused("exponent below 1", got, err)
	got, err = Lasts(100*ampHour, 20*hour, 1.61, 1)
	refused("exponent above 1.6", got, err)
	got, err = Lasts(100*ampHour, 20*hour, 1.2, 100.1)
	refused("empty within the hour", got, err)
}
