package publication_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/draw"
	"image/jpeg"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rwcarlsen/goexif/exif"

	"doorpocket/build/pictures/webp"
	"doorpocket/build/sample"
)

// snapshot is a photograph that somebody took somewhere: what an independent reader
// finds in it beside the image.
type snapshot struct {
	data   []byte
	whole  bool     // it can be decoded
	traces []string // the place in every form in which it could be written, the camera, the moment
}

// snapshots are the samples of a library that reads EXIF: photographs that people
// sent to its authors, with the place where they were taken.
func snapshots(t *testing.T) []snapshot {
	t.Helper()
	const module = "github.com/rwcarlsen/goexif"
	folder, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", module).Output()
	if err != nil {
		t.Fatalf("where the samples of %s are: %v", module, err)
	}
	var all []snapshot
	for _, pattern := range []string{"exif/*.jpg", "exif/samples/*.jpg"} {
		names, err := filepath.Glob(filepath.Join(strings.TrimSpace(string(folder)), pattern))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			note, err := exif.Decode(bytes.NewReader(data))
			if err != nil {
				continue
			}
			latitude, longitude, err := note.LatLong()
			if err != nil || latitude == 0 && longitude == 0 {
				continue
			}
			_, err = jpeg.Decode(bytes.NewReader(data))
			s := snapshot{data: data, whole: err == nil}
			for _, degrees := range []float64{latitude, longitude} {
				s.traces = append(s.traces, strconv.FormatFloat(degrees, 'f', 4, 64)[:6])
			}
			for _, field := range []exif.FieldName{exif.Make, exif.Model, exif.DateTimeOriginal} {
				if tag, err := note.Get(field); err == nil {
					if text, err := tag.StringVal(); err == nil && len(text) >= 4 {
						s.traces = append(s.traces, text)
					}
				}
			}
			all = append(all, s)
		}
	}
	return all
}

// noted runs a second reader and writer of metadata, and gives what it prints.
func noted(t *testing.T, words ...string) []byte {
	t.Helper()
	out, err := exec.Command("exiftool", words...).Output()
	if err != nil {
		t.Fatalf("exiftool %v: %v", words, err)
	}
	return out
}

// inOtherFormats writes the image of a photograph as PNG and WebP, and puts all that
// the photograph says of itself, and more, into them and into a HEIC.
func inOtherFormats(t *testing.T, photo []byte) map[string][]byte {
	t.Helper()
	folder := t.TempDir()
	from := filepath.Join(folder, "from.jpg")
	m, err := jpeg.Decode(bytes.NewReader(photo))
	if err != nil {
		t.Fatal(err)
	}
	var asPNG bytes.Buffer
	if err := png.Encode(&asPNG, m); err != nil {
		t.Fatal(err)
	}
	encoder, err := webp.Shared()
	if err != nil {
		t.Fatal(err)
	}
	asWebP, err := encoder.Encode(t.Context(), rgba(m), 90)
	if err != nil {
		t.Fatal(err)
	}
	heic, err := os.ReadFile("../pictures/testdata/quadrants.heic")
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]byte{}
	for name, data := range map[string][]byte{"from.jpg": photo, "all.jpg": photo, "all.png": asPNG.Bytes(), "all.webp": asWebP, "all.heic": heic} {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
		if name != "from.jpg" {
			all[name] = nil
		}
	}
	for name := range all {
		file := filepath.Join(folder, name)
		words := []string{"-q", "-m", "-overwrite_original", "-TagsFromFile", from, "-all:all", "-xmp:all<gps:all",
			"-XMP:Creator=CANARY-7LM", "-XMP:GPSLatitude=39.9155", "-XMP:GPSLongitude=116.3908"}
		if strings.HasSuffix(name, ".jpg") {
			words = append(words, "-IPTC:City=CANARY-7LM", "-Comment=CANARY-7LM")
		}
		noted(t, append(words, file)...)
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = data
		if said := string(noted(t, "-s", "-G1", "-a", file)); strings.Count(said, "GPSLatitude ") < 2 || !bytes.Contains(data, []byte("CANARY-7LM")) {
			t.Fatalf("%s says nothing of where it was taken: it proves nothing\n%s", name, said)
		}
	}
	return all
}

// innocent are the groups of what the second reader says of any picture: its file,
// its size, how it is packed.
var innocent = []string{"SourceFile", "ExifTool", "System", "File", "RIFF", "Composite"}

// Real photographs with the place where they were taken lose it, and all else that
// was noted beside the image: two independent readers find nothing in what is
// published, and no byte of the whole output, for hirers or staff, holds a trace.
func TestRealPlacesAreLost(t *testing.T) {
	lib, _ := theLibrary()
	fleet := sample.Many(lib, 1, 1)
	put := func(name string, data []byte) {
		fleet["pictures/"+sample.Code(0)+"/"+name] = &fstest.MapFile{Data: data}
	}
	traces := []string{"CANARY-7LM"}
	whole := 0
	for i, s := range snapshots(t) {
		traces = append(traces, s.traces...)
		put(fmt.Sprintf("body %d as it stood there.jpg", i), s.data)
		if !s.whole {
			continue
		}
		if whole++; whole > 1 {
			continue
		}
		for name, data := range inOtherFormats(t, s.data) {
			put("body in another way "+name, data)
		}
	}
	if whole < 3 {
		t.Fatalf("%d photographs with a place can be decoded, want three at least", whole)
	}
	target := filepath.Join(t.TempDir(), "site")
	if _, found, err := publishFiles(fleet, target, nil); err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
	n := 0
	for name, text := range files(t, target) {
		for _, trace := range traces {
			if strings.Contains(text, trace) {
				t.Errorf("%s holds %q", name, trace)
			}
		}
		if !strings.HasPrefix(name, "hirers/pictures/") {
			continue
		}
		n++
		for _, mark := range []string{"Exif", "EXIF", "XMP ", "ICCP", "ICC_PROFILE", "Photoshop", "8BIM", "http", "II*\x00", "MM\x00*", "GPS", "JFIF", "VP8X"} {
			if strings.Contains(text, mark) {
				t.Errorf("%s holds %q", name, mark)
			}
		}
		if _, err := exif.Decode(strings.NewReader(text)); err == nil {
			t.Errorf("%s: the first reader finds a note", name)
		}
	}
	if want := (whole + 4) * 2; n < want {
		t.Errorf("%d pictures were published, want %d at least", n, want)
	}
	var said []map[string]any
	if err := json.Unmarshal(noted(t, "-j", "-G1", "-a", "-u", "-r", filepath.Join(target, "hirers", "pictures")), &said); err != nil || len(said) != n {
		t.Fatalf("the second reader read %d pictures of %d, %v", len(said), n, err)
	}
	for _, picture := range said {
		for key, value := range picture {
			group, _, _ := strings.Cut(key, ":")
			if !slices.Contains(innocent, group) {
				t.Errorf("%v: the second reader finds %s: %v", picture["SourceFile"], key, value)
			}
		}
	}
}

func rgba(m image.Image) *image.RGBA {
	out := image.NewRGBA(m.Bounds())
	draw.Draw(out, out.Bounds(), m, m.Bounds().Min, draw.Src)
	return out
}
