package label

import "testing"

func TestCodes(t *testing.T) {
	for code, want := range map[string]bool{
		"RW": true, "R1": true, "R12": true, "RWXY": true, "R123": true,
		"R": false, "RWXYZ": false, "rw": false, "Rw": false, "1R": false, "": false, "R W": false, "R-W": false, "RÜ": false,
		"../X": false, "R/W": false, `R\W`: false, "%2E": false, "R.": false, "RW\n": false, "\nRW": false,
		"CON": false, "PRN": false, "AUX": false, "NUL": false, "COM1": false, "LPT9": false, "COM": true, "CONS": true,
	} {
		if got := ValidVan(code); got != want {
			t.Errorf("van code %q: %v", code, got)
		}
	}
	for code, want := range map[string]bool{
		"G1": true, "G99": true, "Z10": true,
		"G": false, "G0": false, "G01": false, "G100": false, "g1": false, "GG1": false, "1": false, "": false, "G1 ": false, "G 1": false, "G1\n": false, "Ä1": false,
	} {
		if got := ValidLabel(code); got != want {
			t.Errorf("label code %q: %v", code, got)
		}
	}
}

func TestReserved(t *testing.T) {
	for name, want := range map[string]bool{
		"con": true, "CON": true, "Con.txt": true, "aux.en.md": true, "com0": true, "com9": true, "lpt1.toml": true, "nul.": true,
		"con1": false, "com10": false, "console": false, "a.con": false, "": false, "rowan": false,
	} {
		if got := Reserved(name); got != want {
			t.Errorf("%q: %v", name, got)
		}
	}
}
