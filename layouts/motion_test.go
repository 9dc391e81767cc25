package layouts

import (
	"io/fs"
	"regexp"
	"strings"
	"testing"
)

var (
	calm   = regexp.MustCompile(`@media\(prefers-reduced-motion:no-preference\)\{[^{}]*\{[^{}]*\}\}`)
	motion = regexp.MustCompile(`transition|animation|scroll-behavior|@keyframes|smooth`)
)

// Nothing moves by itself for those who asked their phone for less motion.
func TestMotionCanBeReduced(t *testing.T) {
	seen := 0
	for _, pattern := range []string{"styles/*.css", "scripts/*.js", "pages/*.html"} {
		names, err := fs.Glob(Files(), pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: %v", pattern, err)
		}
		for _, name := range names {
			data, err := fs.ReadFile(Files(), name)
			if err != nil {
				t.Fatal(err)
			}
			seen += len(motion.FindAllString(string(data), -1))
			for _, found := range motion.FindAllString(calm.ReplaceAllString(string(data), ""), -1) {
				t.Errorf("%s: %s for everybody: put it under @media(prefers-reduced-motion:no-preference)", name, strings.TrimSpace(found))
			}
		}
	}
	if seen == 0 {
		t.Error("nothing moves at all: this test looks for the wrong words")
	}
}
