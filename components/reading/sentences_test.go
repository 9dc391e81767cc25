package reading

import (
	"slices"
	"strings"
	"testing"
)

func TestSentences(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"plain", "Close the valve. Wait! Is it out? Good.", []string{"Close the valve.", "Wait!", "Is it out?", "Good."}},
		{"no end", "Close the valve", []string{"Close the valve"}},
		{"wrapped", "Close the\nvalve. Wait.", []string{"Close the valve.", "Wait."}},
		{"paragraphs", "Close it\n\nWait a minute", []string{"Close it", "Wait a minute"}},
		{"items", "You need:\n- a spanner\n- two\n  hands\n1. Close it.\n2) Wait.\n12. Look.", []string{"You need:", "a spanner", "two hands", "Close it.", "Wait.", "Look."}},
		{"headings", "# In the cold\nPropane works.\n## Never\nHeat it", []string{"In the cold", "Propane works.", "Never", "Heat it"}},
		{"a number sign in the text", "Look at #2. Then go.", []string{"Look at #2.", "Then go."}},
		{"decimals", "Fill 2.5 bar. Front 5.0 and rear 5.5.", []string{"Fill 2.5 bar.", "Front 5.0 and rear 5.5."}},
		{"decimal before a capital", "It weighs 2.5 T in all.", []string{"It weighs 2.5 T in all."}},
		{"goes on", "Some things, e.g. The Times, i.e. Papers.", []string{"Some things, e.g. The Times, i.e. Papers."}},
		{"small letter follows", "Wait, etc. and look. Go.", []string{"Wait, etc. and look.", "Go."}},
		{"etc. at the end", "Pans, cups etc. Lock them.", []string{"Pans, cups etc.", "Lock them."}},
		{"no. before a number", "See no. 5. The answer is no. Go.", []string{"See no. 5.", "The answer is no.", "Go."}},
		{"max. before a number", "Fill to max. 60 and no more.", []string{"Fill to max. 60 and no more."}},
		{"titles and initials", "Ask Dr. Green. Mr. A. B. Cook is out. J. Smith is in.", []string{"Ask Dr. Green.", "Mr. A. B. Cook is out.", "J. Smith is in."}},
		{"a letter at the end", "Lever in P. Engine off.", []string{"Lever in P.", "Engine off."}},
		{"a unit at the end", "It is 12 V. Wait.", []string{"It is 12 V.", "Wait."}},
		{"hours", "It opens at 9 a.m. and shuts at 5 p.m. Be there.", []string{"It opens at 9 a.m. and shuts at 5 p.m.", "Be there."}},
		{"quotes and brackets", `He said "stop." Stop (at once!). Go.`, []string{`He said "stop."`, "Stop (at once!).", "Go."}},
		{"several marks", "What?! Wait... Go… Stop", []string{"What?!", "Wait...", "Go…", "Stop"}},
		{"a number begins", "Close both. 2 kg are left.", []string{"Close both.", "2 kg are left."}},
		{"an address", "Read guide.example and info@guide.example. Call us.", []string{"Read guide.example and info@guide.example.", "Call us."}},
		{"empty", " \n \n", nil},
	} {
		if got := Sentences(c.text); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}

func TestWords(t *testing.T) {
	for text, want := range map[string]string{
		"Don't touch it: it's hot!":  "Don't|touch|it|it's|hot",
		"A left-hand nut, \"new\".":  "A|left-hand|nut|new",
		"on/off – or 2.5 bar (80 %)": "on|off|or|2.5|bar|80",
		"12 V, 5 °C.":                "12|V|5|C",
		"— … !":                      "",
	} {
		if got := strings.Join(Words(text), "|"); got != want {
			t.Errorf("%q: %s, not %s", text, got, want)
		}
	}
}

// Whatever the text, no word is lost or made by parting it.
func FuzzSentences(f *testing.F) {
	f.Add("Close it. Wait 2.5 min.\n\n- one\n# Two\nthree")
	f.Add("Mr. J. P. went… \"Out!\" he said.")
	f.Fuzz(func(t *testing.T, text string) {
		if strings.ContainsAny(text, "#-*+•)") || len(text) > 2000 {
			t.Skip() // marks of items are dropped on purpose, with their numbers
		}
		var parted []string
		for _, s := range Sentences(text) {
			if strings.TrimSpace(s) == "" {
				t.Errorf("an empty sentence in %q", text)
			}
			parted = append(parted, strings.Fields(s)...)
		}
		var whole []string
		for line := range strings.SplitSeq(text, "\n") {
			whole = append(whole, strings.Fields(itemMark.ReplaceAllString(line, ""))...)
		}
		if !slices.Equal(parted, whole) {
			t.Errorf("%q: %q, not %q", text, parted, whole)
		}
	})
}
