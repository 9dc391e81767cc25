package manifest

import "testing"

func TestBadEscape(t *testing.T) {
	tests := []struct {
		written    string
		at, length int
	}{
		{`"no backslash"`, 0, 0},
		{`"\\ \" \t \u00e9 \U0001F600 \x41"`, 0, 0},
		{"\"\"\"joined \\  \n  lines\"\"\"", 0, 0},
		{`"C:\Vans"`, 3, 2},
		{`"\\\q"`, 3, 2},
		{`"\t\n\u12"`, 5, 4},
		{`"\ud800"`, 1, 6},
		{`'C:\Vans'`, 0, 0},
	}
	for _, test := range tests {
		if at, length := badEscape(test.written); at != test.at || length != test.length {
			t.Errorf("%s: %d+%d, want %d+%d", test.written, at, length, test.at, test.length)
		}
	}
}
