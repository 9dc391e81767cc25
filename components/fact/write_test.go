package fact

import (
	"testing"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// A value that was written is read back as the same value.
func FuzzWritten(f *testing.F) {
	for _, kind := range []string{"pressure", "mass", "length", "time", "temperature", "ratio", "choice", "choices", "count", "yes-no", "date", "text"} {
		for _, value := range []string{`"5.50 bar"`, `"9 ft 2 in"`, `"1 000.5 kg"`, `"-18 °C"`, `"5 h 40 min"`, `"20 %"`, `"0.85"`, `"a"`, `["b", "a"]`, "7", "true", "2027-03-14", `"She said \"go\" \\ \t\u0007"`} {
			f.Add(kind, value)
		}
	}
	f.Fuzz(func(t *testing.T, kind, value string) {
		typ, ok := TypeNamed(kind)
		if !ok {
			return
		}
		d := Decl{Name: "x", Type: typ, Of: []string{"a", "b"}}
		first, ok := decoded(&d, value)
		if !ok {
			return
		}
		second, ok := decoded(&d, first.TOML())
		if !ok || !first.Same(second) || first.TOML() != second.TOML() {
			t.Errorf("%s %s: %s, then %s", kind, value, first.TOML(), second.TOML())
		}
	})
}

// decoded reads what may be a value of a fact.
func decoded(d *Decl, text string) (Value, bool) {
	table, found := manifest.Parse("x.toml", []byte("x = "+text+"\n"))
	if found.HasErrors() {
		return Value{}, false
	}
	e, ok := table.Get("x")
	if !ok {
		return Value{}, false
	}
	var problems problem.List
	v := d.Decode(e, &problems)
	return v, !v.IsZero()
}

func TestSame(t *testing.T) {
	pressure, count := decl(t, "x", "pressure"), decl(t, "x", "count")
	a, _ := decoded(&pressure, `"5.5 bar"`)
	b, _ := decoded(&pressure, `"550 kPa"`)
	c, _ := decoded(&pressure, `"551 kPa"`)
	n, _ := decoded(&count, "5")
	if !a.Same(b) || a.Same(c) || a.Same(n) || a.Same(Value{}) || !(Value{}).Same(Value{}) {
		t.Error(a, b, c, n)
	}
}
