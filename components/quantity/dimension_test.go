package quantity

import "testing"

func TestDimensionNames(t *testing.T) {
	seen := map[string]bool{}
	for _, d := range Dimensions() {
		name := d.String()
		if name == "" || name == "none" || seen[name] {
			t.Errorf("dimension %d has the name %q", d, name)
		}
		seen[name] = true
		if back, ok := DimensionNamed(name); !ok || back != d {
			t.Errorf("DimensionNamed(%q) = %v, %v", name, back, ok)
		}
	}
	if len(seen) != 17 {
		t.Errorf("%d dimensions, expected 17", len(seen))
	}
}

func TestDimensionUnnamed(t *testing.T) {
	for _, name := range []string{"", "none", "Mass", "weight", "temperature difference"} {
		if d, ok := DimensionNamed(name); ok {
			t.Errorf("DimensionNamed(%q) = %v", name, d)
		}
	}
	if got := Dimension(200).String(); got != "none" {
		t.Errorf("Dimension(200) is called %q", got)
	}
}
