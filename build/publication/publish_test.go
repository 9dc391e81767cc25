package publication_test

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"io"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
	"doorpocket/build/spec"

	"github.com/google/go-cmp/cmp"
)

// Publishing again gives the same bytes, whatever the number of processors and
// the order in which they get round to the vans.
func TestPublishIsReproducible(t *testing.T) {
	first := files(t, demoSite(t))
	for _, processors := range []int{1, 16} {
		before := runtime.GOMAXPROCS(processors)
		site := filepath.Join(t.TempDir(), "site")
		_, err := publication.Publish(demoFleet(t), site, "test")
		runtime.GOMAXPROCS(before)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(first, files(t, site)); diff != "" {
			t.Errorf("with %d processors:\n%s", processors, diff)
		}
	}
}

// Pages are the same wherever a fleet is published: days of the calendar do not
// move with the time zone, and capitals, order and numbers are those of the guide's
// language, not of the machine's. Both are read once a process, so each runs its own.
func TestPagesDoNotDependOnTheMachine(t *testing.T) {
	if dir := os.Getenv("PUBLISH_INTO"); dir != "" {
		if _, err := publication.Publish(demoFleet(t), dir, "test"); err != nil {
			t.Fatal(err)
		}
		return
	}
	var trees []map[string]string
	for _, place := range [][]string{
		{"TZ=Etc/GMT-13", "LC_ALL=tr_TR.UTF-8", "LANG=tr_TR.UTF-8"}, // a small i with a dot is another letter there
		{"TZ=Etc/GMT+11", "LC_ALL=C", "LANG=C"},
	} {
		dir := filepath.Join(t.TempDir(), "site")
		cmd := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$")
		cmd.Env = append(append(os.Environ(), "PUBLISH_INTO="+dir), place...)
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		trees = append(trees, files(t, dir))
	}
	if diff := cmp.Diff(trees[0], trees[1]); diff != "" {
		t.Error(diff)
	}
}

// canaries are strings planted wherever a spec keeps something for staff; each
// can be nowhere but in the staff tree.
func canaries(t *testing.T) (van, fleet string, planted []string) {
	t.Helper()
	plant := func(what string) string {
		word := fmt.Sprintf("CANARY-%d-7Q4-%s", len(planted), what)
		planted = append(planted, word)
		return word
	}
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n[staff]\n", plant("comment"))
	for _, key := range spec.StaffTexts {
		fmt.Fprintf(&b, "%s = %q # %s\n", key, plant(key)+"\n"+plant("second line"), plant("end of line"))
	}
	lib, _ := theLibrary()
	for i, key := range lib.StaffDates() {
		fmt.Fprintf(&b, "%s = %d-0%d-1%d\n", key, 2080+i, i%9+1, i%9)
		planted = append(planted, fmt.Sprint(2080+i))
	}
	own := plant("own key")
	fmt.Fprintf(&b, "[staff.own]\n%q = %q\nwhen = 2079-03-04\n", own, plant("own text"))
	// Own routines and steps for staff are theirs alone, wherever they are written.
	step := func(id, routines string) string {
		return fmt.Sprintf("[[step]]\nid = %q\nroutine = [%s]\ntext = %q\n", id, routines, plant("step"))
	}
	b.WriteString(step("of-the-van", `"own-list", "handover"`))
	fleet = fmt.Sprintf("[routine.own-list]\nfor = \"staff\"\nbegin = \"inside\"\ntitle = %q\nabout = %q\nwords = [%q]\n", plant("list"), plant("about"), "list")
	return b.String(), fleet + step("of-the-fleet", `"check-in", "prepare", "monthly"`), append(planted, "2079")
}

// nameCanaries gives the van a picture from every place that one can come from. What
// it returns stands in the names of their files and folders, and is shown to nobody:
// of a picture that is picked up by its name only the words are.
func nameCanaries(t *testing.T, files fstest.MapFS) []string {
	t.Helper()
	const folder, listed, nobody, number, lost, broken = "CANARY-8NF-folder", "CANARY-8NF-listed", "CANARY-8NF-nobody", "47110815", "CANARY-8NF-lost", "CANARY-8NF-broken"
	for i, name := range []string{folder + "/" + listed + ".jpg", "EV/bikes " + number + " by its name.jpg", "EV/" + lost + " of nothing.jpg", nobody + "/bikes in a folder of nobody.jpg"} {
		files["pictures/"+name] = file(photo(t, 600, 400, byte(60+20*i)))
	}
	files["pictures/EV/bikes broken "+broken+".jpg"] = file("GIF89a " + broken)
	const box = "{ file = \"box.jpg\", alt = \"Box\" }"
	files["vans/ev.toml"] = file(strings.Replace(string(files["vans/ev.toml"].Data), box, box+", { file = \""+folder+"/"+listed+".jpg\", alt = \"Listed\" }", 1))
	return []string{folder, listed, nobody, number, lost, broken}
}

// What only staff may see is in no byte of the hirers' tree: not in a page, a
// name of a file, a script, a picture or anything packed.
func TestStaffDataStaysWithStaff(t *testing.T) {
	lib, _ := theLibrary()
	fleetFiles := sample.Everything(lib, 0)
	fleetFiles["vans/ev.toml"] = file(strings.ReplaceAll(string(fleetFiles["vans/ev.toml"].Data), "2028-03-14", "2047-03-14")) // a fact of the van, not of the staff
	ofVan, ofFleet, planted := canaries(t)
	fleetFiles["vans/ev.toml"] = file(string(fleetFiles["vans/ev.toml"].Data) + ofVan + bikes)
	fleetFiles["fleet.toml"] = file(sample.FleetTOML + ofFleet)
	bikeBox(fleetFiles)
	fleetFiles["pictures/box.jpg"] = file(photo(t, 700, 500, 40)) // which notes where it was taken
	unshown := nameCanaries(t, fleetFiles)
	target := filepath.Join(t.TempDir(), "site")
	_, found, err := publishFiles(fleetFiles, target, nil)
	if err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
	seen := map[string]bool{}
	all := files(t, target)
	for _, id := range []string{"handover", "check-in", "prepare", "monthly", "own-list"} {
		if _, ok := all["hirers/EV/do/"+id+"/index.html"]; ok {
			t.Errorf("hirers can read the list %s, which is for staff", id)
		}
		if page := all["staff/EV/do/"+id+"/index.html"]; !strings.Contains(page, "7Q4-step") {
			t.Errorf("the staff's list %s lacks the operator's own step", id)
		}
	}
	for name, data := range all {
		for _, text := range []string{name, data, unpacked(data)} {
			for _, secret := range append(planted, "CANARY-3PQ") {
				if !hides(text, secret) {
					continue
				}
				if strings.HasPrefix(name, "hirers/") {
					t.Errorf("%s holds %s", name, secret)
				}
				seen[secret] = seen[secret] || strings.HasPrefix(name, "staff/")
			}
		}
	}
	for name, data := range all {
		for _, secret := range unshown {
			if strings.HasPrefix(name, "hirers/") && (hides(name, secret) || hides(data, secret)) {
				t.Errorf("%s holds %s", name, secret)
			}
		}
	}
	for _, words := range []string{"Box", "Listed", "By its name"} {
		if page := all["hirers/EV/about/bikes/index.html"]; !strings.Contains(page, `alt="`+words+`"`) {
			t.Errorf("the picture %q is not shown: it proves nothing", words)
		}
	}
	for _, secret := range planted {
		if !seen[secret] {
			t.Errorf("the staff tree does not hold %s either: it proves nothing", secret)
		}
	}
}

// hides reports whether a text holds a secret, as it is or as it may be written
// down: in small letters, percent-encoded, in base64
// at any offset, in hexadecimal or in UTF-16.
func hides(text, secret string) bool {
	if len(secret) < 8 { // a year, which encoded is too short to be told from chance
		return yearIn(text, secret)
	}
	forms := []string{secret, strings.ToLower(secret), url.QueryEscape(secret), hex.EncodeToString([]byte(secret)), strings.Join(strings.Split(secret, ""), "\x00")}
	for offset := range 3 {
		coded := base64.StdEncoding.EncodeToString([]byte(strings.Repeat("x", offset) + secret))
		forms = append(forms, coded[4:len(coded)-4])
	}
	return slices.ContainsFunc(forms, func(form string) bool { return strings.Contains(text, form) })
}

// yearIn looks for a year that stands by itself: four digits in the middle of a
// drawing or a checksum are none.
func yearIn(text, year string) bool {
	return regexp.MustCompile(`(^|[^0-9a-zA-Z.])` + year + `($|[^0-9a-zA-Z.]|[.]$|[.][^0-9])`).MatchString(text)
}

// unpacked is what the deflated streams in a file hold, as in a PDF or PNG.
func unpacked(data string) string {
	var all strings.Builder
	for at := 0; at+2 < len(data); at++ {
		if data[at] != 0x78 || (uint(data[at])<<8|uint(data[at+1]))%31 != 0 {
			continue
		}
		if r, err := zlib.NewReader(strings.NewReader(data[at:])); err == nil {
			_, _ = io.Copy(&all, io.LimitReader(r, 1<<20)) // up to where it is no stream
		}
	}
	return all.String()
}

// The search finds what it is to find, however it is written down.
func TestCanariesAreFound(t *testing.T) {
	const secret = "CANARY-7-7Q4-notes"
	var packed bytes.Buffer
	w := zlib.NewWriter(&packed)
	if _, err := w.Write([]byte("before " + secret + " after")); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"x" + secret + "x", strings.ToLower(secret), base64.StdEncoding.EncodeToString([]byte("a" + secret + "b")), base64.StdEncoding.EncodeToString([]byte("ab" + secret + "cd")),
		hex.EncodeToString([]byte("a" + secret)), unpacked("%PDF" + packed.String()), "C\x00A\x00N\x00A\x00R\x00Y\x00-\x007\x00-\x007\x00Q\x004\x00-\x00n\x00o\x00t\x00e\x00s\x00",
	} {
		if !hides(text, secret) {
			t.Errorf("not found in %q", text)
		}
	}
	if hides("nothing", secret) || !yearIn("due 3 March 2093.", "2093") || yearIn("M12093.5", "2093") {
		t.Error("found where it is not, or not where it is")
	}
}
