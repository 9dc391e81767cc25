package components_test

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"doorpocket/components"
)

// changed is the library with some files replaced.
func changed(t *testing.T, files map[string]string) fstest.MapFS {
	t.Helper()
	tree := fstest.MapFS{}
	err := fs.WalkDir(components.Embedded(), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(components.Embedded(), name)
		tree[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		tree[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return tree
}

// roles lists the roles as a message does.
func roles(t *testing.T) string {
	t.Helper()
	return strings.Join(slices.Sorted(maps.Keys(library(t).Roles)), ", ")
}

// Whatever is wrong with a rule is said at its place, all in one go.
func TestRuleProblems(t *testing.T) {
	tests := []struct {
		name, rules, words string
		want               []string
	}{
		{"unknown names", `[a]
has    = ["water/pmup", "role:gas-rat", "watr"]
wants  = ["gas-rate", "pump", "role:water/pump"]
unless = ["electrics/tv where sauces = satellite"]
`, "[a]\nmissing = \"A\"\nreason = \"B\"\n", []string{
			`components/completeness.toml:2:11: error: Unknown system "water/pmup" | Did you mean "water/pump"?`,
			`components/completeness.toml:2:25: error: Unknown role "gas-rat" | Did you mean "gas-rate"?`,
			`components/completeness.toml:2:41: error: Unknown family "watr" | Did you mean "water"?`,
			`components/completeness.toml:3:11: error: Unknown family "gas-rate" | It is a role: write "role:gas-rate".`,
			`components/completeness.toml:3:23: error: Unknown family "pump" | Write a system such as "water/pump", a family such as "water", or a role such as "role:gas-rate".`,
			`components/completeness.toml:3:31: error: Unknown role "water/pump" | There is ` + roles(t) + `. They stand in components/roles.toml.`,
			`components/completeness.toml:4:11: error: Unknown fact "sauces" | Did you mean "sources"?`,
		}},
		{"conditions", `[a]
has    = ["electrics/tv where sources = sattelite", "vehicle/body where seats > many"]
wants  = ["water/pump where lamp or strainer"]
unless = ["kitchen where driving"]
`, "[a]\nmissing = \"A\"\nreason = \"B\"\n", []string{
			`components/completeness.toml:3:11: error: Condition is not understood | "lamp or strainer" is no condition: write a fact, !fact, or fact = value, joined by and`,
			`components/completeness.toml:4:11: error: A condition on something that has no facts of its own | Only a system can be followed by where: name the system, or leave the condition out.`,
			`components/completeness.toml:2:11: error: Condition "sources = sattelite" cannot be decided | "sattelite" is no option of sources: it has land-aerial, satellite, site-lead, own-device or internet`,
			`components/completeness.toml:2:53: error: Condition "seats > many" cannot be decided | "many" is no whole number`,
		}},
		{"form", `[A_b]
wants = "water/pump"
when  = "x"
has   = []
`, "[A_b]\nmissing = \"A\"\nreason = \"B\"\n", []string{
			`components/completeness.toml:1:1: error: A rule cannot be called A_b | Use small letters, digits and hyphens, a letter first.`,
			`components/completeness.toml:4:9: error: Empty value for "has" | Something has to be written here. For example: has = ["water/pump"]`,
			`components/completeness.toml:2:9: error: Wrong type for "wants" | Written here: a text, "water/pump". Expected: a list of texts. For example: wants = ["water/pump"]`,
			`components/completeness.toml:3:1: error: Unknown key "when" | This name is not known here. Use one of: has, wants, unless.`,
		}},
		{"words", "[a]\nhas = [\"gas\"]\nwants = [\"water\"]\n[b]\nhas = [\"gas\"]\nwants = [\"water\"]\n",
			"[a]\nmissing = \"A\"\n[c]\nmissing = \"A\"\nreason = \"B\"\n", []string{
				`components/completeness.en.toml:1:1: error: Missing key "reason" | This key has to be written under [a]. Add for example: reason = "..."`,
				`components/completeness.en.toml:3:1: error: Words for "c", which is not in completeness.toml | Correct the name, or add it to completeness.toml.`,
				`components/completeness.en.toml: error: No words for rule "b" | Add [b] with missing and reason.`,
			}},
		{"no words", "[a]\nhas = [\"gas\"]\nwants = [\"water\"]\n", "", []string{
			`components/completeness.en.toml: error: No words for the rules of completeness | Write it: for each rule what is missing, and the reason.`,
		}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, found := components.Load(changed(t, map[string]string{"completeness.toml": test.rules, "completeness.en.toml": test.words}))
			var got []string
			for _, p := range found {
				if strings.Contains(p.File, "completeness") {
					got = append(got, p.String()+" | "+p.Detail)
				}
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A language that the library speaks needs the words of every rule, and a
// fleet's own systems leave the rules alone.
func TestRulesOfOtherLanguagesAndLibraries(t *testing.T) {
	values, err := fs.ReadFile(components.Embedded(), "values.en.toml")
	if err != nil {
		t.Fatal(err)
	}
	lib, found := components.Load(changed(t, map[string]string{"values.xx.toml": string(values)}))
	var said bool
	for _, p := range found {
		said = said || p.Code == "missing-words" && p.File == "components/completeness.xx.toml"
	}
	if !said {
		t.Error("nothing is said of rules without words in a language")
	}
	joined, _ := lib.With(fstest.MapFS{}, "systems/")
	if len(joined.Rules) < 30 || joined.Rule("water-pump") == nil || joined.Rule("nothing") != nil {
		t.Errorf("%d rules", len(joined.Rules))
	}
}

// What is missing is a phrase, the reason whole sentences, and both are short
// enough to be read among twenty others.
func TestRuleWords(t *testing.T) {
	lib := library(t)
	seen := map[string]string{}
	for _, rule := range lib.Rules {
		for lang, words := range rule.Words {
			if strings.HasSuffix(words.Missing, ".") || len(words.Missing) > 70 {
				t.Errorf("%s in %s: %q is no short phrase", rule.Name, lang, words.Missing)
			}
			if !strings.HasSuffix(words.Reason, ".") || len(words.Reason) > 260 {
				t.Errorf("%s in %s: %q are no short sentences", rule.Name, lang, words.Reason)
			}
			if other := seen[lang+words.Missing]; other != "" {
				t.Errorf("%s and %s miss the same in %s", rule.Name, other, lang)
			}
			seen[lang+words.Missing] = rule.Name
		}
	}
}
