package spec_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
)

const changedVan = "code = \"TT\"\nname = \"Test\"\nspec_date = 2026-10-02\nbuild = \"b\"\n"

const tyres = "[fitted.tyres]\nsystem = \"vehicle/tyres\"\nlabel = \"V1\"\nat = { side = \"offside\" }\nfront = \"5.0 bar\"\nrear = \"5.5 bar\"\nsize = \"225/75 R16\"\n"

func note(lines ...string) string { return "[[changed]]\n" + strings.Join(lines, "\n") + "\n" }

// What hirers are told has changed: of the spec, of its build sheet where the van
// does not state it otherwise, and of the fleet; nothing older than a year.
func TestChanged(t *testing.T) {
	tests := map[string]struct {
		fleet, sheet, van string
		want              []string // day, thing, fact, was, gone, words
		problem           string
	}{
		"a fact": {van: note(`on = 2026-10-01`, `fitted = "tyres"`, `fact = "rear"`, `was = "5.25 bar"`),
			want: []string{"2026-10-01 tyres rear 5.25 bar"}},
		"of the body": {van: note(`on = 2026-10-01`, `fitted = "body"`, `fact = "berths"`, `was = 2`),
			want: []string{"2026-10-01 body berths 2"}},
		"not stated before": {van: note(`on = 2026-10-01`, `fitted = "tyres"`, `fact = "rear"`), want: []string{"2026-10-01 tyres rear"}},
		"new":               {sheet: note(`on = 2026-10-01`, `fitted = "tyres"`), want: []string{"2026-10-01 tyres"}},
		"gone":              {van: note(`on = 2026-10-01`, `gone = "electrics/tv"`), want: []string{"2026-10-01 electrics/tv"}},
		"words":             {fleet: note(`on = 2026-10-01`, `text = "We moved."`), want: []string{"2026-10-01 We moved."}},
		"the last first": {fleet: note(`on = 2026-10-01`, `text = "A"`), sheet: note(`on = 2026-11-01`, `text = "B"`) + note(`on = 2026-10-01`, `text = "C"`), van: note(`on = 2026-09-01`, `text = "D"`),
			want: []string{"2026-11-01 B", "2026-10-01 A", "2026-10-01 C", "2026-09-01 D"}},
		"a year ago":           {van: note(`on = 2025-10-02`, `text = "A"`), want: []string{"2025-10-02 A"}},
		"more than a year ago": {van: note(`on = 2025-10-01`, `text = "A"`)},
		"of the sheet, and the van states it": {sheet: note(`on = 2026-10-01`, `fitted = "tyres"`, `fact = "rear"`, `was = "5.25 bar"`),
			van: "[fitted.tyres]\nrear = \"5.75 bar\"\n"},
		"of the sheet, and the van has not the thing": {sheet: note(`on = 2026-10-01`, `fitted = "tyres"`), van: "without = [\"tyres\"]\n"},
		"it is what it was": {van: note(`on = 2026-10-01`, `fitted = "tyres"`, `fact = "rear"`, `was = "550 kPa"`) + "[fitted.tyres]\nrear = \"5.5 bar\"\n",
			problem: "vans/tt.toml:5:1: warning: rear of tyres is what it was"},
		"no such thing":     {van: note(`on = 2026-10-01`, `fitted = "tires"`), problem: `vans/tt.toml:5:1: warning: Nothing is fitted under the name "tires"`},
		"no such fact":      {van: note(`on = 2026-10-01`, `fitted = "tyres"`, `fact = "reer"`), problem: `vans/tt.toml:5:1: error: vehicle/tyres has no fact "reer"`},
		"no such value":     {van: note(`on = 2026-10-01`, `fitted = "tyres"`, `fact = "rear"`, `was = "5.5 kg"`), problem: "vans/tt.toml:9:"},
		"no day":            {van: note(`text = "A"`), problem: "vans/tt.toml:5:1: error: "},
		"nothing":           {van: note(`on = 2026-10-01`), problem: "vans/tt.toml:5:1: error: What changed is not said"},
		"two ways":          {van: note(`on = 2026-10-01`, `fitted = "tyres"`, `fact = "rear"`, `text = "A"`), problem: "vans/tt.toml:8:8: error: Words and a fact"},
		"a fact of nothing": {van: note(`on = 2026-10-01`, `fact = "rear"`), problem: "vans/tt.toml:5:1: error: A fact of nothing"},
		"was alone":         {van: note(`on = 2026-10-01`, `fitted = "tyres"`, `was = "5 bar"`), problem: "vans/tt.toml:8:7: error: What was otherwise is not said"},
		"unknown system":    {van: note(`on = 2026-10-01`, `gone = "electrics/tvs"`), problem: `vans/tt.toml:7:8: error: Unknown system "electrics/tvs"`},
		"unknown key":       {van: note(`on = 2026-10-01`, `text = "A"`, `now = "B"`), want: []string{"2026-10-01 A"}, problem: `vans/tt.toml:8:1: error: Unknown key "now"`},
	}
	lib, _ := components.Load(components.Embedded())
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			fleet, found := spec.Load(fstest.MapFS{
				"fleet.toml":    {Data: []byte(sample.FleetTOML + test.fleet)},
				"builds/b.toml": {Data: []byte(sample.Body + tyres + test.sheet)},
				"vans/tt.toml":  {Data: []byte(changedVan + test.van)},
			}, "", lib)
			var got []string
			for _, c := range fleet.Vans[0].Changed {
				parts := []string{c.On.String(), c.Fitted, c.Fact, c.Was.Quantity.String(), c.Words["en"]}
				if c.Was.Count > 0 {
					parts = append(parts, fmt.Sprint(c.Was.Count))
				}
				if c.Gone != nil {
					parts = append(parts, c.Gone.ID)
				}
				got = append(got, strings.Join(strings.Fields(strings.Join(parts, " ")), " "))
			}
			if !slices.Equal(got, test.want) {
				t.Errorf("%q, want %q", got, test.want)
			}
			told := ""
			for _, p := range found {
				told += p.String() + "\n"
			}
			if test.problem == "" && found.HasErrors() || !strings.Contains(told, test.problem) {
				t.Errorf("no %q in\n%s", test.problem, told)
			}
		})
	}
}
