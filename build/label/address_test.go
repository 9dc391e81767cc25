package label

import (
	"strings"
	"testing"
)

func TestBase(t *testing.T) {
	for _, c := range []struct{ address, to, reading, root string }{
		{"https://guide.example", "HTTPS://GUIDE.EXAMPLE/RW/G1/", "guide.example/RW/G1/", "/"},
		{"https://guide.example/", "HTTPS://GUIDE.EXAMPLE/RW/G1/", "guide.example/RW/G1/", "/"},
		{"http://guide.example:8080", "HTTP://GUIDE.EXAMPLE:8080/RW/G1/", "guide.example:8080/RW/G1/", "/"},
		{"https://fleet.example/vans", "HTTPS://FLEET.EXAMPLE/vans/RW/G1/", "fleet.example/vans/RW/G1/", "/vans/"}, // case means something in a path
		{"https://fleet.example/our%20vans/", "HTTPS://FLEET.EXAMPLE/our%20vans/RW/G1/", "fleet.example/our%20vans/RW/G1/", "/our%20vans/"},
	} {
		b, err := ParseBase(c.address)
		if err != nil {
			t.Errorf("%s: %v", c.address, err)
			continue
		}
		if got := b.To("RW/G1/"); got != c.to {
			t.Errorf("%s leads to %s, not %s", c.address, got, c.to)
		}
		if got := b.Reading("RW/G1/"); got != c.reading {
			t.Errorf("%s reads %s, not %s", c.address, got, c.reading)
		}
		if got := b.Root(); got != c.root {
			t.Errorf("%s has the root %s, not %s", c.address, got, c.root)
		}
	}
	if none := (Base{}); none.To("RW/")+none.Reading("RW/") != "" || none.Root() != "/" {
		t.Error("no address leads somewhere")
	}
}

func TestBaseRefuses(t *testing.T) {
	for address, want := range map[string]string{
		"":                              "https://",
		"guide.example":                 "https://",
		"ftp://guide.example":           "https://",
		"javascript:alert(1)":           "https://",
		"https://":                      "a host and a path",
		"https:///path":                 "a host and a path",
		"https://me:pw@guide.example":   "a host and a path",
		"https://guide.example/?x=1":    "a host and a path",
		"https://guide.example/#top":    "a host and a path",
		"https://guide.example:port":    "no web address",
		"https://guide .example":        "no web address",
		"https://guide.example/\x00":    "no web address",
		"https://[guide.example":        "no web address",
		"https://guide.example/%zz":     "no web address",
		" https://guide.example":        "no web address",
		"//guide.example/protocol-less": "https://",
	} {
		if b, err := ParseBase(address); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %+v, %v, want %q", address, b, err, want)
		}
	}
}
