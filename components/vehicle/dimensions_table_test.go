package vehicle_test

import (
	"strings"
	"testing"

	"doorpocket/components/internal/published"
	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// body is a van of the sizes named, changed by the pairs of fact and text; an
// empty text takes a fact away.
func body(t *testing.T, changes ...string) table.Fitted {
	t.Helper()
	stated := map[string]string{"length": "6.36 m", "width": "2.05 m", "height": "2.79 m", "wheelbase": "4.035 m"}
	for i := 0; i < len(changes); i += 2 {
		stated[changes[i]] = changes[i+1]
	}
	f := table.Fitted{Name: "body", System: "vehicle/body", Facts: []table.Fact{sample.Choice("kind", "panel-van")}}
	for _, name := range []string{"length", "width", "width_mirrors", "height", "wheelbase", "front_overhang"} {
		if stated[name] != "" {
			f.Facts = append(f.Facts, sample.Fact(t, name, "", quantity.Length, stated[name]))
		}
	}
	return f
}

func shownSize(t *testing.T, f table.Fitted) []string {
	t.Helper()
	return sample.Shown(t, "vehicle/dimensions", sample.Van(t, "body", f))
}

func TestDimensions(t *testing.T) {
	sample.Same(t, shownSize(t, body(t)), []string{
		"height | 2.79 m | 9 ft 2 in",
		"length | 6.36 m | 20 ft 11 in", // 250.4 in
		"width | 2.05 m | 6 ft 9 in",    // 80.7 in
		"wheelbase | 4.04 m | 13 ft 3 in",
	})
	sample.Same(t, shownSize(t, body(t, "height", "9 ft 2 in", "width_mirrors", "2.49 m", "front_overhang", "948 mm")), []string{
		"height | 2.80 m | 9 ft 2 in", // 2.794 m
		"length | 6.36 m | 20 ft 11 in",
		"width | 2.05 m | 6 ft 9 in",
		"width-mirrors | 2.49 m | 8 ft 3 in", // 98.03 in
		"wheelbase | 4.04 m | 13 ft 3 in",
		"front-overhang | 0.95 m | 3 ft 2 in", // 37.3 in
	})
}

func TestDimensionsLacks(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		want   string
	}{
		{"no height", []string{"height", ""}, "lacks body:height: height is not stated"},
		{"no length at all", []string{"length", "0 m"}, "lacks body:length: length is 0 m, which must be above zero: outside what the formula holds for"},
		{"narrow mirrors", []string{"width_mirrors", "1.9 m"},
			"lacks body:width_mirrors: the width across the mirrors, 1.9 m, is less than that of the body, 2.05 m: outside what the formula holds for"},
		{"axles beyond the van", []string{"wheelbase", "6.4 m"},
			"lacks body:wheelbase: the wheelbase, 6.4 m, is not less than the length, 6.36 m: outside what the formula holds for"},
		{"last axle behind the van", []string{"front_overhang", "2.4 m"},
			"lacks body:front_overhang: the front overhang, 2.4 m, and the wheelbase, 4.035 m, are not less than the length, 6.36 m: outside what the formula holds for"},
	} {
		got := shownSize(t, body(t, c.change...))
		last := got[len(got)-1]
		if last != c.want {
			t.Errorf("%s: %q, expected %q", c.name, last, c.want)
		}
		what := strings.ReplaceAll(c.change[0], "_", "-")
		for _, line := range got[:len(got)-1] {
			if strings.HasPrefix(line, what+" ") {
				t.Errorf("%s: the row is there all the same: %q", c.name, line)
			}
		}
	}
}

func TestDimensionsPublished(t *testing.T) {
	heights := published.Get(t, published.Read(t, "vehicle"), "height-to-the-inch")
	for _, row := range heights.Rows {
		got := shownSize(t, body(t, "height", row["m"]))[0]
		if !strings.HasSuffix(got, " | "+row["ft"]) {
			t.Errorf("%q, expected %q (%s)", got, row["ft"], heights.Source)
		}
	}
}

// No figure of the table is smaller than the size that the van states.
func TestDimensionsNeverTooSmall(t *testing.T) {
	for height := 1800; height <= 4200; height += 7 {
		q, err := quantity.New(float64(height), mustUnit(t, "mm"))
		if err != nil {
			t.Fatal(err)
		}
		row := strings.Split(shownSize(t, body(t, "height", q.String()))[0], " | ")
		for _, text := range row[1:] {
			shown, err := quantity.Parse(text, quantity.Length)
			if err != nil {
				t.Fatal(err)
			}
			if order, err := quantity.Compare(shown, q); err != nil || order < 0 {
				t.Errorf("%s is shown as %s", q, text)
			}
		}
	}
}

func mustUnit(t *testing.T, name string) quantity.Unit {
	t.Helper()
	u, ok := quantity.UnitNamed(name)
	if !ok {
		t.Fatalf("no unit %q", name)
	}
	return u
}
