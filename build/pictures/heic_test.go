package pictures

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// rotated is a HEIC of the samples that says itself that its image is to be turned
// to the left by so many quarters: a property more, and the places of what follows
// it put right.
func rotated(t testing.TB, file []byte, quarters byte) []byte {
	t.Helper()
	be := binary.BigEndian
	property := []byte{0, 0, 0, 9, 'i', 'r', 'o', 't', quarters}
	out := bytes.Clone(file)
	at := func(kind string) int {
		i := bytes.Index(out, []byte(kind))
		if i < 0 {
			t.Fatalf("the sample has no %s", kind)
		}
		return i - 4
	}
	grow := func(kind string, n int) {
		i := at(kind)
		be.PutUint32(out[i:], be.Uint32(out[i:])+uint32(n))
	}
	// The list of properties gets one, and the first image, which has as many as
	// there were, gets it.
	list := at("ipco")
	end := list + int(be.Uint32(out[list:]))
	count := byte(0)
	for i := list + 8; i < end; i += int(be.Uint32(out[i:])) {
		count++
	}
	out = append(out[:end:end], append(property, out[end:]...)...)
	use := at("ipma") + 4 + 4 + 4 + 4 + 2 // size, kind, version, entries, item
	if out[use] != count {
		t.Fatalf("the sample's image has %d properties of %d", out[use], count)
	}
	out[use]++
	last := use + int(out[use])
	out = append(out[:last:last], append([]byte{0x80 | (count + 1)}, out[last:]...)...)
	const more = 9 + 1
	grow("meta", more)
	grow("iprp", more)
	grow("ipco", 9)
	grow("ipma", 1)
	places := at("iloc") + 8 + 4
	if out[places] != 0x44 || out[places+1] != 0x40 {
		t.Fatalf("the sample's places are %x", out[places:places+2])
	}
	items := int(be.Uint16(out[places+2:]))
	for i := range items { // item, file, base, how many, from, length
		base := out[places+4+i*18+4:]
		be.PutUint32(base, be.Uint32(base)+more)
	}
	return out
}

// However a HEIC says how it is turned, it is turned once: by the program where the
// file itself says so, here where only the camera's note does.
func TestHEICUpright(t *testing.T) {
	plain, noted := read(t, "quadrants.heic"), read(t, "located.heic") // noted as 6
	for name, c := range map[string]struct {
		data []byte
		want orientation
	}{
		"upright.heic":             {plain, upright},
		"noted.heic":               {noted, 6},
		"turned.heic":              {rotated(t, plain, 3), 6},
		"turned-the-other-way.JPG": {rotated(t, plain, 1), 8},
		"upside-down.heic":         {rotated(t, plain, 2), 3},
		"turned-and-noted.heic":    {rotated(t, noted, 3), 6},
		"not-turned-but-noted.jpg": {rotated(t, noted, 0), upright},
	} {
		made, images := mustMakeBoth(t, name, c.data)
		checkCorners(t, name, images[0], c.want)
		for _, v := range made.All() {
			for _, trace := range []string{canary, "Exif", "xmp", "ICC_PROFILE", "ftyp"} {
				if bytes.Contains(v.Data, []byte(trace)) {
					t.Errorf("%s: %s holds %q", name, v.Name, trace)
				}
			}
		}
	}
	if !bytes.Contains(noted, []byte(canary)) {
		t.Error("the sample notes nothing")
	}
}

// fakeProgram puts a program that reads HEIC in the place of that of the machine.
func fakeProgram(t *testing.T, name, script string) {
	t.Helper()
	folder := t.TempDir()
	if script != "" {
		if err := os.WriteFile(filepath.Join(folder, name), []byte("#!/bin/sh\n"+script+"\n"), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	t.Setenv("PATH", folder)
}

func TestHEICPrograms(t *testing.T) {
	folder := t.TempDir()
	put := func(name string, data []byte) string {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
		return filepath.Join(folder, name)
	}
	upAndNoted := put("noted.jpg", segments(asJPEG(t, quadrants(96, 64)), exifSegment(held(binary.BigEndian, 6))))
	huge := put("huge.png", claiming(t, 64000, 64000))
	plain, turned := read(t, "quadrants.heic"), rotated(t, read(t, "quadrants.heic"), 3)
	copied := func(from, to string) string { return fmt.Sprintf("/bin/cp '%s' %s", from, to) }
	for name, c := range map[string]struct {
		program, script string
		data            []byte
		want            orientation
		refused         string
	}{
		"turns and leaves the note":     {"heif-dec", copied(upAndNoted, "photo.jpg"), turned, upright, ""},
		"leaves the note of one unsaid": {"heif-dec", copied(upAndNoted, "photo.jpg"), plain, 6, ""},
		"the older name":                {"heif-convert", copied(upAndNoted, "photo.jpg"), turned, upright, ""},
		"several images":                {"heif-dec", copied(upAndNoted, "photo-1.jpg") + "; echo no >photo-2.jpg", turned, upright, ""},
		"is told what to do":            {"heif-dec", `[ "$1 $2 $3 $4" = "-q 95 photo.heic photo.jpg" ] && [ -s photo.heic ] && ` + copied(upAndNoted, "photo.jpg"), turned, upright, ""},
		"gives up":                      {"heif-dec", "echo starting; echo 'Could not read: no such codec.' >&2; exit 2", plain, 0, `cannot be decoded. It is a HEIC, and heif-dec says: Could not read: no such codec. Copy it again`},
		"gives up in silence":           {"heif-dec", "exit 3", plain, 0, "heif-dec says: exit status 3. Copy"},
		"makes nothing":                 {"heif-convert", "exit 0", plain, 0, "heif-convert says: it makes no JPEG"},
		"makes something huge":          {"heif-dec", copied(huge, "photo.jpg"), plain, 0, "too large. It is 64000 by 64000 pixels"},
		"makes something else":          {"heif-dec", "echo hello >photo.jpg", plain, 0, "no picture that can be read"},
		"never ends":                    {"heif-dec", "/bin/sleep 100", plain, 0, "cannot be read in time. heif-dec has worked"},
		"claims to be huge":             {"heif-dec", "echo ran >&2; exit 9", widened(t, plain, 64000), 0, "too large. It is 64000 by 64000 pixels. That is 4096 megapixels"},
		"says no size":                  {"heif-dec", "echo ran >&2; exit 9", boxed("heic", "mif1"), 0, "it is a film"},
		"is not there":                  {"", "", plain, 0, "apt install libheif-examples"},
		"is not there for a huge one":   {"", "", widened(t, plain, 64000), 0, "too large"},
	} {
		t.Run(name, func(t *testing.T) {
			fakeProgram(t, c.program, c.script)
			t.Setenv("TMPDIR", t.TempDir())
			limit := 20 * time.Second
			if name == "never ends" {
				limit = 200 * time.Millisecond
			}
			file, err := source{name: "photo.jpg", data: c.data}.decodable(limit)
			if err == nil {
				_, err = file.decode()
			}
			var refusal *Refusal
			switch {
			case c.refused == "" && err != nil:
				t.Fatal(err)
			case c.refused == "":
				if got := file.orientation(); got != c.want {
					t.Errorf("orientation %d, want %d", got, c.want)
				}
			case !errors.As(err, &refusal) || !strings.Contains(refusal.Error(), c.refused):
				t.Errorf("%v does not say %q", err, c.refused)
			case refusal.NeedsProgram != (name == "is not there") || strings.Contains(refusal.Error(), "ran"):
				t.Errorf("%+v", refusal)
			}
			if left, _ := filepath.Glob(filepath.Join(os.TempDir(), "doorpocket-*", "photo.heic")); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
}

// widened is a HEIC of the samples that claims to be a square of so many pixels.
func widened(t testing.TB, file []byte, side uint32) []byte {
	t.Helper()
	out := bytes.Clone(file)
	i := bytes.Index(out, []byte("ispe"))
	if i < 0 {
		t.Fatal("the sample says no size")
	}
	binary.BigEndian.PutUint32(out[i+8:], side)
	binary.BigEndian.PutUint32(out[i+12:], side)
	return out
}

func FuzzBoxClaims(f *testing.F) {
	for _, name := range []string{"quadrants.heic", "located.heic"} {
		f.Add(read(f, name))
		f.Add(read(f, name)[:200])
	}
	f.Add(rotated(f, read(f, "quadrants.heic"), 1))
	f.Add([]byte("\x00\x00\x00\x01meta\xff\xff\xff\xff\xff\xff\xff\xff"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if c := boxClaims(data); len(c.sizes) > len(data)/20 {
			t.Errorf("%d sizes in %d bytes", len(c.sizes), len(data))
		}
	})
}
