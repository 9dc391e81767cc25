package label

import (
	"strings"
	"testing"
)

// Registers that cannot be relied on, and what is said of them: the line, part of
// the summary, part of what to do.
func TestBrokenRegisters(t *testing.T) {
	head := "[van]\nRW = { name = \"Rowan\", since = 2026-10-02 }\n[label]\n" // lines 1 to 3
	hob := "\"RW K1\" = { fitted = \"hob\", system = \"kitchen/hob\", since = 2026-10-02 }\n"
	oven := "\"RW K1\" = { fitted = \"oven\", system = \"kitchen/oven\", since = 2026-10-02 }\n"
	print := func(line string) string {
		return strings.Replace(line, "2026-10-02 }", "2026-10-02, printed = 2026-10-05 }", 1)
	}
	fate := func(more string) string { return strings.Replace(hob, " }", ", "+more+" }", 1) }
	for name, c := range map[string]struct {
		text, place, summary, detail string
	}{
		"two things, neither printed":    {head + hob + "# more\n" + oven, ":6:1", "Label RW K1 is written twice", "Neither is printed. Keep one line"},
		"two things, the first printed":  {head + print(hob) + oven, ":5:1", "written twice", "Keep the line of hob, which is printed"},
		"two things, the second printed": {head + hob + print(oven), ":5:1", "written twice", "Keep the line of oven, which is printed"},
		"two things, both printed":       {head + print(hob) + print(oven), ":5:1", "written twice", "take its sticker off the van"},
		"the same line twice":            {head + hob + hob, ":5:1", "written twice", "Both lines say the same: delete one."},
		"one thing, printed on a branch": {head + hob + print(hob), ":5:1", "written twice", "further on"},
		"one van twice":                  {"[van]\nRW = { name = \"Rowan\", since = 2026-10-02 }\nRW = { name = \"Rook\", since = 2026-10-03 }\n", ":3:1", "Van RW is written twice", "another code"},
		"one thing, two labels":          {head + hob + strings.Replace(hob, "K1", "K2", 1), ":5:1", "RW K1 and RW K2 both stand for hob", "RW K2 was never printed: delete its line."},
		"one thing, two printed labels":  {head + print(hob) + print(strings.Replace(hob, "K1", "K2", 1)), ":5:1", "both stand for hob", `became = "replaced", now = "RW K1"`},
		"a merge with a clash":           {head + "<<<<<<< HEAD\n" + hob + "=======\n" + oven + ">>>>>>> winter\n", ":4:1", "Two branches changed the register here", "two people gave the same label"},
		"a merge with the ancestor":      {head + "<<<<<<< HEAD\n" + hob + "||||||| 12ab\n" + hob + "=======\n" + oven + ">>>>>>> winter\n", ":4:1", "Two branches", "two people gave the same label"},
		"a merge without a clash":        {head + "<<<<<<< HEAD\n" + hob + "=======\n" + strings.Replace(oven, "K1", "K2", 1) + ">>>>>>> winter\n", ":4:1", "Two branches", "No label is given to two different things"},
		"a merge that was not finished":  {head + "<<<<<<< HEAD\n" + hob + "=======\n" + oven, ":4:1", "not finished", "git checkout --merge"},
		"the end of a merge":             {head + hob + ">>>>>>> winter\n", ":5:1", "not finished", "beginning is missing"},
		"an unknown fate":                {head + fate(`became = "removde", on = 2027-01-01`), ":4:82", "Unknown fate", `"removed"`},
		"a fate without a day":           {head + fate(`became = "removed"`), ":4:82", "No day", "on = "},
		"a day without a fate":           {head + fate(`on = 2027-01-01`), ":4:78", "A day, but nothing", "became"},
		"replaced by nothing":            {head + fate(`became = "replaced", on = 2027-01-01`), ":4:82", "nothing says what stands in its place", "now = "},
		"replaced by what is not there":  {head + fate(`became = "replaced", now = "RW K11", on = 2027-01-01`), ":4:1", "which is not registered", `"RW K1"`},
		"replaced by itself":             {head + fate(`became = "replaced", now = "RW K1", on = 2027-01-01`), ":4:1", "circle", "Correct"},
		"now without a fate":             {head + fate(`now = "RW K1"`), ":4:79", "neither replaced nor moved", "remove"},
		"now is no label":                {head + fate(`became = "replaced", now = "K2", on = 2027-01-01`), ":4:100", "no label", "as it is printed"},
		"no label":                       {head + strings.Replace(hob, "RW K1", "RW-K1", 1), ":4:1", "is no label", "a space"},
		"no van":                         {head + strings.Replace(hob, "RW K1", "AL K1", 1), ":4:1", "No van AL under [van]", "AL = { name"},
		"no van code":                    {strings.Replace(head, "RW =", "rw =", 1), ":2:1", "no van code", "RW = "},
		"not in braces":                  {head + "[label.\"RW K1\"]\nfitted = \"hob\"\nsystem = \"kitchen/hob\"\nsince = 2026-10-02\n", ":4:8", "between braces", "one line"},
		"no header":                      {"van = { RW = { name = \"Rowan\", since = 2026-10-02 } }\n", ":1:1", "No header above van", "[van]"},
		"a misspelt key":                 {head + fate(`prined = 2026-10-05`), ":4:73", "Unknown key", `"printed"`},
	} {
		t.Run(name, func(t *testing.T) {
			r, found := ParseRegister(RegisterFile, []byte(c.text))
			if r != nil || len(found) != 1 {
				t.Fatalf("%d problems: %v", len(found), found)
			}
			p := found[0]
			if got := p.Span.String(); got != RegisterFile+c.place || !strings.Contains(p.Summary, c.summary) || !strings.Contains(p.Detail, c.detail) {
				t.Errorf("%s\n%s", p, p.Detail)
			}
		})
	}
}

func TestShape(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{{"RO", "R0", true}, {"A1", "AL", true}, {"SK", "5K", true}, {"RW", "RW", true}, {"RW", "RV", false}, {"AD", "AL", false}} {
		if (Shape(c.a) == Shape(c.b)) != c.same {
			t.Errorf("%s and %s", c.a, c.b)
		}
	}
}
