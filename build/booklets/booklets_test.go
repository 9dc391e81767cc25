package booklets

import (
	"slices"
	"strings"
	"testing"

	"doorpocket/components/manifest"
)

var (
	rowan = Booklet{Van: "RW", Revision: "K7M2PX", Edition: "0123456789ab", On: manifest.Date{Year: 2027, Month: 3, Day: 14}}
	alder = Booklet{Van: "AD", Revision: "AAAAAA", Edition: "ba9876543210", On: manifest.Date{Year: 2027, Month: 3, Day: 15}}
)

const (
	rowanLine = `RW = { revision = "K7M2PX", edition = "0123456789ab", on = 2027-03-14 }`
	alderLine = `AD = { revision = "AAAAAA", edition = "ba9876543210", on = 2027-03-15 }`
)

func TestEnter(t *testing.T) {
	for name, tt := range map[string]struct {
		before string // "-" for no file
		more   []Booklet
		want   string
	}{
		"no file":              {"-", []Booklet{rowan}, opening + "[booklet]\n" + rowanLine + "\n"},
		"empty file":           {"", []Booklet{rowan}, "[booklet]\n" + rowanLine + "\n"},
		"two, in order":        {"", []Booklet{rowan, alder}, "[booklet]\n" + alderLine + "\n" + rowanLine + "\n"},
		"header alone":         {"# mine\n[booklet]", []Booklet{rowan}, "# mine\n[booklet]\n" + rowanLine + "\n"},
		"in the earlier place": {"[booklet]\nRW={on=2020-01-01,revision=\"222222\",edition=\"000000000000\"} # glove box\n# end", []Booklet{rowan}, "[booklet]\nRW=" + strings.TrimPrefix(rowanLine, "RW = ") + " # glove box\n# end"},
		"after words that are not ASCII": {"# Bücher\r\n[booklet]\r\n" + alderLine + " # für später\r\n", []Booklet{rowan},
			"# Bücher\r\n[booklet]\r\n" + alderLine + " # für später\r\n" + rowanLine + "\r\n"},
		"no end of line": {"[booklet]\n" + alderLine, []Booklet{rowan}, "[booklet]\n" + alderLine + "\n" + rowanLine + "\n"},
	} {
		t.Run(name, func(t *testing.T) {
			var data []byte
			if tt.before != "-" {
				data = []byte(tt.before)
			}
			got, err := Enter(data, tt.more)
			if err != nil || string(got) != tt.want {
				t.Errorf("%v\n%q, want\n%q", err, got, tt.want)
			}
			again, err := Enter(got, tt.more)
			if err != nil || string(again) != string(got) {
				t.Errorf("entering the same again changes the file: %v\n%s", err, again)
			}
		})
	}
}

func TestParse(t *testing.T) {
	list, found := Parse(File, []byte("[booklet]\n"+rowanLine+"\n"+alderLine))
	if b, ok := list.Of("RW"); len(found) > 0 || !ok || b.Revision != rowan.Revision || b.Edition != rowan.Edition || b.On != rowan.On {
		t.Errorf("%v %v", list, found)
	}
	if got := list.Vans(); !slices.Equal(got, []string{"AD", "RW"}) {
		t.Errorf("vans %v", got)
	}
	var none *List
	if _, ok := none.Of("RW"); ok || none.Vans() != nil {
		t.Error("no file has a booklet")
	}
}

func TestBrokenFiles(t *testing.T) {
	for text, want := range map[string]string{
		`booklet = { RW = {} }`:                     "No header above booklet",
		"[booklet.RW]\nrevision = \"K7M2PX\"":       "No header above booklet",
		"[booklet]\nrw = {}":                        `"rw" is no van code`,
		"[booklet]\nRW.on = 2027-03-14":             "does not stand on one line",
		"[booklet]\nRW = { revision = \"K7M20X\" }": `"K7M20X" is no revision of a booklet`,
		"[booklet]\nRW = { edition = \"K\" }":       `"K" is no edition of a booklet`,
		"[booklet]\nRW = { on = 3 }":                "on",
		"[booklet]\nRW = 3":                         "RW",
		"[bookelt]\n":                               "bookelt",
	} {
		list, found := Parse(File, []byte(text))
		told := ""
		for _, p := range found {
			told += p.String() + "\n"
		}
		if list != nil || !strings.Contains(told, want) || found[0].Start.Line == 0 {
			t.Errorf("%q: %v\n%s", text, list, told)
		}
		if got, err := Enter([]byte(text), []Booklet{rowan}); err == nil {
			t.Errorf("%q is taken: %s", text, got)
		}
	}
}

// Whatever the file says, entering a booklet leaves all other lines as they are,
// or is refused.
func FuzzEnter(f *testing.F) {
	for _, seed := range []string{"", opening, "[booklet]\n" + alderLine, "[booklet]\r\n" + rowanLine + " # x\r\n", "[booklet.RW]\n", "[booklet]\n\"RW\" = {\n}", "x = 1\n[booklet]\n[other]\n"} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := Enter(data, []Booklet{rowan})
		if err != nil {
			return
		}
		list, _ := Parse(File, got)
		if b, ok := list.Of("RW"); !ok || b.On != rowan.On {
			t.Errorf("%q gives %q", data, got)
		}
		kept := 0
		for line := range strings.Lines(string(data)) {
			if strings.Contains(string(got), strings.TrimRight(line, "\r\n")) {
				kept++
			}
		}
		if lost := strings.Count(string(data), "\n") + 1 - kept; lost > 2 {
			t.Errorf("%q loses lines: %q", data, got)
		}
	})
}
