package prose_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"doorpocket/components/prose"
)

func TestSections(t *testing.T) {
	p := page(t, "Intro.\n\n## Second *cylinder* {when=\"cylinders > 1\"}\n\nA {$net}.\n\n### Part\n\nSetext\n------\n\n## Fill {$net}\n")
	if got := p.Intro.Text(full); got != "Intro." {
		t.Errorf("intro %q", got)
	}
	var got []string
	for _, s := range p.Sections {
		got = append(got, fmt.Sprintf("%s|%s|%s|%s|%s", s.At, s.ID, s.Title.HTML(full), s.When, s.Body.Text(full)))
	}
	want := []string{
		"page.md:3:1|second-cylinder|Second <em>cylinder</em>|cylinders > 1|A 6 kg. Part",
		"page.md:9:1|setext|Setext||",
		"page.md:12:1|fill|Fill 6 kg||",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if n := len(p.Docs()); n != 7 {
		t.Errorf("%d runs of text, want the intro and three sections of two", n)
	}
}

func TestSectionIDs(t *testing.T) {
	p := page(t, "## A\n\n## A 2\n\n## A\n\n## A\n\n## ???\n\n## Grüße, 5 °C\n\n## Text\n\n## X call\n")
	var got []string
	for _, s := range p.Sections {
		got = append(got, s.ID)
	}
	want := []string{"a", "a-2", "a-3", "a-4", "section", "grüße-5-c", "section-text", "section-x-call"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Each hole knows where its own name stands, not that of an earlier or longer
// one.
func TestHolesKnowTheirPlace(t *testing.T) {
	source := "Ü {$net_weight} {$net}\n\n{$net :unit unit=lb} [a](system:gas/x)\n\n[b](system:gas/x) [r][r]\n\n![c](table:gas/t)\n\n[r]: fitted:panel\n"
	var got []string
	for _, p := range page(t, source).Intro.Pieces {
		if p.Name != "" {
			got = append(got, fmt.Sprintf("%s+%d %s", p.At, p.At.Length, p.Name))
		}
	}
	want := []string{
		"page.md:1:3+12 net_weight", "page.md:1:17+5 net", "page.md:3:1+5 net", "page.md:3:26+12 gas/x",
		"page.md:5:5+12 gas/x", "page.md:9:6+12 panel", "page.md:7:6+11 gas/t",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestHolesAreListed(t *testing.T) {
	doc := page(t, "{$a} {$b :unit unit=psi} [x](system:gas/x)\n\n![Alt](table:gas/t)\n").Intro
	names := func(list []prose.Piece) string {
		var all []string
		for _, p := range list {
			all = append(all, strings.Join([]string{p.Scheme, p.Name, p.Unit, p.Alt}, "|"))
		}
		return strings.Join(all, " ")
	}
	for got, want := range map[string]string{
		names(doc.Values()): "|a|| |b|psi|",
		names(doc.Links()):  "system|gas/x||",
		names(doc.Embeds()): "table|gas/t||Alt",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	if doc.Empty() || !(prose.Doc{}).Empty() || !page(t, "").Intro.Empty() {
		t.Error("Empty is wrong")
	}
}
