package publication_test

import (
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/booklets"
	"doorpocket/build/compare"
	"doorpocket/build/guide"
	"doorpocket/build/publication"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// theLibrary reads the library once for all tests.
var theLibrary = sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })

// fewPages is the library without most of the pages that every van has: they differ in
// nothing but their words, and there would be fifty a van.
var fewPages = sync.OnceValue(func() *components.Library {
	without := strings.Fields("safety/accident safety/breakdown safety/electric-shock safety/fire safety/overnight-rules safety/storm safety/ways-out " +
		"vehicle/ferries-and-tunnels vehicle/parked-for-weeks vehicle/speed-limits vehicle/warning-lamps living/child-seats")
	all, rest := components.Embedded(), fstest.MapFS{}
	err := fs.WalkDir(all, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			if slices.Contains(without, name) {
				return fs.SkipDir
			}
			return err
		}
		data, err := fs.ReadFile(all, name)
		rest[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		panic(err)
	}
	lib, _ := components.Load(rest) // other pages miss those that they are related to
	return lib
})

// publishFiles publishes a fleet as the command does.
func publishFiles(files fstest.MapFS, target string, more func(*publication.Job)) (publication.Made, problem.List, error) {
	job := publication.Job{Files: files, Target: target, Version: "test", Library: theLibrary}
	if more != nil {
		more(&job)
	}
	return publication.Run(job)
}

// edited is a small fleet that is changed at random.
type edited struct {
	random *rand.Rand
	files  fstest.MapFS
	site   string
	photo  [2][]byte
	last   int
	// changes is what the fleet was compared with an earlier state for.
	changes *compare.Report
}

func newEdited(t *testing.T, seed uint64) *edited {
	lib := fewPages()
	e := &edited{random: rand.New(rand.NewPCG(seed, 1)), files: sample.Many(lib, 2, 1), site: filepath.Join(t.TempDir(), "site"), last: 2}
	e.photo[0], e.photo[1] = []byte(photo(t, 40, 30, 40)), []byte(photo(t, 30, 40, 90))
	for _, name := range e.specs() {
		e.replaceLine(name, "key_safe", "key_safe = \"hook\"\ngas_check_due = 2027-03-01")
	}
	bikeBox(e.files)
	e.files["pictures/box.jpg"] = &fstest.MapFile{Data: e.photo[0]}
	e.files["vans/van-0000.toml"] = file(string(e.files["vans/van-0000.toml"].Data) + bikes)
	return e
}

// bikeBox gives a fleet a system of its own.
func bikeBox(files fstest.MapFS) {
	files["systems/living/bike-box/system.toml"] = file("family = \"living\"\n")
	files["systems/living/bike-box/lines.en.toml"] = file("title = \"Bike box\"\nabout = \"For bikes.\"\nwords = [\"bike\"]\n")
	files["systems/living/bike-box/page.en.md"] = file("Hello.\n")
}

const bikes = "[fitted.bikes]\nsystem = \"living/bike-box\"\nat = { side = \"rear\" }\npictures = [{ file = \"box.jpg\", alt = \"Box\" }]\n"

const bikesNew = "[[changed]]\non = 2026-09-14\nfitted = \"bikes\"\n"

func file(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }

// specs lists the fleet's specs.
func (e *edited) specs() []string {
	var all []string
	for name := range e.files {
		if strings.HasPrefix(name, "vans/") && strings.HasSuffix(name, ".toml") {
			all = append(all, name)
		}
	}
	slices.Sort(all)
	return all
}

func (e *edited) anySpec() string {
	all := e.specs()
	return all[e.random.IntN(len(all))]
}

// anyCode is the code of a van, or one that no van has any more.
func (e *edited) anyCode() string { return sample.Code(e.random.IntN(e.last + 1)) }

// anyPicture is one of the folders of vans and sheets that no spec lists, "" where
// there is none.
func (e *edited) anyPicture() string {
	var all []string
	for name := range e.files {
		listed := func(spec string) bool {
			return strings.Contains(string(e.files[spec].Data), strings.TrimPrefix(name, "pictures/"))
		}
		if strings.HasSuffix(name, ".jpg") && strings.Count(name, "/") == 2 && !slices.ContainsFunc(e.specs(), listed) {
			all = append(all, name)
		}
	}
	slices.Sort(all)
	if len(all) == 0 {
		return ""
	}
	return all[e.random.IntN(len(all))]
}

// lay puts a file where there is none: a spec may list the one that is there.
func (e *edited) lay(name string, f *fstest.MapFile) {
	if e.files[name] == nil {
		e.files[name] = f
	}
}

func (e *edited) number() int { return e.random.IntN(1000) }

// replaceLine changes the line of a file that begins so.
func (e *edited) replaceLine(name, begin, line string) {
	lines := strings.SplitAfter(string(e.files[name].Data), "\n")
	for i := range lines {
		if strings.HasPrefix(lines[i], begin) {
			lines[i] = line + "\n"
			break
		}
	}
	e.files[name] = file(strings.Join(lines, ""))
}

// edits are the ways in which the fleet and its site are changed.
var edits = map[string]func(e *edited){
	"name": func(e *edited) { e.replaceLine(e.anySpec(), "name", fmt.Sprintf("name = \"Van %d\"", e.number())) },
	"spec date": func(e *edited) {
		e.replaceLine(e.anySpec(), "spec_date", fmt.Sprintf("spec_date = 2026-11-%02d", 1+e.number()%28))
	},
	"registration": func(e *edited) {
		e.replaceLine(e.anySpec(), "registration", fmt.Sprintf("registration = \"R%d\"", e.number()))
	},
	"comment": func(e *edited) { s := e.anySpec(); e.files[s] = file(string(e.files[s].Data) + "# seen\n") },
	"other sheet": func(e *edited) {
		e.replaceLine(e.anySpec(), "build", fmt.Sprintf("build = \"batch-%d\"", e.number()%3))
	},
	"code": func(e *edited) {
		e.last++
		e.replaceLine(e.anySpec(), "code", fmt.Sprintf("code = %q", sample.Code(e.last)))
	},
	"add": func(e *edited) {
		from := e.anySpec()
		e.last++
		name := fmt.Sprintf("vans/van-%04d.toml", e.last)
		e.files[name] = e.files[from]
		e.replaceLine(name, "code", fmt.Sprintf("code = %q", sample.Code(e.last)))
	},
	"remove": func(e *edited) {
		if len(e.specs()) > 2 {
			delete(e.files, e.anySpec())
		}
	},
	"rename": func(e *edited) {
		from := e.anySpec()
		e.last++
		e.files[fmt.Sprintf("vans/van-%04d.toml", e.last)] = e.files[from]
		delete(e.files, from)
	},
	"touch": func(e *edited) { s := e.anySpec(); e.files[s] = file(string(e.files[s].Data)) },
	"sheet": func(e *edited) {
		e.replaceLine(fmt.Sprintf("builds/batch-%d.toml", e.number()%3), "berths", fmt.Sprintf("berths = %d", 2+e.number()%4))
	},
	"hours": func(e *edited) {
		e.replaceLine("fleet.toml", "emergency", fmt.Sprintf("emergency = \"%d\"", 110+e.number()%12))
	},
	"page": func(e *edited) {
		e.files["pages/sites.en.md"] = file(fmt.Sprintf("# Sites\n\nNumber %d.\n", e.number()))
	},
	"unpage": func(e *edited) { delete(e.files, "pages/sites.en.md") },
	"system": func(e *edited) {
		e.files["systems/living/bike-box/page.en.md"] = file(fmt.Sprintf("Box %d.\n", e.number()))
	},
	"other system": (*edited).pitchTent,
	"joining system": func(e *edited) {
		e.pitchTent()
		e.files["systems/living/tent/system.toml"] = file("family = \"living\"\nautomatic = [\"living/bike-box\"]\n")
	},
	"no other system": func(e *edited) {
		for name := range e.files {
			if strings.HasPrefix(name, "systems/living/tent/") {
				delete(e.files, name)
			}
		}
	},
	"picture": func(e *edited) { e.files["pictures/box.jpg"] = &fstest.MapFile{Data: e.photo[e.random.IntN(2)]} },
	"picture in a van's folder": func(e *edited) {
		e.files[fmt.Sprintf("pictures/%s/bikes %d shut.jpg", e.anyCode(), e.number()%4)] = &fstest.MapFile{Data: e.photo[e.random.IntN(2)]}
	},
	"picture of the body":   func(e *edited) { e.files["pictures/"+e.anyCode()+"/body from behind.png"] = file(string(e.photo[0])) },
	"picture without words": func(e *edited) { e.lay("pictures/"+e.anyCode()+"/bikes IMG_0001.jpg", file("")) },
	"broken picture in a van's folder": func(e *edited) {
		e.lay(fmt.Sprintf("pictures/%s/bikes broken %d.jpg", e.anyCode(), e.number()), file(string(e.photo[0][:200])))
	},
	"picture in a sheet's folder": func(e *edited) {
		e.files[fmt.Sprintf("pictures/batch-%d/body %d in the sun.JPG", e.number()%3, e.number()%2)] = &fstest.MapFile{Data: e.photo[e.random.IntN(2)]}
	},
	"broken picture in a sheet's folder": func(e *edited) {
		e.lay(fmt.Sprintf("pictures/batch-0/body broken %d.jpg", e.number()), file("GIF89a"))
	},
	"junk beside pictures": func(e *edited) { e.files["pictures/"+e.anyCode()+"/.DS_Store"] = file(fmt.Sprint(e.number())) },
	"folder of no van":     func(e *edited) { e.lay("pictures/NOBODY/bikes.jpg", file("")) },
	"rename a picture": func(e *edited) {
		if old := e.anyPicture(); old != "" {
			e.files[strings.TrimSuffix(old, ".jpg")+" again.jpg"] = e.files[old]
			delete(e.files, old)
		}
	},
	"remove a picture": func(e *edited) { delete(e.files, e.anyPicture()) },
	"list a picture of a van's folder": func(e *edited) {
		old, s := e.anyPicture(), e.anySpec()
		if text := string(e.files[s].Data); old != "" && strings.Contains(text, "file = \"box.jpg\"") {
			e.files[s] = file(strings.Replace(text, "file = \"box.jpg\"", fmt.Sprintf("file = %q", strings.TrimPrefix(old, "pictures/")), 1))
			e.files[old] = file(string(e.photo[0]))
		}
	},
	"fit": func(e *edited) {
		s := e.anySpec()
		if !strings.Contains(string(e.files[s].Data), "fitted.bikes") {
			e.files[s] = file(string(e.files[s].Data) + bikes)
		}
	},
	"unfit": func(e *edited) {
		s := e.anySpec()
		e.files[s] = file(strings.NewReplacer(bikes+bikesNew, "", bikes, "").Replace(string(e.files[s].Data)))
	},
	"own step": func(e *edited) {
		s := e.anySpec()
		e.files[s] = file(string(e.files[s].Data) + fmt.Sprintf("[[step]]\nid = \"own-%d\"\nroutine = [\"arriving\", \"handover\"]\ntext = \"Look at it again.\"\n", len(e.files[s].Data)))
	},
	"changed lately": func(e *edited) {
		names := append(e.specs(), "builds/batch-0.toml", "builds/batch-1.toml", "builds/batch-2.toml", "fleet.toml")
		name := names[e.random.IntN(len(names))]
		e.files[name] = file(string(e.files[name].Data) + fmt.Sprintf("[[changed]]\non = 2026-09-%02d\ntext = \"Number %d.\"\n", 1+e.number()%28, e.number()))
	},
	"bikes new": func(e *edited) {
		s := e.anySpec()
		if text := string(e.files[s].Data); strings.Contains(text, bikes) && !strings.Contains(text, bikesNew) {
			e.files[s] = file(strings.Replace(text, bikes, bikes+bikesNew, 1))
		}
	},
	"check due": func(e *edited) {
		e.replaceLine(e.anySpec(), "gas_check_due", fmt.Sprintf("gas_check_due = 2027-03-%02d", 1+e.number()%28))
	},
	"booklet": func(e *edited) {
		e.files["booklets.toml"] = file(fmt.Sprintf("[booklet]\n%s = { revision = \"AAAAAA\", edition = \"%012d\", on = 2026-10-%02d }\n", sample.Code(e.number()%4), e.number(), 1+e.number()%28))
	},
	"booklet as it is": (*edited).printBooklet,
	"no booklets":      func(e *edited) { delete(e.files, "booklets.toml") },
	"guessed by an own system": func(e *edited) {
		e.files["systems/living/bike-box/system.toml"] = file(fmt.Sprintf("family = \"living\"\n[fact.bikes]\ntype = \"count\"\ndefault = %d\n", 1+e.number()%3))
		e.files["systems/living/bike-box/lines.en.toml"] = file("title = \"Bike box\"\nabout = \"For bikes.\"\nwords = [\"bike\"]\n[fact]\nbikes = \"how many bikes\"\n")
	},
	"stray file": func(e *edited) { e.files["vans/notes.bak"] = file("x") },
	"no stray":   func(e *edited) { delete(e.files, "vans/notes.bak") },
	"compared": func(e *edited) {
		e.changes = &compare.Report{Fleet: "Sample", Old: fmt.Sprint(e.number()), New: "now", Same: 1, Files: []compare.File{{Name: "fleet.toml",
			Hunks: []compare.Hunk{{Old: 1, New: 1, Lines: []compare.Line{{Mark: '+', Text: fmt.Sprintf("name = %d", e.number())}}}}}}}
	},
	"not compared": func(e *edited) { e.changes = nil },
}

// printBooklet notes a booklet that says what the guide says today.
func (e *edited) printBooklet() {
	lib := fewPages()
	reading := spec.Open(e.files, "", lib)
	r := reading.Van(e.anySpec())
	g, _ := guide.NewKit(&reading.Fleet().Operator, "en").Build(r.Van)
	text, err := booklets.Enter(nil, []booklets.Booklet{{Van: r.Van.Code, Revision: "BBBBBB", Edition: compare.Edition(g), On: r.Van.SpecDate}})
	if err != nil {
		panic(err)
	}
	e.files["booklets.toml"] = file(string(text))
}

// pitchTent gives the fleet a second system of its own.
func (e *edited) pitchTent() {
	e.files["systems/living/tent/system.toml"] = file("family = \"living\"\n")
	e.files["systems/living/tent/lines.en.toml"] = file(fmt.Sprintf("title = \"Tent %d\"\nabout = \"A tent.\"\nwords = [\"tent\"]\n", e.number()))
	e.files["systems/living/tent/page.en.md"] = file("A tent.\n")
}

// After every one of several hundred edits, a publish of what changed gives
// byte for byte what a publish of everything into a new folder gives. EDITS says
// which rounds of them are made: 0-100 are the first hundred, 17-18 is one.
func TestEditsAreAsIfAllWereMadeAnew(t *testing.T) {
	from, to := 0, 3
	if text := os.Getenv("EDITS"); text != "" {
		if _, err := fmt.Sscanf(text, "%d-%d", &from, &to); err != nil || from >= to {
			t.Fatalf("EDITS=%q is no range such as 0-100: %v", text, err)
		}
	}
	all := maps.Clone(edits)
	maps.Copy(all, siteEdits)
	names := slices.Sorted(maps.Keys(all))
	for seed := from; seed < to; seed++ {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			t.Parallel()
			e := newEdited(t, uint64(seed))
			var history []string
			for _, n := range append(e.random.Perm(len(names)), e.random.Perm(len(names))...)[:editsARound] {
				all[names[n]](e)
				history = append(history, names[n])
				e.compare(t, history)
				if t.Failed() {
					return
				}
			}
		})
	}
}

// editsARound is enough for every edit once, and most of them twice.
const editsARound = 105

// as is how the fleet is published.
func (e *edited) as(job *publication.Job) {
	job.Changes = e.changes
	job.Library = func() (*components.Library, problem.List) { return fewPages(), nil }
}

func (e *edited) compare(t *testing.T, history []string) {
	t.Helper()
	made, found, err := publishFiles(e.files, e.site, e.as)
	clean := filepath.Join(t.TempDir(), "site")
	want, wantFound, wantErr := publishFiles(e.files, clean, e.as)
	if err != nil || wantErr != nil || found.HasErrors() {
		t.Fatalf("after %v: %v %v %v", history, err, wantErr, found)
	}
	if diff := cmp.Diff(wantFound, found); diff != "" {
		t.Errorf("after %v: problems\n%s", history, diff)
	}
	if made.Vans != want.Vans || made.Pages != want.Pages || made.Labels != want.Labels {
		t.Errorf("after %v: counts %+v, want %+v", history, made, want)
	}
	if diff := cmp.Diff(files(t, clean), files(t, e.site)); diff != "" {
		t.Errorf("after %v:\n%s", history, diff)
	}
	if err := os.RemoveAll(clean); err != nil {
		t.Fatal(err)
	}
	if len(history)%5 != 0 {
		return
	}
	if again, _, err := publishFiles(e.files, e.site, e.as); err != nil || again.Files != 0 {
		t.Errorf("after %v: publishing again writes %d files, %v", history, again.Files, err)
	}
}
