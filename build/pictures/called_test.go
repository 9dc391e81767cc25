package pictures

import (
	"slices"
	"testing"
)

func TestFilesAreCalledAfterThings(t *testing.T) {
	things := []string{"gas", "gas-locker", "gas-locker-2", "bed", "hot-water"}
	for file, want := range map[string]struct{ name, words string }{
		"gas-locker.jpg":          {"gas-locker", ""},
		"gas.jpg":                 {"gas", ""},
		"gas-taps all closed.jpg": {"gas", "Taps all closed"},
		"AD/gas-locker open with both cylinders.jpg": {"gas-locker", "Open with both cylinders"},
		"gas_locker_the_left_valve.PNG":              {"gas-locker", "The left valve"},
		"Gas Locker 3 the strap.JPEG":                {"gas-locker", "The strap"},
		"gas-locker-2 behind the door.heic":          {"gas-locker-2", "Behind the door"},
		"gas-locker 2 behind the door.heic":          {"gas-locker-2", "Behind the door"},
		"gas-locker-20.jpg":                          {"gas-locker-2", ""},
		"gas-locker.the valve.jpg":                   {"gas-locker", "The valve"},
		"bed2.jpg":                                   {"bed", ""},
		"bed2 made up.jpg":                           {"bed", "Made up"},
		"bedding.jpg":                                {"", ""},
		"IMG_1234.jpg":                               {"", ""},
		"bed-IMG_1234.jpg":                           {"bed", ""},
		"bed IMG 1234.jpg":                           {"bed", ""},
		"bed IMG_20261002_101112 the lever.jpg":      {"bed", "The lever"},
		"bed-DSC00123.jpg":                           {"bed", ""},
		"bed 1 (2).jpg":                              {"bed", ""},
		"bed the lever (2).jpg":                      {"bed", "The lever"},
		"bed - copy.jpg":                             {"bed", ""},
		"bed x.jpg":                                  {"bed", ""},
		"hot-water fuse 7, 16A.jpg":                  {"hot-water", "Fuse 7, 16A"},
		"hot-water o\u0308ffnen.jpg":                 {"hot-water", "Öffnen"},
		"hot water \u00e9tat.jpg":                    {"hot-water", "État"},
		"hot-water":                                  {"hot-water", ""},
		".jpg":                                       {"", ""},
		"hot-water.what the panel shows at 60 degrees.webp": {"hot-water", "What the panel shows at 60 degrees"},
	} {
		c := NameOf(file)
		name := c.After(things)
		if name != want.name {
			t.Errorf("%q is called after %q, want %q", file, name, want.name)
			continue
		}
		if words := c.Words(name); name != "" && words != want.words {
			t.Errorf("%q says %q, want %q", file, words, want.words)
		}
	}
}

func TestFilesInTheOrderOfPeople(t *testing.T) {
	want := []string{"bed.jpg", "bed 1.jpg", "bed-2.jpg", "bed-02 b.jpg", "Bed_10.jpg", "bed-100.jpg", "bed-a.jpg", "bed-a-9.jpg", "bed-b.jpg", "gas.jpg"}
	got := slices.Clone(want)
	slices.Reverse(got)
	slices.SortFunc(got, func(a, b string) int { return NameOf(a).Compare(NameOf(b)) })
	if !slices.Equal(got, want) {
		t.Errorf("%q\nwant %q", got, want)
	}
}

func FuzzCalled(f *testing.F) {
	for _, name := range []string{"gas-locker open.jpg", "AD/bed2.heic", "bed\xff\x00.png", "BED\u0130 x.jpg", "..", "(1).jpg", "bed 00 01.jpg"} {
		f.Add(name, "bed-10 a.jpg")
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		x, y := NameOf(a), NameOf(b)
		if x.Compare(y) != -y.Compare(x) || x.Compare(x) != 0 {
			t.Errorf("%q and %q have no order", a, b)
		}
		name := x.After([]string{"bed", "gas-locker"})
		if words := x.Words(name); words != "" && !slices.ContainsFunc([]rune(words), func(r rune) bool { return r > ' ' }) {
			t.Errorf("%q says %q", a, words)
		}
		x.Beginnings()
	})
}
