package publication_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/components/problem"
)

var markup = regexp.MustCompile(`(?s)<style.*?</style>|<[^>]*>`)

// ownFleet is a fleet with systems that no library has, and one in the place of
// one of the library.
func ownFleet(t *testing.T) fstest.MapFS {
	t.Helper()
	tree := os.DirFS("../../testdata/own-systems")
	all := fstest.MapFS{}
	err := fs.WalkDir(tree, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(tree, name)
		all[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// A roof tent and the fuel tap of a boat's engine become pages, steps and checks
// like all others; a ladder of the fleet's own takes the place of the library's.
func TestOwnSystems(t *testing.T) {
	target := filepath.Join(t.TempDir(), "site")
	_, found, err := publishFiles(ownFleet(t), target, nil)
	if err != nil || len(found) > 0 {
		t.Fatal(err, found)
	}
	tree := files(t, target)
	says := func(name string, want ...string) {
		t.Helper()
		text := strings.Join(strings.Fields(markup.ReplaceAllString(tree[name], " ")), " ")
		at := 0
		for _, w := range want {
			i := strings.Index(text[at:], w)
			if i < 0 {
				t.Errorf("%s does not say %q there", name, w)
				return
			}
			at += i
		}
	}
	says("hirers/TN/L1/index.html", "Roof tent", "The tent has a lid that lifts straight up. It sleeps 2. Open, it carries 240 kg.", "Warning", "The way down is steep", "Close the tent in wind above 40 km/h.")
	says("hirers/TN/V1/index.html", "Fuel tap of the boat", "The tap opens to the left. The tank holds 12 L.", "Danger", "Petrol fumes catch fire")
	says("hirers/TN/L2/index.html", "Tent ladder", "The ladder has 8 rungs.")
	says("hirers/TN/do/before-driving/index.html", "Push the ladder together", "A lid that is not strapped down", "Close the tent.")
	says("hirers/TN/do/before-driving/index.html", "Close the fuel tap of the boat.", "Close the vent on the cap")
	says("hirers/TN/wrong/rain-gets-in/index.html", "Is the rain sheet over every seam?")
	says("hirers/TN/wrong/van-will-not-start/index.html", "Do you mean the engine of the boat?")
	says("staff/TN/facts/index.html", "Tent ladder", "vans/tern.toml:")
	says("staff/reading/index.html", "Roof tent", "systems/living/roof-tent/page.en.md")
	if strings.Contains(tree["hirers/TN/L2/index.html"], "the drop-down bed") || !strings.Contains(tree["hirers/TN/find.js"], "rooftop tent") {
		t.Error("the ladder is the library's, or the tent is not found by its words")
	}
}

// What is wrong with a system of the fleet's own is told as for the library, at
// its place in the fleet's files.
func TestOwnSystemsAreChecked(t *testing.T) {
	const tent, tap = "systems/living/roof-tent/", "systems/vehicle/outboard-fuel-tap/"
	for name, tt := range map[string]struct{ file, old, new, want string }{
		"a caution that is due":     {tap + "system.toml", "hazard = \"fire\"", "hazard = \"weight\"", tap + "system.toml:"},
		"a step that nobody knows":  {tent + "system.toml", "living/ladder:stow", "living/ladder:stwo", tent + "system.toml:37:1: error: Unknown step \"living/ladder:stwo\""},
		"a symptom that is none":    {tent + "system.toml", "rain-gets-in", "rain-get-in", tent + "system.toml:"},
		"words that are missing":    {tap + "lines.en.toml", "vent  = ", "vnt = ", tap + "lines.en.toml:"},
		"a fact that is none":       {tent + "page.en.md", "{$load}", "{$laod}", tent + "page.en.md:3:"},
		"a section without sense":   {tent + "page.en.md", "lift-up-lid", "lift-up-lit", tent + "page.en.md:5:"},
		"a sign that is not drawn":  {tap + "system.toml", "W021", "W999", tap + "system.toml:"},
		"a value out of its range":  {"vans/tern.toml", "240 kg", "2400 kg", "vans/tern.toml:"},
		"a fact of the library's":   {"vans/tern.toml", "rungs ", "held_by ", "vans/tern.toml:"},
		"a file that is not theirs": {tent + "lines.en.toml", "title = ", "title == ", tent + "lines.en.toml:1:"},
	} {
		t.Run(name, func(t *testing.T) {
			fleet := ownFleet(t)
			text := string(fleet[tt.file].Data)
			if !strings.Contains(text, tt.old) {
				t.Fatalf("%s has no %q", tt.file, tt.old)
			}
			fleet[tt.file] = file(strings.Replace(text, tt.old, tt.new, 1))
			target := filepath.Join(t.TempDir(), "site")
			_, found, err := publishFiles(fleet, target, nil)
			if err != nil {
				t.Fatal(err)
			}
			told := slices.ContainsFunc(found, func(p problem.Problem) bool {
				return p.Severity == problem.Error && strings.HasPrefix(p.String(), tt.want) && p.SourceLine != ""
			})
			if !told {
				t.Errorf("not told: %s, but %v", tt.want, found)
			}
			if _, err := os.Stat(filepath.Join(target, "hirers")); err == nil {
				t.Error("it is published all the same")
			}
		})
	}
}
