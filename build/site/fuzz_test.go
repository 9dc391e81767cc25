package site_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/site"
)

// Whatever stands in the record of a part, the next publish, of all or of that part,
// gives the site that it should be or refuses and changes nothing; and no file outside
// is touched.
func FuzzRecord(f *testing.F) {
	for _, record := range []string{
		"", "{", "null", `{"format": 1}`, `{"format": 99}`, "\x00\x01", `{"format":1,"files":{"hirers/AA/index.html":""}}`, `{"format":1,"files":{"hirers/AA":"-1"}}`,
		`{"format":1,"files":{"../outside":"0-0"}}`, `{"format":1,"files":{},"shared":{"hirers/pictures/old.jpg":"0-0"}}`, `"hirers/AA/../../../outside"`,
		`{"format":1,"files":{"hirers/AA/index.html":"7eeecb4b6ef6b1a4-3"},"parts":["..", "AA"]}`, `{"format":1,"files":{"ledger/AA.json":"0-0"}}`,
		`{"format":1,"files":{"hirers/AA/index.html":"0-0","hirers/AA/G1/index.html":"0-0","staff/AA/index.html":"0-0"},"shared":{"hirers/BB/index.html":"0-0","hirers/index.html":"0-0","hirers/pictures/bee.jpg":"0-0"}}`,
	} {
		f.Add([]byte(record), true)
		f.Add([]byte(record), false)
	}
	parts := map[string]map[string]string{site.Fleet: {"hirers/index.html": "one"}, "AA": van("AA", "old"), "BB": van("BB", "bee")}
	f.Fuzz(func(t *testing.T, record []byte, whole bool) {
		folder := t.TempDir()
		target, outside := filepath.Join(folder, "site"), filepath.Join(folder, "outside")
		put(t, outside, "x")
		putParts(t, target, true, nil, parts)
		want := tree(t, target)
		put(t, filepath.Join(target, "ledger/AA.json"), string(record))
		damaged := tree(t, target)
		now := map[string]map[string]string{site.Fleet: parts[site.Fleet], "AA": parts["AA"]}
		if whole {
			now = parts
		}
		err := tryParts(target, whole, nil, now)
		expected := want
		if err != nil {
			expected = damaged
		}
		if diff := cmp.Diff(expected, tree(t, target)); diff != "" {
			t.Errorf("%v\n%s", err, diff)
		}
		if data, err := os.ReadFile(outside); err != nil || string(data) != "x" {
			t.Error("a file outside was touched")
		}
	})
}
