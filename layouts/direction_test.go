package layouts

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

var (
	sideNamed = regexp.MustCompile(`[^a-z](left|right)[^a-z]`)
	fourSides = regexp.MustCompile(`(?:margin|padding|inset):([^\s;}]+) ([^\s;}]+) ([^\s;}]+) ([^\s;}]+)[;}]`)
)

// The styles say start and end, not left and right, and treat both sides alike
// where they name all four: so text from right to left is laid out as well.
func TestStylesHaveNoLeftAndRight(t *testing.T) {
	for _, name := range []string{"styles/page.css", "styles/staff.css"} {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for i, line := range strings.Split(string(data), "\n") {
			line = strings.NewReplacer("@bottom-left", "", "@bottom-right", "").Replace(line)
			for _, found := range sideNamed.FindAllString(line, -1) {
				t.Errorf("%s:%d: %q: say start or end", name, i+1, strings.Trim(found, ":;{}- "))
			}
			for _, m := range fourSides.FindAllStringSubmatch(line, -1) {
				if m[2] != m[4] {
					t.Errorf("%s:%d: %q has one side unlike the other: say inline-start or inline-end", name, i+1, m[0])
				}
			}
		}
	}
}
