package site_test

import (
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/site"
)

// A site that is to outlast a power cut is the same as any other, whole and in
// parts.
func TestDurableSites(t *testing.T) {
	var trees []map[string]string
	for _, durable := range []bool{false, true} {
		target := filepath.Join(t.TempDir(), "site")
		for step, whole := range []bool{true, false, true} {
			s := open(t, target)
			if durable {
				s.Durable()
			}
			st := stage(t, s, whole)
			write(t, st, site.Fleet, map[string]string{"hirers/index.html": string(rune('a' + step))})
			write(t, st, "RW", map[string]string{"hirers/RW/index.html": string(rune('k' + step))})
			seal(t, st, "RW")
			seal(t, st, site.Fleet)
			if err := st.Finish(); err != nil {
				t.Fatal(err)
			}
			shut(t, s)
			trees = append(trees, tree(t, target))
		}
	}
	for step := range 3 {
		if diff := cmp.Diff(trees[step], trees[3+step]); diff != "" || len(trees[step]) < 4 {
			t.Errorf("step %d:\n%s", step, diff)
		}
	}
}
