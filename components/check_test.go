package components_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"doorpocket/components"
)

// sound is a system without a fault, in its three files.
var sound = map[string]string{
	"system.toml": `family  = "living"
hazards = ["lifting"]
tables  = ["vehicle/dimensions"]
related = ["living/storage"]

[fact.bicycles]
type     = "count"
range    = [1, 4]
required = true

[fact.lock]
type = "choice"
of   = ["key", "code"]

[fact.limit]
type    = "mass"
role    = "mass-limit"
default = "60 kg"

[fact.strap]
type = "length"
when = "lock = key"

[constant.settle]
value  = "1 min"
source = "common practice"

[[caution]]
id     = "heavy"
signal = "caution"
hazard = "lifting"

[[step]]
id      = "look"
routine = ["before-driving"]
after   = ["vehicle/keys:walk-round"]
caution = "heavy"

[[check]]
id         = "there"
symptom    = "rain-gets-in"
likelihood = "rare"
effort     = "1 min"
`,
	"lines.en.toml": `title = "Bicycle box"
about = "The box on the back takes bicycles."
words = ["bike box"]

[fact]
bicycles = "bicycles it takes"
lock     = "how it is locked"
limit    = "most it may carry"
strap    = "length of the strap"

[choice.lock]
key  = "a key"
code = "a code"

[caution.heavy]
hazard      = "It is heavy."
consequence = "You can hurt your back."
avoid       = "Lift it together."

[step]
look = "Pull at the lock."

[check.there]
look = "Is the lid shut?"
no   = "Shut it."
`,
	"page.en.md": `The box takes {$bicycles} bicycles and {$limit :unit unit=lb}. Ask {$van.name}.

![Where it is](figure:locator)

## With a key {when="lock = key"}

The strap is {$strap} long. See [storage](system:living/storage).

![Sizes](table:vehicle/dimensions)
`,
}

// whole stands for all of a file.
const whole = "\x00"

// faults reads the system with some of its words replaced and gives what is
// said of it.
func faults(t *testing.T, edits ...string) []string {
	t.Helper()
	files := map[string]string{}
	for name, text := range sound {
		files[name] = text
	}
	for i := 0; i < len(edits); i += 3 {
		name, from, to := edits[i], edits[i+1], edits[i+2]
		if from == whole {
			from = files[name]
		}
		if !strings.Contains(files[name], from) {
			t.Fatalf("%s does not hold %q", name, from)
		}
		files[name] = strings.Replace(files[name], from, to, 1)
	}
	tree := fstest.MapFS{}
	for name, text := range files {
		if text != "" {
			tree["living/bike-box/"+name] = &fstest.MapFile{Data: []byte(text)}
		}
	}
	_, found := library(t).With(tree, "systems/")
	var said []string
	for _, p := range found {
		said = append(said, strings.TrimPrefix(p.String(), "systems/living/bike-box/")+" | "+p.Detail)
	}
	return said
}

func TestSoundSystem(t *testing.T) {
	if said := faults(t); len(said) > 0 {
		t.Error(said)
	}
}

// Every check has a system that it finds fault with, in these very words.
func TestChecks(t *testing.T) {
	const system, lines, page = "system.toml", "lines.en.toml", "page.en.md"
	lists := strings.NewReplacer("{routines}", listed(library(t).Routines, func(r *components.Routine) string { return r.ID }),
		"{symptoms}", listed(library(t).Symptoms, func(s *components.Symptom) string { return s.ID }),
		"{hazards}", listed(library(t).Hazards, func(h components.Hazard) string { return h.ID }))
	for _, c := range []struct {
		name  string
		edits []string
		want  []string
	}{
		{"another family", []string{system, "family  = \"living\"", "family  = \"water\""}, []string{
			`system.toml:1:11: error: Family differs from the folder | Write family = "living".`,
		}},
		{"related to nothing", []string{system, "\"living/storage\"", "\"living/storrage\""}, []string{
			`system.toml:4:11: error: Unknown system "living/storrage" | Did you mean "living/storage"?`,
		}},
		{"joins with nothing", []string{system, "related =", "automatic = [\"living/bedd\"]\nrelated =", system, "required = true", ""}, []string{
			`system.toml:4:13: error: Unknown system "living/bedd" | Did you mean "living/drop-down-bed" or "living/fixed-bed" or "living/lounge-bed"?`,
		}},
		{"joins by itself and needs a fact", []string{system, "related =", "automatic = [\"living/safe\"]\nrelated ="}, []string{
			`system.toml:7:1: error: A required fact of a system that joins by itself | Nobody states its facts: give it a default or make it optional.`,
		}},
		{"unknown table", []string{system, "\"vehicle/dimensions\"", "\"vehicle/dimensoins\"", page, "![Sizes](table:vehicle/dimensions)", ""}, []string{
			`system.toml:3:11: error: Unknown table "vehicle/dimensoins" | Did you mean "vehicle/dimensions"?`,
		}},
		{"unknown hazard", []string{system, "hazards = [\"lifting\"]", "hazards = [\"lifting\", \"bears\"]"}, []string{
			`system.toml:2:11: error: Unknown hazard "bears" | There is {hazards}. They stand in components/hazards.toml.`,
			`system.toml:2:11: error: No caution for hazard "bears" | A page with a hazard is not published without its caution: add a [[caution]] with hazard = "bears".`,
		}},
		{"hazard without caution", []string{system, "hazards = [\"lifting\"]", "hazards = [\"lifting\", \"fire\"]"}, []string{
			`system.toml:2:11: error: No caution for hazard "fire" | A page with a hazard is not published without its caution: add a [[caution]] with hazard = "fire".`,
		}},
		{"hazard that its facts bring", []string{system, "role    = \"mass-limit\"\ndefault = \"60 kg\"", "role    = \"mass-limit\"\ndefault = \"60 kg\"\n\n[fact.rate]\ntype = \"mass-flow\"\nrole = \"gas-rate\"", lines, "strap    =", "rate = \"gas it burns\"\nstrap    ="}, []string{
			`system.toml:2:11: error: Hazard "gas" is not listed | A system of this kind carries it: add it to hazards and write a caution for it.`,
			`system.toml:2:11: error: Hazard "carbon-monoxide" is not listed | A system of this kind carries it: add it to hazards and write a caution for it.`,
		}},
		{"condition of a fact", []string{system, "when = \"lock = key\"", "when = \"lock or key\""}, []string{
			`system.toml:20:1: error: Condition is not understood | "lock or key" is no condition: write a fact, !fact, or fact = value, joined by and`,
		}},
		{"fact and constant", []string{system, "[constant.settle]", "[constant.lock]"}, []string{
			`system.toml:11:1: error: A fact and a constant share a name | Rename one of them.`,
		}},
		{"unknown role", []string{system, "role    = \"mass-limit\"", "role    = \"mass-limits\""}, []string{
			`system.toml:15:1: error: Unknown role "mass-limits" | Did you mean "mass-limit"?`,
		}},
		{"role of another type", []string{system, "role    = \"mass-limit\"", "role    = \"gas-rate\"", system, "\"lifting\"]", "\"lifting\", \"gas\", \"carbon-monoxide\"]"}, []string{
			`system.toml:2:11: error: No caution for hazard "gas" | A page with a hazard is not published without its caution: add a [[caution]] with hazard = "gas".`,
			`system.toml:2:11: error: No caution for hazard "carbon-monoxide" | A page with a hazard is not published without its caution: add a [[caution]] with hazard = "carbon-monoxide".`,
			`system.toml:15:1: error: Role gas-rate does not fit the type | A fact of this role is a mass-flow.`,
		}},
		{"two cautions of one id", []string{system, "[[step]]", "[[caution]]\nid     = \"heavy\"\nsignal = \"notice\"\nhazard = \"lifting\"\n\n[[step]]"}, []string{
			`system.toml:33:1: error: A second caution "heavy" | Ids are unique within a system: rename one of them.`,
		}},
		{"two steps of one id", []string{system, "[[check]]", "[[step]]\nid = \"look\"\nroutine = \"return\"\n\n[[check]]"}, []string{
			`system.toml:39:1: error: A second step "look" | Ids are unique within a system: rename one of them.`,
		}},
		{"two checks of one id", []string{system, "[[check]]", "[[check]]\nid = \"there\"\nsymptom = \"no-water\"\nlikelihood = \"rare\"\neffort = \"1 min\"\n\n[[check]]"}, []string{
			`system.toml:45:1: error: A second check "there" | Ids are unique within a system: rename one of them.`,
		}},
		{"hazard of a caution", []string{system, "hazard = \"lifting\"", "hazard = \"fire\""}, []string{
			`system.toml:2:11: error: No caution for hazard "lifting" | A page with a hazard is not published without its caution: add a [[caution]] with hazard = "lifting".`,
			`system.toml:28:1: error: Hazard "fire" of a caution is not listed | Add it to hazards.`,
		}},
		{"no signal word", []string{system, "signal = \"caution\"\n", ""}, []string{
			`system.toml:28:1: error: A caution without signal word | Write signal = "danger", "warning", "caution" or "notice".`,
		}},
		{"unknown signal word", []string{system, "signal = \"caution\"", "signal = \"cautoin\""}, []string{
			`system.toml:30:10: error: Unknown signal "cautoin" | Did you mean "caution"? Use danger, warning, caution, notice.`,
		}},
		{"unknown routine", []string{system, "routine = [\"before-driving\"]", "routine = [\"before-drving\"]", system, "after   = [\"vehicle/keys:walk-round\"]\n", ""}, []string{
			`system.toml:33:1: error: Unknown routine "before-drving" | Did you mean "before-driving"?`,
		}},
		{"unknown routine, none near", []string{system, "routine = [\"before-driving\"]", "routine = [\"x\"]", system, "after   = [\"vehicle/keys:walk-round\"]\n", ""}, []string{
			`system.toml:33:1: error: Unknown routine "x" | There is {routines}. They stand in components/routines.toml.`,
		}},
		{"unknown caution of a step", []string{system, "caution = \"heavy\"", "caution = \"hevy\""}, []string{
			`system.toml:33:1: error: Unknown caution "hevy" | Did you mean "heavy"?`,
		}},
		{"unknown symptom", []string{system, "\"rain-gets-in\"", "\"rain-get-in\""}, []string{
			`system.toml:39:1: error: Unknown symptom "rain-get-in" | Did you mean "rain-gets-in"?`,
		}},
		{"unknown symptom, none near", []string{system, "\"rain-gets-in\"", "\"x\""}, []string{
			`system.toml:39:1: error: Unknown symptom "x" | There is {symptoms}. They stand in components/symptoms.toml.`,
		}},
		{"check without likelihood", []string{system, "likelihood = \"rare\"\n", ""}, []string{
			`system.toml:39:1: error: A check without likelihood or effort | Write how often it finds the cause and how long it takes, so that checks can be put in order.`,
		}},
		{"unknown likelihood", []string{system, "likelihood = \"rare\"", "likelihood = \"often\""}, []string{
			`system.toml:42:14: error: Unknown likelihood "often" | Use common, occasional, rare.`,
			`system.toml:39:1: error: A check without likelihood or effort | Write how often it finds the cause and how long it takes, so that checks can be put in order.`,
		}},
		{"check without effort", []string{system, "effort     = \"1 min\"\n", ""}, []string{
			`system.toml:39:1: error: A check without likelihood or effort | Write how often it finds the cause and how long it takes, so that checks can be put in order.`,
		}},
		{"condition of a step", []string{system, "caution = \"heavy\"", "caution = \"heavy\"\nwhen = \"lokc = key\""}, []string{
			`system.toml:33:1: error: Unknown fact "lokc" | Did you mean "lock"?`,
		}},
		{"condition of a caution", []string{system, "signal = \"caution\"", "signal = \"caution\"\nwhen = \"lock > key\""}, []string{
			`system.toml:28:1: error: Condition "lock > key" cannot be decided | lock is no number: compare it with = or !=`,
		}},
		{"condition of a check", []string{system, "effort     = \"1 min\"", "effort     = \"1 min\"\nwhen = \"lock = keys\""}, []string{
			`system.toml:39:1: error: Condition "lock = keys" cannot be decided | "keys" is no option of lock: it has key or code`,
		}},
		{"condition on an unknown system", []string{system, "effort     = \"1 min\"", "effort     = \"1 min\"\nwhen = \"living/saef\""}, []string{
			`system.toml:39:1: error: Unknown system "living/saef" | Did you mean "living/safe"?`,
		}},
		{"condition on the body", []string{system, "effort     = \"1 min\"", "effort     = \"1 min\"\nwhen = \"body.lenght > 6 m\""}, []string{
			`system.toml:39:1: error: Unknown fact "body.lenght" | Did you mean "body.length"?`,
		}},
		{"condition with the wrong unit", []string{system, "effort     = \"1 min\"", "effort     = \"1 min\"\nwhen = \"body.length > 6 kg\""}, []string{
			`system.toml:39:1: error: Condition "body.length > 6 kg" cannot be decided | "6 kg": kg is a unit of mass: expected a length; units of length: m, mm, cm, km, ft, in, mi, yd`,
		}},
		{"step after an unknown step", []string{system, "vehicle/keys:walk-round", "vehicle/keys:walk-rund"}, []string{
			`system.toml:33:1: error: Unknown step "vehicle/keys:walk-rund" | Did you mean "vehicle/keys:walk-round"?`,
		}},
		{"step after one of an unknown system", []string{system, "vehicle/keys:walk-round", "vehicle/keyring:walk-round"}, []string{
			`system.toml:33:1: error: Unknown step "vehicle/keyring:walk-round" | Write family/system:step or family:step. No system is called "vehicle/keyring".`,
		}},
		{"step after an unknown one, none near", []string{system, "vehicle/keys:walk-round", "gas/drop-vents:x"}, []string{
			`system.toml:33:1: error: Unknown step "gas/drop-vents:x" | gas/drop-vents has the steps clear-below, keep-open, light-through, nothing-over, show.`,
		}},
		{"step after one in another routine", []string{system, "routine = [\"before-driving\"]", "routine = [\"monthly\"]"}, []string{
			`system.toml:33:1: error: Step "vehicle/keys:walk-round" is in no routine of this one | Constraints hold within a routine: correct the name or the routine.`,
		}},
		{"fact with a bad name", []string{system, "[fact.strap]", "[fact.label]", lines, "strap    =", "label    =", page, "{$strap}", "{$label}"}, []string{
			`system.toml:20:1: error: A fact cannot be called label | Use small letters, digits and underscores, and none of system, label, at, title, pictures, note, without.`,
		}},
		{"unknown type", []string{system, "type = \"length\"", "type = \"lenght\"", page, "The strap is {$strap} long. ", ""}, []string{
			`system.toml:21:8: error: Unknown type of fact | Use choice, choices, count, yes-no, date, text, or a quantity such as mass, length or power.`,
		}},
		{"choice without options", []string{system, "of   = [\"key\", \"code\"]\n", "", lines, "[choice.lock]\nkey  = \"a key\"\ncode = \"a code\"\n", "", system, "when = \"lock = key\"\n", "", page, " {when=\"lock = key\"}", ""}, []string{
			`system.toml:11:1: error: Missing key "of" | This key has to be written under [fact.lock]. Add for example: of = ["..."]`,
		}},
		{"range of one", []string{system, "range    = [1, 4]", "range    = [1]"}, []string{
			`system.toml:8:12: error: Range is not understood | A quantity or count has a range of two: ["2 kg", "47 kg"] or [1, 4].`,
		}},
		{"default and required", []string{system, "required = true", "required = true\ndefault = 2"}, []string{
			`system.toml:10:11: error: A required fact has a default | Leave out one of the two.`,
		}},
		{"default out of range", []string{system, "default = \"60 kg\"", "range = [\"1 kg\", \"50 kg\"]\ndefault = \"60 kg\""}, []string{
			`system.toml:19:11: error: limit 60 kg is out of range | It can be from 1 kg to 50 kg. Look at the unit and the decimal point.`,
		}},
		{"constant without unit", []string{system, "value  = \"1 min\"", "value  = \"soon\""}, []string{
			`system.toml:25:10: error: Constant is no quantity with a unit | Write for example "5 °C" or "1 min".`,
		}},
		{"constant without source", []string{system, "source = \"common practice\"\n", ""}, []string{
			`system.toml:24:1: error: Missing key "source" | This key has to be written under [constant.settle]. Add for example: source = "..."`,
		}},
		{"unknown key", []string{system, "related =", "realted ="}, []string{
			`system.toml:4:1: error: Unknown key "realted" | This name is not known here. Did you mean "related"?`,
		}},
		{"no label of a fact", []string{lines, "strap    = \"length of the strap\"\n", ""}, []string{
			`lines.en.toml: error: No label for fact "strap" | Add it under [fact].`,
		}},
		{"label of no fact", []string{lines, "strap    =", "sea = \"the sea\"\nstrap    ="}, []string{
			`lines.en.toml:9:1: error: Unknown fact "sea" | There is bicycles, lock, limit, strap.`,
		}},
		{"no words for an option", []string{lines, "code = \"a code\"\n", ""}, []string{
			`lines.en.toml:11:1: error: No words for option "code" of lock | Add it under [choice.lock].`,
		}},
		{"words for no option", []string{lines, "code = \"a code\"", "code = \"a code\"\ncard = \"a card\""}, []string{
			`lines.en.toml:14:1: error: Unknown option "card" | There is key, code.`,
		}},
		{"options of no fact", []string{lines, "[choice.lock]", "[choice.lok]\nkey = \"a key\"\n\n[choice.lock]"}, []string{
			`lines.en.toml:11:1: error: Unknown choice "lok" | Did you mean "lock"?`,
		}},
		{"no words for a caution", []string{lines, "[caution.heavy]\nhazard      = \"It is heavy.\"\nconsequence = \"You can hurt your back.\"\navoid       = \"Lift it together.\"\n", ""}, []string{
			`lines.en.toml: error: No words for caution "heavy" | Add a table [caution.heavy].`,
		}},
		{"no words for a step", []string{lines, "look = \"Pull at the lock.\"\n", ""}, []string{
			`lines.en.toml: error: No words for step "look" | Add a line under [step].`,
		}},
		{"no words for a check", []string{lines, "[check.there]\nlook = \"Is the lid shut?\"\nno   = \"Shut it.\"\n", ""}, []string{
			`lines.en.toml: error: No words for check "there" | Add a table [check.there].`,
		}},
		{"words for no step", []string{lines, "look = \"Pull at the lock.\"", "look = \"Pull at the lock.\"\nlok = \"Pull.\""}, []string{
			`lines.en.toml:22:1: error: Unknown step "lok" | Did you mean "look"?`,
		}},
		{"words for no check", []string{lines, "[check.there]", "[check.their]\nlook = \"Is it?\"\nno = \"No.\"\n\n[check.there]"}, []string{
			`lines.en.toml:23:1: error: Unknown check "their" | Did you mean "there"?`,
		}},
		{"words for no caution", []string{lines, "[step]", "[caution.heavi]\nhazard = \"H.\"\nconsequence = \"C.\"\navoid = \"A.\"\n\n[step]"}, []string{
			`lines.en.toml:20:1: error: Unknown caution "heavi" | Did you mean "heavy"?`,
		}},
		{"check without an answer", []string{lines, "no   = \"Shut it.\"\n", ""}, []string{
			`lines.en.toml:23:1: error: Check "there" says neither what a yes nor what a no means | Write yes or no, or both.`,
		}},
		{"half a caution", []string{lines, "avoid       = \"Lift it together.\"\n", ""}, []string{
			`lines.en.toml:15:1: error: Missing key "avoid" | This key has to be written under [caution.heavy]. Add for example: avoid = "..."`,
		}},
		{"no title", []string{lines, "title = \"Bicycle box\"\n", ""}, []string{
			`lines.en.toml:1:1: error: Missing key "title" | This key has to be written at the top of the file, above the first [table]. Add for example: title = "..."`,
		}},
		{"unknown fact in a line", []string{lines, "look = \"Pull at the lock.\"", "look = \"Pull at the {$lokc}.\""}, []string{
			`lines.en.toml:21:8: error: Unknown fact "lokc" | Did you mean "lock"?`,
		}},
		{"fact that may be absent in a line", []string{lines, "look = \"Pull at the lock.\"", "look = \"Pull at the {$lock}.\""}, []string{
			`lines.en.toml:21:8: error: Fact "lock" may be absent here | A step, check, caution or title cannot be left out in part: make the fact required, give it a default, or add it to when.`,
		}},
		{"mail of the fleet in a line", []string{lines, "no   = \"Shut it.\"", "no   = \"Write to {$fleet.mail}.\""}, []string{
			`lines.en.toml:25:8: error: Fact "fleet.mail" may be absent here | A step, check, caution or title cannot be left out in part: make the fact required, give it a default, or add it to when.`,
		}},
		{"figure in a line", []string{lines, "look = \"Pull at the lock.\"", "look = \"Lift 20 kg.\""}, []string{
			`lines.en.toml:21:8: warning: "20 kg" stands in the words | One value has one source: make it a fact, or a [constant] with its source, and name it as {$name}.`,
		}},
		{"table in a line", []string{lines, "look = \"Pull at the lock.\"", "look = \"![x](table:vehicle/dimensions)\""}, []string{
			`lines.en.toml:21:8: error: A table, figure or picture in a line | A line holds words only: put it into the page.`,
		}},
		{"unknown fact on a page", []string{page, "{$bicycles}", "{$bicycle}"}, []string{
			`page.en.md:1:15: error: Unknown fact "bicycle" | Did you mean "bicycles"?`,
		}},
		{"unit that does not fit", []string{page, "unit=lb", "unit=bar"}, []string{
			`page.en.md:1:40: error: Unit "bar" does not fit limit | It is a mass.`,
		}},
		{"link to no system", []string{page, "system:living/storage", "system:living/storag"}, []string{
			`page.en.md:7:43: error: Unknown system "living/storag" | Did you mean "living/storage"?`,
		}},
		{"link to no routine", []string{page, "system:living/storage", "routine:retrun"}, []string{
			`page.en.md:7:43: error: Unknown routine "retrun" | Did you mean "return"?`,
		}},
		{"link to no symptom", []string{page, "system:living/storage", "symptom:no-watr"}, []string{
			`page.en.md:7:43: error: Unknown symptom "no-watr" | Did you mean "no-water"?`,
		}},
		{"table that is not its own", []string{page, "table:vehicle/dimensions", "table:vehicle/tyre-pressures"}, []string{
			`page.en.md:9:10: error: Table "vehicle/tyre-pressures" is not listed | Add it to tables in system.toml, or take the line out.`,
		}},
		{"unknown figure", []string{page, "figure:locator", "figure:locater"}, []string{
			`page.en.md:3:16: error: Unknown figure "locater" | Did you mean "locator"?`,
		}},
		{"figure of a table that is not its own", []string{page, "figure:locator", "figure:gas-days"}, []string{
			`page.en.md:3:16: error: Table "gas/days" is not listed | Add it to tables in system.toml, or take the line out.`,
		}},
		{"condition of a section", []string{page, "when=\"lock = key\"", "when=\"lock ~ key\""}, []string{
			`page.en.md:5:1: error: Condition is not understood | "lock ~ key" is no condition: write a fact, !fact, or fact = value, joined by and`,
		}},
		{"condition of a section on nothing", []string{page, "when=\"lock = key\"", "when=\"lok = key\""}, []string{
			`page.en.md:5:1: error: Unknown fact "lok" | Did you mean "lock"?`,
		}},
		{"figure on a page", []string{page, "Ask {$van.name}.", "Wait 5 min."}, []string{
			`page.en.md:1:69: warning: "5 min" stands in the words | One value has one source: make it a fact, or a [constant] with its source, and name it as {$name}.`,
		}},
		{"markup on a page", []string{page, "Ask", "<b>Ask</b>"}, []string{
			`page.en.md:1:64: error: Raw HTML in a page | Pages are Markdown. Write the words without tags; put a backslash before a < that is meant as a sign.`,
			`page.en.md:1:70: error: Raw HTML in a page | Pages are Markdown. Write the words without tags; put a backslash before a < that is meant as a sign.`,
		}},
		{"no page", []string{page, whole, ""}, []string{
			`page.en.md: error: The page is missing | Every language that has lines needs a page beside them: write systems/living/bike-box/page.en.md.`,
		}},
		{"no lines", []string{lines, whole, ""}, []string{
			`system.toml: error: System without words | Write lines.en.toml and page.en.md beside it.`,
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for i, text := range c.want {
				c.want[i] = lists.Replace(text)
			}
			if diff := cmp.Diff(c.want, faults(t, c.edits...)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A family that there is not is told for a folder of that name.
func TestUnknownFamily(t *testing.T) {
	tree := fstest.MapFS{}
	for name, text := range sound {
		tree["livng/bike-box/"+name] = &fstest.MapFile{Data: []byte(strings.Replace(text, `"living"`, `"livng"`, 1))}
	}
	_, found := library(t).With(tree, "systems/")
	if len(found) != 1 || found[0].String() != `systems/livng/bike-box/system.toml:1:11: error: Unknown family "livng"` || found[0].Detail != `Did you mean "living"?` {
		t.Errorf("%+v", found)
	}
}

func listed[T any](all []T, name func(T) string) string {
	var names []string
	for _, v := range all {
		names = append(names, name(v))
	}
	return strings.Join(names, ", ")
}
