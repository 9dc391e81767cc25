package offline_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/offline"
)

// The list names the files as a phone asks for them, with the first digits of
// their sums (published for "abc" in FIPS 180-2), what one needs most first; the
// script follows it as it is.
func TestWorker(t *testing.T) {
	abc := offline.Sum([]byte("abc"))
	got := string(offline.Worker([]byte("script();\n"), offline.Guide{
		Van: "RW", Safety: "s", Lost: []byte(`<a href="START"></a>`),
		Instead: [][2]string{{"pictures/a-480.jpg", "pictures/a-960.jpg"}},
		Spare:   []offline.File{{Path: "pictures/b-960.jpg", Sum: abc}},
		Files: []offline.File{
			{Path: "pictures/a-960.jpg", Sum: abc}, {Path: "RW/G1/index.html", Sum: abc}, {Path: "parts/x.js", Sum: abc},
			{Path: "RW/find.js", Sum: abc}, {Path: "RW/wrong/fire/de/index.html", Sum: abc}, {Path: "RW/index.html", Sum: abc},
		},
	}))
	head, rest, _ := strings.Cut(got, ";\n")
	if rest != "script();\n" {
		t.Errorf("after the list stands %q", rest)
	}
	var list struct {
		Van, Safety, Lost string
		Files, Instead    [][2]string
		Spare             [][2]string
	}
	if err := json.Unmarshal([]byte(strings.TrimPrefix(head, "const guide = ")), &list); err != nil {
		t.Fatalf("%v in %s", err, head)
	}
	const sum = "ba7816bf8f01cfea"
	want := [][2]string{{"RW/", sum}, {"RW/wrong/fire/de/", sum}, {"parts/x.js", sum}, {"RW/find.js", sum}, {"RW/G1/", sum}, {"pictures/a-960.jpg", sum}}
	if diff := cmp.Diff(want, list.Files); diff != "" {
		t.Error(diff)
	}
	if list.Van != "RW" || list.Safety != "s" || list.Lost != `<a href="START"></a>` || len(list.Instead) != 1 || len(list.Spare) != 1 || list.Spare[0] != [2]string{"pictures/b-960.jpg", sum} {
		t.Errorf("%+v", list)
	}
}

func TestVans(t *testing.T) {
	if got := string(offline.Vans([]string{"AD", "RW"})); got != "{\"vans\":[\"AD\",\"RW\"]}\n" {
		t.Error(got)
	}
}
