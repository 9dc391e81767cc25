package electrics

import (
	"testing"

	"doorpocket/components/internal/published"
	"doorpocket/components/quantity"
)

func states(t *testing.T, chemistry string) map[string]quantity.Volts {
	t.Helper()
	all, err := RestStates(chemistry)
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]quantity.Volts{}
	for i, s := range all {
		if i > 0 && s.From >= all[i-1].From {
			t.Errorf("%s: %s does not begin below %s", chemistry, s.Name, all[i-1].Name)
		}
		found[s.Name] = s.From
	}
	if last := all[len(all)-1]; last.From != 0 {
		t.Errorf("%s: %s has a lower end", chemistry, last.Name)
	}
	return found
}

func TestRestStatesPublished(t *testing.T) {
	checks := published.Read(t, "battery")
	wet := states(t, "wet")
	for _, id := range []string{"rest-wet", "rest-wet-other"} {
		c := published.Get(t, checks, id)
		for _, row := range c.Rows {
			c.Same(t, row["state"], float64(wet[row["state"]]), float64(published.Value[quantity.Volts](t, row, "volts")))
		}
	}
	c := published.Get(t, checks, "rest-lithium")
	lithium := states(t, "lithium")
	from, to := published.Value[quantity.Volts](t, c.Values, "from"), published.Value[quantity.Volts](t, c.Values, "to")
	if lithium["cannot-tell"] > from || lithium["nearly-full"] <= to {
		t.Errorf("a lithium battery is judged by voltages between %g V and %g V (%s)", float64(from), float64(to), c.Source)
	}
}

// A sealed battery rests higher than a wet one: nowhere may it be called fuller
// at a voltage at which a wet one is not.
func TestSealedBatteriesRestHigher(t *testing.T) {
	wet := states(t, "wet")
	for _, kind := range []string{"agm", "gel"} {
		for name, from := range states(t, kind) {
			if from < wet[name] {
				t.Errorf("%s is %s from %g V, a wet one from %g V", kind, name, float64(from), float64(wet[name]))
			}
		}
	}
}

func TestRestStatesRefuses(t *testing.T) {
	if got, err := RestStates("nuclear"); err == nil || got != nil {
		t.Errorf("an unknown kind gives %v, %v", got, err)
	}
}
