package problem

import (
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	valid := []string{"name", "code", "spec_date", "payload", "at", "up", "net", "küche", "isolation-taps", ""}
	tests := []struct{ word, want string }{
		{"nmae", "name"},
		{"name", "name"},
		{"Payload", "payload"},
		{"PAYLOAD", "payload"},
		{"spec-date", "spec_date"},
		{"specdate", "spec_date"},
		{"kuche", "küche"},
		{"KÜCHE", "küche"},
		{"isolating-tap", "isolation-taps"},
		{"isolations-of-taps", "isolation-taps"},
		{"ta", ""},        // every letter of "at" would change
		{"an", "at"},      // one would
		{"wheelbase", ""}, // near nothing
		{"", ""},          // no word
		{"cod", "code"},   // one letter short
		{"ent", "net"},    // two letters changed places
		{"payloads", "payload"},
	}
	for _, test := range tests {
		if got := Nearest(test.word, valid); got != test.want {
			t.Errorf("Nearest(%q) = %q, want %q", test.word, got, test.want)
		}
	}
}

func TestNearestIsSteady(t *testing.T) {
	if got := Nearest("bat", []string{"cat", "hat"}); got != "cat" {
		t.Errorf("got %q, want the first of two that are as near", got)
	}
	if got := Nearest(strings.Repeat("x", 1<<20), []string{"x"}); got != "" {
		t.Errorf("got %q for a word without end", got)
	}
	if got := Nearest("x", nil); got != "" {
		t.Errorf("got %q of nothing", got)
	}
}
