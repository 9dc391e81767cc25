package roster

import "testing"

func TestHarmlessCells(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "a": "a", "-5": "-5", "-0.5": "-0.5", "6-7": "6-7",
		"=1+1": "'=1+1", "+441632960001": "'+441632960001", "-1+2": "'-1+2", "-": "'-", "--5": "'--5", "@a": "'@a", "\ta": "'\ta", "-inf": "'-inf",
	} {
		if got := HarmlessAll([][]string{{text}})[0][0]; got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
