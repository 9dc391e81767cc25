package label

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

type capacity struct {
	Version      int
	Level        string
	Alphanumeric int
	Bytes        int
	Modules      int
}

func capacities(t *testing.T) map[string][]capacity {
	t.Helper()
	var content struct {
		Check []struct {
			ID, What, Source, Basis, Note string
			Rows                          []capacity
		}
	}
	if _, err := toml.DecodeFile("../../testdata/published/qr.toml", &content); err != nil {
		t.Fatal(err)
	}
	all := map[string][]capacity{}
	for _, c := range content.Check {
		if c.Source == "" || c.Basis == "" {
			t.Errorf("%s has no source", c.ID)
		}
		all[c.ID] = c.Rows
	}
	return all
}

// A symbol is the smallest that holds its text, in the mode that holds most of
// it: full to the last character it has the published version, and with one more
// the next.
func TestSmallestVersion(t *testing.T) {
	for id, rows := range capacities(t) {
		for _, c := range rows {
			level, ok := ParseLevel(c.Level)
			if !ok || level.String() != c.Level {
				t.Fatalf("level %q", c.Level)
			}
			for text, most := range map[string]int{"A": c.Alphanumeric, "a": c.Bytes} {
				if most == 0 {
					continue
				}
				s, err := NewSymbol(strings.Repeat(text, most), level)
				if err != nil || id == "capacity" && s.Version() != c.Version || s.Version() > c.Version {
					t.Errorf("%s %d-%s: %d of %q: version %d, %v", id, c.Version, c.Level, most, text, s.Version(), err)
				}
				if s.Alphanumeric != (text == "A") {
					t.Errorf("%q in the wrong mode", text)
				}
				if c.Modules != 0 && s.Size != c.Modules {
					t.Errorf("%d modules, not %d", s.Size, c.Modules)
				}
				more, err := NewSymbol(strings.Repeat(text, most+1), level)
				if id == "capacity" && (err != nil || more.Version() != c.Version+1) {
					t.Errorf("%d-%s: %d of %q: version %d, %v", c.Version, c.Level, most+1, text, more.Version(), err)
				}
				if id == "largest" && err == nil {
					t.Errorf("more than the largest symbol holds was encoded")
				}
			}
		}
	}
}

// What is printed for a page, on every sort of address.
func TestAddresses(t *testing.T) {
	for _, c := range []struct {
		base, to, reading string
		version           int // at level Q
		small             bool
	}{
		{"https://guide.lanternfold.example", "HTTPS://GUIDE.LANTERNFOLD.EXAMPLE/RW/G1/", "guide.lanternfold.example/RW/G1/", 3, true},
		{"https://guide.example/", "HTTPS://GUIDE.EXAMPLE/RW/G1/", "guide.example/RW/G1/", 2, true},
		{"HTTP://Guide.Example:8080", "HTTP://GUIDE.EXAMPLE:8080/RW/G1/", "Guide.Example:8080/RW/G1/", 3, true},
		{"https://host.example:8443/VANS", "HTTPS://HOST.EXAMPLE:8443/VANS/RW/G1/", "host.example:8443/VANS/RW/G1/", 3, true},
		{"https://host.example/vans", "HTTPS://HOST.EXAMPLE/vans/RW/G1/", "host.example/vans/RW/G1/", 3, false},
		{"https://host.example/our vans", "HTTPS://HOST.EXAMPLE/our%20vans/RW/G1/", "host.example/our%20vans/RW/G1/", 4, false},
		{"https://gäste.example", "HTTPS://XN--GSTE-LOA.EXAMPLE/RW/G1/", "gäste.example/RW/G1/", 3, true},
	} {
		b, err := ParseBase(c.base)
		if err != nil {
			t.Errorf("%s: %v", c.base, err)
			continue
		}
		to := b.To("RW/G1/")
		if to != c.to || b.Reading("RW/G1/") != c.reading {
			t.Errorf("%s: %s, read as %s", c.base, to, b.Reading("RW/G1/"))
		}
		s, err := NewSymbol(to, LevelQ)
		if err != nil || s.Version() != c.version || s.Alphanumeric != c.small || Small(to) != c.small {
			t.Errorf("%s: version %d, small %v, %v", to, s.Version(), s.Alphanumeric, err)
		}
	}
}

// The quiet zone is four modules wide on every side, and nothing is drawn in it.
func TestQuietZone(t *testing.T) {
	s, err := NewSymbol("HTTPS://GUIDE.EXAMPLE/RW/G1/", LevelQ)
	if err != nil {
		t.Fatal(err)
	}
	if s.Side() != s.Size+8 || !s.Dark(0, 0) || !strings.HasPrefix(s.Path(), "M4 4") {
		t.Errorf("side %d, path %.20s", s.Side(), s.Path())
	}
}
