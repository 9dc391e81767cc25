package publication

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"doorpocket/build/booklets"
	"doorpocket/build/label"
	"doorpocket/build/spec"
	"doorpocket/components/problem"
)

// Input is something that pages are made from and what it was then.
type Input struct {
	Name string `json:"name"` // as somebody would call it: "fleet.toml", "systems/living/bike-box"
	Sum  string `json:"sum"`
}

// inputs looks at the files of a fleet folder, at each once.
type inputs struct {
	files fs.FS
	mu    sync.Mutex
	known map[string]string

	readLabels sync.Once
	labels     *label.Register
	noLabels   string // what stands for the register where labels is nil
	agreed     bool   // the register is the one that all vans were made with

	readAlbums sync.Once
	albums     []string // the folders of pictures, in order
}

func newInputs(files fs.FS) *inputs { return &inputs{files: files, known: map[string]string{}} }

// sum tells the content of a file, "" where it cannot be read.
func (in *inputs) sum(file string) string {
	return in.once(file, func() string {
		data, err := fs.ReadFile(in.files, file)
		if err != nil {
			return ""
		}
		return sumOf(data)
	})
}

// folder tells the names and contents of all that is below a folder.
func (in *inputs) folder(folder string) string {
	return in.once(folder+"/", func() string {
		var b strings.Builder
		_ = fs.WalkDir(in.files, folder, func(file string, e fs.DirEntry, err error) error {
			if err == nil && !e.IsDir() {
				fmt.Fprintf(&b, "%q %s\n", file, in.sum(file))
			}
			return nil
		})
		return sumOf([]byte(b.String()))
	})
}

func (in *inputs) once(name string, work func() string) string {
	in.mu.Lock()
	sum, ok := in.known[name]
	in.mu.Unlock()
	if !ok {
		sum = work()
		in.mu.Lock()
		in.known[name] = sum
		in.mu.Unlock()
	}
	return sum
}

func sumOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:12])
}

// changed finds the first input that is no longer what it was.
func (in *inputs) changed(before []Input) (string, bool) {
	for _, i := range before {
		if in.agreed && strings.HasSuffix(i.Name, ofRegister) {
			continue
		}
		if in.now(i.Name) != i.Sum {
			return i.Name, true
		}
	}
	return "", false
}

// now tells what an input is at present.
func (in *inputs) now(name string) string {
	if strings.HasPrefix(name, ownSystems+"/") {
		return in.folder(name)
	}
	if van, ok := strings.CutSuffix(name, ofRegister); ok {
		return in.register(van)
	}
	if album, ok := strings.CutPrefix(name, lyingIn); ok {
		return in.album(album)
	}
	return in.sum(name)
}

const (
	ownSystems = "systems"
	program    = "the program"
	// lyingIn begins the name of an input that is the names of what lies in a
	// folder of pictures.
	lyingIn = "what lies in pictures/"
)

// shared are the inputs of every van: the program, fleet.toml and its like, the
// operator's own pages, and which systems of its own the fleet has. A system
// that may join by itself counts for every van, any other for those that have
// it.
func (in *inputs) shared(version string) []Input {
	all := []Input{{program, version}}
	for _, file := range in.top() {
		all = append(all, Input{file, in.sum(file)})
	}
	for _, file := range in.withRoutines() {
		all = append(all, Input{file, in.sum(file)})
	}
	var names strings.Builder
	for _, folder := range in.systems() {
		names.WriteString(folder + "\n")
		if in.mayJoin(folder) {
			all = append(all, Input{folder, in.folder(folder)})
		}
	}
	return append(all, Input{"the list of the fleet's own systems", sumOf([]byte(names.String()))})
}

// album tells what lies in the folder of pictures of a van or build sheet, by
// name; "" for nothing.
func (in *inputs) album(name string) string {
	if _, there := slices.BinarySearch(in.albumNames(), name); !there {
		return ""
	}
	return in.once(lyingIn+name, func() string {
		files := spec.Album(in.files, name)
		if len(files) == 0 {
			return ""
		}
		return sumOf([]byte(strings.Join(files, "\n")))
	})
}

// lying is that as an input.
func (in *inputs) lying(name string) Input { return Input{lyingIn + name, in.album(name)} }

func (in *inputs) albumNames() []string {
	in.readAlbums.Do(func() { in.albums = spec.Albums(in.files) })
	return in.albums
}

// top lists the files of the fleet folder itself and of its own pages.
func (in *inputs) top() []string {
	var all []string
	entries, err := fs.ReadDir(in.files, ".")
	if err != nil {
		return nil
	}
	for _, e := range entries {
		if !e.IsDir() && e.Name() != label.RegisterFile && e.Name() != booklets.File && path.Ext(e.Name()) == ".toml" && !strings.HasPrefix(e.Name(), ".") {
			all = append(all, e.Name())
		}
	}
	pages, err := fs.Glob(in.files, "pages/*.md")
	if err != nil {
		panic(err) // the pattern is ours
	}
	slices.Sort(pages)
	return append(all, pages...)
}

// ofRegister ends the name of an input that is what the register says of a van.
const ofRegister = " in " + label.RegisterFile

// register tells what the register of labels says of a van, but for what was
// printed when. One that cannot be read says something else with every edit.
func (in *inputs) register(van string) string {
	in.readLabels.Do(in.readRegister)
	return in.once(van+ofRegister, func() string {
		switch r := in.labels; {
		case r == nil:
			return in.noLabels
		case r.Van(van) == nil && len(r.Of(van)) == 0:
			return "not registered"
		default:
			return sumOf([]byte(r.Says(van)))
		}
	})
}

func (in *inputs) readRegister() {
	data, err := fs.ReadFile(in.files, label.RegisterFile)
	if err != nil {
		in.noLabels = "no register"
		return
	}
	if in.labels, _ = label.ParseRegister(label.RegisterFile, data); in.labels == nil {
		in.noLabels = in.sum(label.RegisterFile)
	}
}

// given is the register as it was read for the pages: that of a large fleet is
// neither read nor held twice. It is called before vans are worked at.
func (in *inputs) given(r *label.Register) {
	if r != nil {
		in.readLabels.Do(func() {})
		in.labels = r
	}
}

// systems lists the folders of the fleet's own systems.
func (in *inputs) systems() []string {
	found, err := fs.Glob(in.files, ownSystems+"/*/*/system.toml")
	if err != nil {
		panic(err) // the pattern is ours
	}
	slices.Sort(found)
	for i := range found {
		found[i] = path.Dir(found[i])
	}
	return found
}

// sheets lists the files of the build sheets.
func (in *inputs) sheets() []string {
	found, err := fs.Glob(in.files, "builds/*.toml")
	if err != nil {
		panic(err) // the pattern is ours
	}
	slices.Sort(found)
	return found
}

// withRoutines lists the build sheets that could bring a routine of their own,
// which any van may have steps for: those with the word, or an escape that could
// stand for one of its letters.
func (in *inputs) withRoutines() []string {
	return slices.DeleteFunc(in.sheets(), func(file string) bool {
		data, err := fs.ReadFile(in.files, file)
		return err == nil && !bytes.Contains(data, []byte("routine")) && !bytes.ContainsRune(data, '\\')
	})
}

// mayJoin reports whether a system could be one that joins by itself: its file
// has the word, or an escape that could stand for one of its letters.
func (in *inputs) mayJoin(folder string) bool {
	data, err := fs.ReadFile(in.files, folder+"/system.toml")
	return err != nil || bytes.Contains(data, []byte("automatic")) || bytes.ContainsRune(data, '\\')
}

// rest are the inputs of no van in particular that can still be wrong: what
// lies in the folders, build sheets, and systems that nobody may have.
func (in *inputs) rest() []Input {
	var all []Input
	for _, folder := range []string{"builds", ownSystems} {
		all = append(all, Input{folder, in.folder(folder)})
	}
	for _, folder := range in.systems() { // also of a family that is a link, which is not gone into above
		all = append(all, Input{folder, in.folder(folder)})
	}
	for _, file := range []string{label.RegisterFile, booklets.File} {
		all = append(all, Input{file, in.sum(file)})
	}
	for _, sheet := range in.sheets() {
		all = append(all, in.lying(nameOf(sheet)))
	}
	var names strings.Builder
	for _, folder := range in.albumNames() {
		fmt.Fprintf(&names, "pictures/%s\n", folder)
	}
	for _, folder := range []string{"vans", "builds", "pages"} {
		entries, err := fs.ReadDir(in.files, folder)
		if err != nil {
			continue
		}
		for _, e := range entries {
			fmt.Fprintf(&names, "%s/%s %v\n", folder, e.Name(), e.IsDir())
		}
	}
	return append(all, Input{"names", sumOf([]byte(names.String()))})
}

// vanInputs is what one van is made from besides what all are.
type vanInputs struct {
	Spec   Input   `json:"spec"`
	Shared string  `json:"shared"` // the sum of what all vans are made from
	From   []Input `json:"from,omitempty"`
}

func sumOfInputs(all []Input) string {
	var b strings.Builder
	for _, i := range all {
		fmt.Fprintf(&b, "%q %q\n", i.Name, i.Sum)
	}
	return sumOf([]byte(b.String()))
}

// of gives what a van that was read is made from.
func (in *inputs) of(file, shared string, r spec.Read) vanInputs {
	v := vanInputs{Spec: Input{file, in.sum(file)}, Shared: shared}
	said := r.Van.Code + ofRegister
	v.From = append(v.From, Input{said, in.register(r.Van.Code)})
	v.From = append(v.From, in.lying(r.Van.Code))
	for _, l := range r.Listings[1:] {
		v.From = append(v.From, Input{l.File, in.sum(l.File)}, in.lying(nameOf(l.File)))
	}
	seen := map[string]bool{}
	add := func(name string, sum func(string) string) {
		if !seen[name] {
			seen[name] = true
			v.From = append(v.From, Input{name, sum(name)})
		}
	}
	own := in.systems()
	for _, f := range r.Van.Fitted {
		if folder := ownSystems + "/" + f.System.ID; slices.Contains(own, folder) {
			add(folder, in.folder)
		}
		for _, p := range f.Pictures {
			add("pictures/"+p.File, in.sum)
		}
	}
	return v
}

// vanMade is what is remembered of a van: what it was made from, and what the
// fleet's pages, checks and messages say of it.
type vanMade struct {
	Inputs   vanInputs    `json:"inputs"`
	Summary  spec.Summary `json:"summary"`
	Row      rowMade      `json:"row"`
	Pages    int          `json:"pages"`
	Problems problem.List `json:"problems,omitempty"`
	Pictures []madeFrom   `json:"pictures,omitempty"`
	Left     bool         `json:"left,omitempty"` // the van has left the fleet
}

// fleetMade is what is remembered of the pages of the whole fleet.
type fleetMade struct {
	Name     string       `json:"name"`
	Shared   []Input      `json:"shared"`
	Rest     []Input      `json:"rest"`
	Agreed   string       `json:"agreed,omitempty"` // the sum of the register with which all vans were made, "" for several
	Problems problem.List `json:"problems,omitempty"`
}
