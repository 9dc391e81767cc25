package label

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// drawn writes a symbol as a picture, four pixels a module, quiet zone
// included.
func drawn(t *testing.T, s Symbol) string {
	t.Helper()
	const scale = 4
	side := s.Side() * scale
	picture := image.NewGray(image.Rect(0, 0, side, side))
	for y := range side {
		for x := range side {
			mx, my := x/scale-Quiet, y/scale-Quiet
			dark := mx >= 0 && my >= 0 && mx < s.Size && my < s.Size && s.Dark(mx, my)
			if !dark {
				picture.Set(x, y, color.White)
			}
		}
	}
	name := filepath.Join(t.TempDir(), "symbol.png")
	file, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = file.Close() }()
	if err := png.Encode(file, picture); err != nil {
		t.Fatal(err)
	}
	return name
}

// A reader that is not ours reads what was written. Sizes are those of ISO/IEC
// 18004 at level Q: version 2 (25 modules) holds 29 characters of the small
// mode and 20 bytes, version 3 (29 modules) 47 and 32, from memory.
func TestSymbolIsRead(t *testing.T) {
	for text, size := range map[string]int{
		"HTTPS://GUIDE.EXAMPLE/RW/G1/":                    25,
		"HTTPS://G.EXAMPLE/RW/W12/ /1":                    25,
		"HTTPS://GUIDE.LANTERNFOLD.EXAMPLE/RW/G1/":        29,
		"HTTPS://FLEET.EXAMPLE/vans/RW/G1":                29,
		"HTTPS://GUIDE.EXAMPLE/RW/G1/de/":                 29,
		"HTTPS://GUIDE.EXAMPLE:8080/RWXY/Z99/" + "A/B/C/": 29,
	} {
		s, err := NewSymbol(text, LevelQ)
		if err != nil {
			t.Fatal(err)
		}
		if s.Size != size || s.Side() != size+8 {
			t.Errorf("%s: %d modules, not %d", text, s.Size, size)
		}
		out, err := exec.Command("zbarimg", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", drawn(t, s)).Output()
		if got := strings.TrimRight(string(out), "\n"); err != nil || got != text {
			t.Errorf("%s is read as %q, %v", text, got, err)
		}
	}
}

// The path covers the dark modules and no others.
func TestPathOfSymbol(t *testing.T) {
	s, err := NewSymbol("HTTPS://GUIDE.EXAMPLE/RW/G1/", LevelQ)
	if err != nil {
		t.Fatal(err)
	}
	covered := map[[2]int]int{}
	for row := range strings.SplitSeq(strings.TrimPrefix(s.Path(), "M"), "M") {
		x, y := 0, 0
		for i, piece := range strings.Split(row, "m") {
			skip, run := 0, 0
			form, want := "%d 0h%d", []any{&skip, &run}
			if i == 0 {
				form, want = "%d %d.5h%d", []any{&skip, &y, &run}
			}
			if n, err := fmt.Sscanf(piece, form, want...); n != len(want) || err != nil || run < 1 {
				t.Fatalf("piece %q: %v", piece, err)
			}
			x += skip
			for range run {
				covered[[2]int{x - Quiet, y - Quiet}]++
				x++
			}
		}
	}
	for y := range s.Size {
		for x := range s.Size {
			n := covered[[2]int{x, y}]
			delete(covered, [2]int{x, y})
			if (n == 1) != s.Dark(x, y) || n > 1 {
				t.Fatalf("module %d %d is covered %d times", x, y, n)
			}
		}
	}
	if len(covered) > 0 {
		t.Errorf("covered outside the symbol: %v", covered)
	}
}

func TestSymbolTooLong(t *testing.T) {
	if _, err := NewSymbol(strings.Repeat("x", 2000), LevelQ); err == nil || !strings.Contains(err.Error(), "QR symbol of") {
		t.Errorf("%v", err)
	}
}
