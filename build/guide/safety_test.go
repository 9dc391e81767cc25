package guide_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/guide"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
)

// The stamp changes with what keeps people safe and with nothing else.
func TestSafety(t *testing.T) {
	lib, _ := components.Load(components.Embedded())
	stamp := func(before, after string) string {
		t.Helper()
		files := sample.Everything(lib, 0)
		changed := false
		for name, f := range files {
			if text := string(f.Data); strings.Contains(text, before) {
				files[name] = &fstest.MapFile{Data: []byte(strings.Replace(text, before, after, 1))}
				changed = true
			}
		}
		if !changed {
			t.Fatalf("the sample has no %q", before)
		}
		fleet, found := spec.Load(files, "", lib)
		if found.HasErrors() {
			t.Fatal(found)
		}
		g, _ := guide.NewKit(&fleet.Operator, "en").Build(fleet.Vans[0])
		return g.Safety()
	}
	was := stamp("Everything", "Everything")
	for _, c := range []struct {
		before, after string
		same          bool
	}{
		{`emergency = "112"`, `emergency = "999"`, false},
		{`helpline = "+44 1632 960111"`, `helpline = "+44 1632 960112"`, false},
		{`system = "gas/cylinder-locker"`, "note = \"The valve is stiff.\"\nsystem = \"gas/cylinder-locker\"", false},
		{`system = "electrics/battery-monitor"`, "note = \"The lamp is green.\"\nsystem = \"electrics/battery-monitor\"", true},
		{`spec_date = 2026-10-02`, `spec_date = 2026-10-03`, true},
	} {
		if now := stamp(c.before, c.after); (now == was) != c.same {
			t.Errorf("%s to %s: same stamp is %v, want %v", c.before, c.after, now == was, c.same)
		}
	}
}
