package label

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// samePieces looks that a register read line by line is the same as one read at
// once, with nothing to say of it. It reports whether it could be read so.
func samePieces(t *testing.T, data []byte) bool {
	t.Helper()
	for _, lines := range []int{1, 2} {
		pieces := inPieces(RegisterFile, data, lines)
		if pieces == nil {
			return false
		}
		if mergeMarks(RegisterFile, data) != nil {
			continue // ParseRegister has refused it before
		}
		whole, found := parseWhole(RegisterFile, data)
		if diff := cmp.Diff(whole, pieces, cmp.AllowUnexported(Register{}, Entry{})); diff != "" || len(found) > 0 {
			t.Errorf("%q, %d lines at a time: %v\n%s", data, lines, found, diff)
		}
	}
	return true
}

func TestRegisterInPieces(t *testing.T) {
	const head = "# ours\naddress = \"https://guide.example\"\n\n[van]\nRW = { name = \"Rowan\", since = 2026-10-02 }\n\n[label]\n"
	line := func(code, fitted string) string {
		return "\"RW " + code + "\" = { fitted = " + fitted + ", system = \"gas/tap\", since = 2026-10-02 }\n"
	}
	whole := head + line("G1", `"a"`) + "\n# läden\n" + line("G2", `"b"`) + line("G3", `"c"`)
	for name, c := range map[string]struct {
		text string
		want bool
	}{
		"as the program keeps it":   {whole, true},
		"no end of the last line":   {strings.TrimSuffix(whole, "\n"), true},
		"line ends of Windows":      {strings.ReplaceAll(whole, "\n", "\r\n"), true},
		"no labels yet":             {head, true},
		"byte order mark":           {"\ufeff" + whole, false},
		"a label twice":             {whole + line("G1", `"d"`), false},
		"a thing twice":             {whole + line("G4", `"a"`), false},
		"another table below":       {whole + "[van]\n", false},
		"no label":                  {whole + line("g5", `"d"`), false},
		"a text over several":       {whole + line("G5", "'''d\n"+line("G6", `"f"`)+"'''"), false},
		"another key":               {whole + "stray = 1\n", false},
		"no header":                 {strings.Replace(whole, "[label]", "label = {}", 1), false},
		"a header and more":         {strings.Replace(whole, "[label]", "[label] # codes", 1), false},
		"a chain that ends nowhere": {whole + `"RW G7" = { fitted = "x", system = "gas/tap", since = 2026-10-02, became = "replaced", now = "RW G9", on = 2027-01-01 }`, false},
		"nothing":                   {"", false},
	} {
		if got := samePieces(t, []byte(c.text)); got != c.want {
			t.Errorf("%s: read in pieces: %v, want %v", name, got, c.want)
		}
	}
}
