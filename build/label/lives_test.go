package label

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// What happens to vans and to what is fitted in them, and what the register then
// says of labels that are printed: or what it asks.
func TestLives(t *testing.T) {
	later := func(things ...string) Van { return van("RW", "Rowan", spring, things...) }
	rowanBefore := rowan("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge")
	// G1 locker, K1 hob, K2 fridge
	for name, c := range map[string]struct {
		before  []Van // Rowan alone where empty
		after   []Van
		leaving map[string]Fate
		says    []string
		problem string // its code
		hint    string // in its detail
	}{
		"nothing": {
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge")},
			says:  []string{`"RW K2" = { fitted = "fridge", system = "kitchen/three-way-fridge", since = 2026-10-02, printed = 2026-10-02 }`},
		},
		"added": {
			after: []Van{later("oven kitchen/oven", "locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge")},
			says:  []string{`"RW K3" = { fitted = "oven", system = "kitchen/oven", since = 2027-03-01 }`},
		},
		"removed": {
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob")},
			says:  []string{`"RW K2" = { fitted = "fridge", system = "kitchen/three-way-fridge", since = 2026-10-02, printed = 2026-10-02, became = "removed", on = 2027-03-01 }`},
		},
		"replaced under the same name": { // the sticker stays beside the new one
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/compressor-fridge")},
			says:  []string{`"RW K2" = { fitted = "fridge", system = "kitchen/compressor-fridge", since = 2026-10-02, printed = 2026-10-02 }`},
		},
		"replaced under another name in the same place": {
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "cold kitchen/compressor-fridge was=fridge")},
			says:  []string{`"RW K2" = { fitted = "cold", system = "kitchen/compressor-fridge", since = 2026-10-02, printed = 2026-10-02 }`},
		},
		"replaced in another place": {
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "cold kitchen/compressor-fridge replaces=fridge")},
			says:  []string{`"RW K2" = { fitted = "fridge", system = "kitchen/three-way-fridge", since = 2026-10-02, printed = 2026-10-02, became = "replaced", now = "RW K3", on = 2027-03-01 }`, `"RW K3" = { fitted = "cold"`},
		},
		"replaced by one of another family under the same name": {
			after: []Van{later("locker gas/cylinder-locker", "hob heating/stove", "fridge kitchen/three-way-fridge")},
			says:  []string{`"RW K1" = { fitted = "hob", system = "kitchen/hob", since = 2026-10-02, printed = 2026-10-02, became = "replaced", now = "RW H1", on = 2027-03-01 }`, `"RW H1" = { fitted = "hob"`},
		},
		"renamed, unsaid": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "cold kitchen/three-way-fridge")},
			problem: "renamed", hint: `was = "fridge"`,
		},
		"renamed with was": {
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "cold kitchen/three-way-fridge was=fridge")},
			says:  []string{`"RW K2" = { fitted = "cold", system = "kitchen/three-way-fridge", since = 2026-10-02, printed = 2026-10-02 }`},
		},
		"renamed with a wrong was": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "cold kitchen/three-way-fridge was=frigde")},
			problem: "former-name", hint: `"fridge"`,
		},
		"renamed with its code in the spec": {
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "cold kitchen/three-way-fridge K2")},
			says:  []string{`"RW K2" = { fitted = "cold"`},
		},
		"two change names": {
			after: []Van{later("locker gas/cylinder-locker", "fridge kitchen/hob was=hob", "hob kitchen/three-way-fridge was=fridge")},
			says:  []string{`"RW K1" = { fitted = "hob", system = "kitchen/three-way-fridge"`}, // the names decide: each label stays where its name is
		},
		"was names what is still there": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge", "cold kitchen/compressor-fridge was=fridge")},
			problem: "former-name", hint: "Take one of the two out",
		},
		"a code for something else": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "oven kitchen/oven K2")},
			problem: "label-taken", hint: "never given to something else",
		},
		"a code of what is still there": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge", "oven kitchen/oven K1")},
			problem: "label-taken", hint: "take label out",
		},
		"another code in the spec": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge K7")},
			problem: "label-conflict", hint: "RW K2 stays",
		},
		"no label any more": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge none")},
			problem: "label-conflict", hint: "for good",
		},
		"moved to another van": {
			after: []Van{later("locker gas/cylinder-locker", "hob kitchen/hob"), van("AL", "Alder", spring, "fridge kitchen/three-way-fridge was=RW_fridge")},
			says:  []string{`"RW K2" = { fitted = "fridge", system = "kitchen/three-way-fridge", since = 2026-10-02, printed = 2026-10-02, became = "moved", now = "AL K1", on = 2027-03-01 }`},
		},
		"moved, whatever the order of the vans": {
			after: []Van{van("AL", "Alder", spring, "fridge kitchen/three-way-fridge was=RW_fridge"), later("locker gas/cylinder-locker", "hob kitchen/hob")},
			says:  []string{`became = "moved", now = "AL K1"`},
		},
		"moved, but still fitted": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge"), van("AL", "Alder", spring, "fridge kitchen/three-way-fridge was=RW_fridge")},
			problem: "former-name", hint: "Take it out of the spec of Rowan",
		},
		"moved out of a van that is sold": {
			after:   []Van{van("AL", "Alder", spring, "fridge kitchen/three-way-fridge was=RW_fridge")},
			leaving: map[string]Fate{"RW": Sold},
			says:    []string{`RW = { name = "Rowan", since = 2026-10-02, became = "sold", on = 2027-03-01 }`, `became = "moved", now = "AL K1"`},
		},
		"van gone, unsaid": {
			after:   []Van{van("AL", "Alder", spring)},
			problem: "van-without-spec", hint: "--sold RW",
		},
		"van retired": {
			after:   []Van{van("AL", "Alder", spring, "hob kitchen/hob")},
			leaving: map[string]Fate{"RW": Retired},
			says:    []string{`RW = { name = "Rowan", since = 2026-10-02, became = "retired", on = 2027-03-01 }`, `"RW K1" = { fitted = "hob", system = "kitchen/hob", since = 2026-10-02, printed = 2026-10-02 }`},
		},
		"van sold that is still there": {
			after:   []Van{later("locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge")},
			leaving: map[string]Fate{"RW": Sold},
			problem: "van-still-here",
		},
		"code of a van changed": {
			after:   []Van{van("RO", "Rowan", spring, "locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge")},
			problem: "van-without-spec", hint: "give it the code RW back",
		},
		"name of a van used again": {
			after:   []Van{van("RN", "Rowan", spring, "hob kitchen/hob")},
			leaving: map[string]Fate{"RW": Sold},
			says:    []string{`RN = { name = "Rowan", since = 2027-03-01 }`, `"RN K1" = { fitted = "hob"`},
		},
		"van renamed": {
			after: []Van{van("RW", "Willow", spring, "locker gas/cylinder-locker", "hob kitchen/hob", "fridge kitchen/three-way-fridge")},
			says:  []string{`RW = { name = "Willow", since = 2026-10-02 }`},
		},
	} {
		t.Run(name, func(t *testing.T) {
			before := c.before
			if before == nil {
				before = []Van{rowanBefore}
			}
			r := registered(t, before...)
			wish := Wish{Address: address, Leaving: c.leaving, On: spring}
			p := Make(r, c.after, wish)
			if c.problem != "" {
				i := slices.IndexFunc(p.Problems, func(f problem.Problem) bool { return f.Code == c.problem })
				if i < 0 || len(p.Problems) != 1 {
					t.Fatalf("no problem %s alone, but %v", c.problem, p.Problems)
				}
				if !strings.Contains(p.Problems[0].Detail, c.hint) {
					t.Errorf("the problem does not say %s: %s", c.hint, p.Problems[0].Detail)
				}
				return
			}
			next := agree(t, r, wish, c.after...)
			says(t, next, c.says...)
			leads(t, r, next)
			if again := Make(next, c.after, Wish{Address: address}); len(again.Changes) > 0 || len(again.Problems) > 0 {
				t.Errorf("a second run wants more: %v %v", again.Changes, again.Problems)
			}
		})
	}
}

// leads looks whether every label that was printed still has its line, and
// stands for the same thing or has not been given to anything else.
func leads(t *testing.T, before, after *Register) {
	t.Helper()
	for _, old := range before.Entries {
		e := after.Find(old.Ref)
		if e == nil {
			t.Errorf("%s has lost its line", old.Ref)
			continue
		}
		if e.Since != old.Since || e.Printed != old.Printed {
			t.Errorf("%s has lost its history", old.Ref)
		}
	}
}

// What was sold stays sold: its code is not for another van, whatever its name.
func TestVanCodeIsNotUsedAgain(t *testing.T) {
	r := registered(t, rowan("hob kitchen/hob"))
	r = agree(t, r, Wish{Address: address, Leaving: map[string]Fate{"RW": Sold}, On: spring}, van("AL", "Alder", spring))
	for _, name := range []string{"Rowan", "Willow"} {
		p := Make(r, []Van{van("RW", name, spring, "hob kitchen/hob")}, Wish{Address: address})
		if len(p.Problems) != 1 || p.Problems[0].Code != "van-code-reused" || !strings.Contains(p.Problems[0].Detail, "sold") && !strings.Contains(p.Problems[0].Summary, "sold") {
			t.Errorf("%v", p.Problems)
		}
	}
}

// What comes back gets its label back; something else does not.
func TestBackAgain(t *testing.T) {
	r := registered(t, rowan("hob kitchen/hob", "awning kitchen/awning"))
	r = agree(t, r, Wish{Address: address}, van("RW", "Rowan", spring, "hob kitchen/hob"))
	back := agree(t, r, Wish{Address: address}, van("RW", "Rowan", spring, "hob kitchen/hob", "awning kitchen/awning"))
	says(t, back, `"RW K2" = { fitted = "awning", system = "kitchen/awning", since = 2026-10-02, printed = 2026-10-02 }`)
	other := agree(t, r, Wish{Address: address}, van("RW", "Rowan", spring, "hob kitchen/hob", "awning kitchen/tent"))
	says(t, other, `"RW K2" = { fitted = "awning", system = "kitchen/awning", since = 2026-10-02, printed = 2026-10-02, became = "removed", on = 2027-03-01 }`, `"RW K3" = { fitted = "awning", system = "kitchen/tent"`)
}

// Chains of replacements lead to the last one.
func TestChain(t *testing.T) {
	r := registered(t, rowan("a kitchen/hob"))
	r = agree(t, r, Wish{Address: address}, rowan("b kitchen/oven replaces=a"))
	r = agree(t, r, Wish{Address: address}, rowan("c kitchen/grill replaces=b"))
	if last := r.Last(r.Find(Ref{"RW", "K1"})); last.Code != "K3" {
		t.Errorf("K1 leads to %s", last.Ref)
	}
}

// A new domain: once, with the old one kept, and the printed labels told.
func TestAddress(t *testing.T) {
	v := rowan("hob kitchen/hob", "oven kitchen/oven")
	r := registered(t, v)
	p := Make(r, []Van{v}, Wish{Address: "https://new.example"})
	if len(p.Problems) != 1 || p.Problems[0].Code != "address-changed" || !strings.Contains(p.Problems[0].Detail, "2 labels") {
		t.Fatalf("%v", p.Problems)
	}
	moved := agree(t, r, Wish{Address: "https://new.example", Former: address}, v)
	if n := len(moved.Stale()); n != 2 {
		t.Errorf("%d stale", n)
	}
	next, err := moved.Printed([]Ref{{"RW", "K1"}}, spring)
	if err != nil {
		t.Fatal(err)
	}
	moved = revised(t, moved, next)
	if stale := moved.Stale(); len(stale) != 1 || stale[0].Code != "K2" {
		t.Errorf("%v", stale)
	}
	says(t, moved, `former_printed = 2026-10-02, printed = 2027-03-01 }`)
	if p := Make(moved, []Van{v}, Wish{Address: "https://third.example", Former: "https://new.example"}); len(p.Problems) != 1 || !strings.Contains(p.Problems[0].Summary, "second change") {
		t.Errorf("%v", p.Problems)
	}
	// Nothing printed yet: it may change freely.
	fresh := agree(t, nil, Wish{Address: address}, v)
	fresh = agree(t, fresh, Wish{Address: "https://new.example"}, v)
	says(t, fresh, `address = "https://new.example" # under`)
}

// Fleets that change at random: no label is ever lost or given to something
// else, and each run leaves nothing for the next.
func TestRandomLives(t *testing.T) {
	kinds := []string{"kitchen/hob", "kitchen/oven", "gas/cylinder-locker", "water/pump"}
	for seed := range uint64(60) {
		rnd := rand.New(rand.NewPCG(seed, 7))
		var r *Register
		stood := map[Ref]map[string]bool{} // every system that a label ever stood for
		for step := range 12 {
			var vans []Van
			for i, code := range []string{"RW", "AL"} {
				var things []string
				for n := range 8 {
					if rnd.IntN(3) > 0 {
						things = append(things, fmt.Sprintf("thing-%d %s", n, kinds[(n+rnd.IntN(8)/7)%len(kinds)]))
					}
				}
				vans = append(vans, van(code, []string{"Rowan", "Alder"}[i], manifest.Date{Year: 2026, Month: 1 + step, Day: 1}, things...))
			}
			p := Make(r, vans, Wish{Address: address})
			if slices.ContainsFunc(p.Problems, func(f problem.Problem) bool { return f.Code != "renamed" }) {
				t.Fatalf("seed %d: %v", seed, p.Problems)
			}
			if len(p.Problems) > 0 {
				continue // somebody would answer; here the fleet changes again
			}
			next := revised(t, r, p.Register())
			if r != nil {
				leads(t, r, next)
			}
			for _, e := range next.Entries {
				if stood[e.Ref] == nil {
					stood[e.Ref] = map[string]bool{}
				}
				stood[e.Ref][e.Fitted] = true
				if len(stood[e.Ref]) > 1 {
					t.Fatalf("seed %d: %s stood for two things: %v", seed, e.Ref, stood[e.Ref])
				}
			}
			if again := Make(next, vans, Wish{Address: address}); len(again.Changes) > 0 {
				t.Fatalf("seed %d: a second run wants more: %v", seed, again.Changes)
			}
			r = next
		}
	}
}
