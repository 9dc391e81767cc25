package spec

import (
	"errors"
	"io/fs"
	"maps"
	"net/mail"
	"path"
	"slices"
	"strings"

	"doorpocket/build/label"
	"doorpocket/build/pictures"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/prose"
	"doorpocket/layouts"
)

// loader reads one fleet folder.
type loader struct {
	files    fs.FS
	prefix   string              // shown before file names in problems
	given    *components.Library // without the fleet's own systems
	fleet    *Fleet
	prose    *prose.Parser
	sheets   map[string]*sheet
	torn     map[string]bool           // files in which not every line could be read
	shots    map[string][]problem.Span // files of pictures, and where each is listed: nowhere for one picked up by its name
	albums   map[string]bool           // folders of pictures
	used     map[string]bool           // build sheets that something is built on
	extra    *extra                    // what fleet.toml and build sheets add to the routines
	settling bool                      // the register is about to be brought up to date
	stated   map[string]problem.Span   // sheets for which fleet.toml states conditions
	problems problem.List
}

// Load reads a fleet folder. prefix is put before the names of files in
// problems. The fleet is complete as far as it could be read; whether it may
// be published depends on the problems.
func Load(files fs.FS, prefix string, lib *components.Library) (*Fleet, problem.List) {
	return open(files, prefix, lib).load()
}

func (l *loader) load() (*Fleet, problem.List) {
	var all []Summary
	for _, r := range slices.Collect(ahead(l.specs(), l.readVan)) { // all, before any changes the fleet
		l.take(r)
		all = append(all, r.Summary)
	}
	l.checkFleet(all)
	l.makePictures()
	l.fleet.make = func(file string) (pictures.Made, error) { return l.makePicture(file, pictures.Make) }
	l.problems.Quote(l.fleet.Sources)
	l.problems.Sort()
	l.problems.Dedupe()
	return l.fleet, l.problems
}

// open reads what all vans share.
func open(files fs.FS, prefix string, lib *components.Library) *loader {
	l := &loader{files: files, prefix: prefix, given: lib, prose: prose.New(), sheets: map[string]*sheet{}, torn: map[string]bool{}, shots: map[string][]problem.Span{},
		albums: map[string]bool{},
		used:   map[string]bool{},
		extra:  &extra{},
		fleet:  &Fleet{Operator: Operator{Library: lib}, Staff: map[string]*Staff{}, Sources: map[string][]byte{}, read: map[*Van]Read{}}}
	for _, name := range Albums(files) {
		l.albums[name] = true
	}
	l.ownSystems()
	l.readFleet()
	l.readRegister()
	l.readBooklets()
	l.readSheets()
	l.knowRoutines()
	l.checkConditions()
	l.readPages()
	maps.Copy(l.fleet.Sources, l.fleet.Library.Sources)
	return l
}

// Folders are those of a fleet folder whose files become pages.
var Folders = []string{"vans", "builds", "pages", "pictures", "systems"}

// Is reports whether a folder is a fleet folder.
func Is(files fs.FS) bool {
	_, err := fs.Stat(files, "fleet.toml")
	return err == nil
}

func (l *loader) span(name string) problem.Span { return problem.Span{File: l.prefix + name} }

// read gives a file as a reader, nil where it cannot be read or is broken.
func (l *loader) read(name string) *manifest.Reader {
	data, err := fs.ReadFile(l.files, name)
	if err != nil {
		var pathErr *fs.PathError
		if errors.As(err, &pathErr) {
			err = pathErr.Err
		}
		l.problems.Errorf(l.span(name), "unreadable-file", "File cannot be read", "The system says: %v. Check its name and its permissions.", err)
		return nil
	}
	l.fleet.Sources[l.prefix+name] = data
	table, found := manifest.Parse(l.prefix+name, data)
	l.problems.Add(found...)
	l.torn[l.prefix+name] = found.HasErrors()
	return manifest.NewReader(table, &l.problems)
}

// list gives the TOML files of a folder in order, and warns of files there
// that look like specs but are not read.
func (l *loader) list(folder string) []string {
	names, others := tomlFiles(l.files, folder)
	for _, name := range others {
		if path.Ext(name) == ".toml" {
			l.problems.Warnf(l.span(name), "file-not-read", "Not a file", "A spec is a file, and this is a folder, a pipe or the like. Rename it, or move it elsewhere.")
			continue
		}
		l.problems.Warnf(l.span(name), "file-not-read", "File is not read", "Specs end in .toml. Rename it, or move it elsewhere.")
	}
	return names
}

// tomlFiles gives the TOML files of a folder in order, and apart from them the
// files that look as if they were meant to be such.
func tomlFiles(files fs.FS, folder string) (names, others []string) {
	entries, err := fs.ReadDir(files, folder)
	if err != nil {
		return nil, nil
	}
	for _, e := range entries {
		switch ext := path.Ext(e.Name()); {
		case strings.HasPrefix(e.Name(), "."), strings.HasSuffix(e.Name(), "~"):
		case ext == ".toml" && isFile(files, folder, e):
			names = append(names, folder+"/"+e.Name())
		case ext == ".toml", ext != ".md" && ext != ".txt" && !e.IsDir():
			others = append(others, folder+"/"+e.Name())
		}
	}
	slices.Sort(names)
	return names, others
}

// isFile reports whether an entry of a folder is a file, or a link that does not lead to
// anything else. Whoever reads a pipe waits for ever.
func isFile(files fs.FS, folder string, e fs.DirEntry) bool {
	if e.Type()&fs.ModeSymlink == 0 {
		return e.Type().IsRegular()
	}
	info, err := fs.Stat(files, path.Join(folder, e.Name()))
	return err != nil || info.Mode().IsRegular()
}

func (l *loader) ownSystems() {
	lib, found := Library(l.files, l.prefix, l.given)
	l.fleet.Library = lib
	l.problems.Add(found...)
}

// Library is the library with the fleet folder's own systems, if it has any,
// added or in place of ours of the same name. prefix is as in Load.
func Library(files fs.FS, prefix string, lib *components.Library) (*components.Library, problem.List) {
	if _, err := fs.Stat(files, "systems"); err != nil {
		return lib, nil
	}
	own, err := fs.Sub(files, "systems")
	if err != nil {
		panic(err) // the name is ours and valid
	}
	joined, found := lib.With(own, prefix+"systems/")
	found.Add(joined.CheckSigns(layouts.Signs())...)
	return joined, found
}

func (l *loader) readFleet() {
	if !Is(l.files) {
		l.problems.Errorf(l.span("fleet.toml"), "no-fleet", "No fleet here", "A fleet folder has a fleet.toml with the operator's name, the address of the guides and whom to call.")
		return
	}
	r := l.read("fleet.toml")
	f := l.fleet
	f.Name, _ = r.Text("name", manifest.Required)
	if text, ok := r.Text("address", manifest.Required, manifest.Example(`"https://guide.example"`)); ok {
		base, err := label.ParseBase(text)
		if err != nil {
			r.Problem("address", "bad-address", "Address of the guides is not understood", upper(err.Error())+".")
		}
		f.Address = base
	}
	l.labelWishes(r)
	f.Languages, _ = r.Texts("languages", manifest.Required, manifest.Example(`["en"]`))
	l.languages(r)
	if draft, _ := r.Bool("draft"); draft {
		r.Warn("draft", "draft", "The fleet is still a draft", "Its numbers and its address may be invented. Replace them, then remove this line.")
	}
	call := r.Table("call", manifest.Required)
	f.Call.Helpline = phone(call, "helpline")
	f.Call.Emergency = phone(call, "emergency")
	f.Call.Hours, _ = call.Text("hours")
	f.Call.Mail = mailbox(call, "mail")
	l.due(r)
	l.conditions(r)
	l.extra.fleet = additions{steps: l.readSteps(r), includes: l.readRoutines(r)}
	l.extra.steps = append(l.extra.steps, l.extra.fleet.steps...)
	l.extra.changed = l.readChanged(r)
	r.Done()
}

// languages must be ones that the library speaks.
func (l *loader) languages(r *manifest.Reader) {
	spoken := map[string]bool{}
	for _, s := range l.fleet.Library.Systems() {
		for lang := range s.Words {
			spoken[lang] = true
		}
	}
	valid := slices.Sorted(maps.Keys(spoken))
	for i, lang := range l.fleet.Languages {
		if slices.Contains(l.fleet.Languages[:i], lang) {
			r.Problem("languages", "duplicate-language", "Language \""+lang+"\" twice", "Every guide is written once in each language: remove one of the two.")
		} else if !spoken[lang] {
			r.Problem("languages", "unknown-language", "The library does not speak \""+lang+"\"", "It speaks "+strings.Join(valid, ", ")+".")
		}
	}
}

// phone reads a number that can be tapped: digits, spaces, a plus in front.
func phone(r *manifest.Reader, key string) string {
	text, ok := r.Text(key, manifest.Required, manifest.Example(`"+44 1632 960123"`))
	if !ok {
		return ""
	}
	digits := strings.NewReplacer(" ", "", "-", "", "(", "", ")", "", "\u00a0", "").Replace(text)
	if strings.Trim(strings.TrimPrefix(digits, "+"), "0123456789") != "" || len(digits) < 3 {
		r.Problem(key, "bad-number", "Not one telephone number", "Write one number that a phone can dial, for example \"+44 1632 960123\".")
	}
	return text
}

// mailbox reads a mail address that can be tapped, "" for none.
func mailbox(r *manifest.Reader, key string) string {
	text, ok := r.Text(key)
	if address, err := mail.ParseAddress(text); ok && (err != nil || address.Address != text) {
		r.Problem(key, "bad-mail", "Not one mail address", "Write one address and nothing else, for example \"help@fleet.example\", or remove the line.")
		return ""
	}
	return text
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// checkFleet looks at what only the whole fleet shows.
func (l *loader) checkFleet(vans []Summary) {
	if Is(l.files) && len(vans) == 0 {
		l.problems.Errorf(l.span("vans"), "no-vans", "No vans", "Write one spec a van in the folder vans, for example vans/rowan.toml.")
	}
	for _, s := range slices.Sorted(maps.Keys(l.sheets)) {
		if !l.used[s] && !slices.ContainsFunc(vans, func(v Summary) bool { return v.Build == s }) {
			l.problems.Warnf(l.span(l.sheets[s].file), "unused-build", "No van is built on this sheet", "Name it in a spec with build = %q, or remove it.", s)
		}
	}
	l.checkCodes(vans)
	l.checkPageLinks(vans)
	l.checkStepsFitted(vans)
	l.checkRegister(vans)
	l.checkBooklets(vans)
	l.checkAlbums(vans)
}
