package label

import (
	"strings"
	"testing"

	"doorpocket/components/manifest"

	"github.com/google/go-cmp/cmp"
)

var (
	october = manifest.Date{Year: 2026, Month: 10, Day: 2}
	spring  = manifest.Date{Year: 2027, Month: 3, Day: 1}
)

const address = "https://guide.lantern.example"

// rowan is a van with what is given fitted, as "name system" or "name system
// label".
func rowan(things ...string) Van { return van("RW", "Rowan", october, things...) }

func van(code, name string, date manifest.Date, things ...string) Van {
	v := Van{Code: code, Name: name, SpecDate: date}
	letters := map[string]string{"gas": "G", "water": "W", "heating": "H", "kitchen": "K"}
	for _, text := range things {
		parts := strings.Fields(text)
		family, _, _ := strings.Cut(parts[1], "/")
		t := Thing{Name: parts[0], System: parts[1], Letter: letters[family], Wants: true}
		for _, more := range parts[2:] {
			switch key, value, stated := strings.Cut(more, "="); {
			case !stated:
				t.Label = more
			case key == "was":
				t.Stated = &Stated{Was: append(t.stated().Was, strings.ReplaceAll(value, "_", " ")), Replaces: t.stated().Replaces}
			case key == "replaces":
				t.replaces(value)
			}
		}
		v.Things = append(v.Things, t)
	}
	return v
}

// registered makes a register out of vans, with all labels printed.
func registered(t *testing.T, vans ...Van) *Register {
	t.Helper()
	r := agree(t, nil, Wish{Address: address}, vans...)
	var all []Ref
	for _, e := range r.Entries {
		all = append(all, e.Ref)
	}
	next, err := r.Printed(all, october)
	if err != nil {
		t.Fatal(err)
	}
	return revised(t, r, next)
}

// agree plans, which must go without problems, and revises.
func agree(t *testing.T, r *Register, wish Wish, vans ...Van) *Register {
	t.Helper()
	p := Make(r, vans, wish)
	if len(p.Problems) > 0 {
		t.Fatalf("%v", p.Problems)
	}
	return revised(t, r, p.Register())
}

func revised(t *testing.T, r, next *Register) *Register {
	t.Helper()
	text, err := Revise(r, next)
	if err != nil {
		t.Fatal(err)
	}
	read, found := ParseRegister(RegisterFile, text)
	if len(found) > 0 {
		t.Fatalf("%v\n%s", found, text)
	}
	// What was just agreed needs no more changes.
	return read
}

func (r *Register) text() string { return string(r.written) }

// says looks whether a line of the register reads so, spaces aside.
func says(t *testing.T, r *Register, want ...string) {
	t.Helper()
	flat := strings.Join(strings.Fields(r.text()), " ")
	for _, w := range want {
		if !strings.Contains(flat, w) {
			t.Errorf("the register does not say %s:\n%s", w, r.text())
		}
	}
}

func TestFirstLabels(t *testing.T) {
	r := agree(t, nil, Wish{Address: address},
		rowan("locker gas/cylinder-locker", "taps gas/isolation-taps G1", "pump water/pump", "quiet water/filter none"),
		van("AL", "Alder", spring, "pump water/pump"))
	want := strings.TrimSpace(opening) + `

address = "https://guide.lantern.example"   # under which the printed labels lead to the guides

[van]
RW = { name = "Rowan", since = 2026-10-02 }
AL = { name = "Alder", since = 2027-03-01 }

[label]
"RW G1"  = { fitted = "taps", system = "gas/isolation-taps", since = 2026-10-02 }
"RW G2"  = { fitted = "locker", system = "gas/cylinder-locker", since = 2026-10-02 }
"RW W1"  = { fitted = "pump", system = "water/pump", since = 2026-10-02 }
"AL W1"  = { fitted = "pump", system = "water/pump", since = 2027-03-01 }
`
	if diff := cmp.Diff(want, r.text()); diff != "" {
		t.Error(diff)
	}
}

// Numbers that sound like others are not given out, and none is given twice.
func TestNumbers(t *testing.T) {
	v := rowan()
	for i := range 92 {
		v.Things = append(v.Things, Thing{Name: "lamp-" + string(rune('a'+i/26)) + string(rune('a'+i%26)), System: "water/pump", Letter: "W", Wants: true})
	}
	r := agree(t, nil, Wish{Address: address}, v)
	seen := map[string]bool{}
	for _, e := range r.Entries {
		if seen[e.Code] || strings.HasSuffix(e.Code, "0") && e.Code > "W3" {
			t.Errorf("%s given out", e.Code)
		}
		seen[e.Code] = true
	}
	if len(seen) != 92 {
		t.Errorf("%d codes", len(seen))
	}
	v.Things = append(v.Things, Thing{Name: "one-more", System: "water/pump", Letter: "W", Wants: true})
	if p := Make(r, []Van{v}, Wish{Address: address}); len(p.Problems) != 1 || p.Problems[0].Code != "no-code-left" {
		t.Errorf("%v", p.Problems)
	}
}
