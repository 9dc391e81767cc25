package spec

import (
	"fmt"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"

	"doorpocket/build/label"
	"doorpocket/components"
	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// sheet is a build sheet with its own sheet's contents already under it: what
// the vans of a batch have in common.
type sheet struct {
	content
	name, file string
	build      string
	state      uint8 // unread, being read, ready
	reader     *manifest.Reader
}

// content is what a spec or a build sheet says of a van, with what its build
// sheet says already under it.
type content struct {
	body      map[string]fact.Value
	bodyAt    problem.Span
	fitted    []*Fitted
	absent    []string // systems that would join by themselves and are not wanted
	looked    []string // rules of completeness that somebody has looked at
	ownLooked []string // those of them that the file itself names
	partial   bool     // more is written than could be read
	added     additions
	changed   []noted
	joining   map[string][]Picture // picked up for what joins by itself, by the name it joins under
}

const (
	unread uint8 = iota
	beingRead
	ready
)

// nameForm is what files of the fleet and fitted systems are called: their
// names become addresses.
var nameForm = regexp.MustCompile(`^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$`)

func validName(name string) bool {
	return len(name) <= 60 && nameForm.MatchString(name) && !label.Reserved(name)
}

const nameRule = "Use small letters, digits and hyphens, a letter first, and no name that some systems reserve, such as con or aux."

func (l *loader) readSheets() {
	for _, file := range l.list("builds") {
		name := strings.TrimSuffix(path.Base(file), ".toml")
		if !validName(name) {
			l.problems.Errorf(l.span(file), "bad-name", "A build sheet cannot be called "+name, nameRule)
			continue
		}
		l.sheets[name] = &sheet{name: name, file: file}
	}
	for _, name := range slices.Sorted(maps.Keys(l.sheets)) {
		l.resolve(l.sheets[name])
	}
}

// resolve reads a build sheet, after the one that it names.
func (l *loader) resolve(s *sheet) {
	if s.state != unread {
		return
	}
	s.state = beingRead
	r := l.read(s.file)
	s.reader = r
	var base *sheet
	if build, ok := r.Text("build"); ok {
		s.build = build
		base = l.sheetNamed(r, build)
	}
	s.content = l.overlay(r, base, s.name)
	l.extra.steps = append(l.extra.steps, s.added.steps...)
	s.added.includes = joined(s.added.includes, l.readRoutines(r))
	r.Done()
	s.state = ready
}

// sheetNamed finds the sheet that a file names in build.
func (l *loader) sheetNamed(r *manifest.Reader, name string) *sheet {
	s := l.sheets[name]
	if s == nil {
		detail := "There is no builds/" + name + ".toml."
		if near := problem.Nearest(name, slices.Sorted(maps.Keys(l.sheets))); near != "" {
			detail += " Did you mean \"" + near + "\"?"
		}
		if !validName(name) {
			detail = "It is the name of a file in builds, without folder and ending. " + nameRule
		}
		r.Problem("build", "unknown-build", "Unknown build sheet \""+name+"\"", detail)
		return nil
	}
	l.used[name] = true
	if s.state == beingRead {
		r.Problem("build", "build-cycle", "Build sheets that name each other", l.ring(s)+" A build sheet can stand on another, but not on itself: remove one of the lines.")
		return nil
	}
	l.resolve(s)
	return s
}

// ring tells the way from a sheet back to itself.
func (l *loader) ring(s *sheet) string {
	words := s.file
	for at := s; at.build != "" && l.sheets[at.build] != nil; {
		at = l.sheets[at.build]
		words += " names " + at.file
		if at == s {
			return words + "."
		}
		words += ", which"
	}
	return words + " names itself."
}

// overlay reads [body], [fitted.*], without and complete of a file on top of a
// build sheet, nil for none. album is its folder of pictures.
func (l *loader) overlay(r *manifest.Reader, base *sheet, album string) content {
	c := content{body: map[string]fact.Value{}, joining: map[string][]Picture{}, added: additions{steps: l.readSteps(r)}, partial: r == nil || l.torn[r.Source().Name] || (base == nil && r.Has("build"))}
	if base != nil {
		maps.Copy(c.body, base.body)
		c.bodyAt = base.bodyAt
		c.fitted = slices.Clone(base.fitted)
		c.looked = slices.Clone(base.looked)
		c.absent = slices.Clone(base.absent)
		c.partial = c.partial || base.partial
		c.added = c.added.over(base.added)
		c.changed = slices.Clone(base.changed)
		maps.Copy(c.joining, base.joining)
	}
	c.changed = append(c.changed, l.readChanged(r)...)
	if b := r.Table("body"); b != nil {
		c.bodyAt = b.At()
		if system := l.fleet.Library.System(components.BodySystem); system != nil {
			l.unstate(b, &Fitted{System: system, Values: c.body})
			l.facts(b, system, c.body)
		}
	}
	c.ownLooked = l.looked(r)
	c.looked = append(c.looked, c.ownLooked...)
	l.without(r, &c)
	for name, f := range r.Each("fitted") {
		i := slices.IndexFunc(c.fitted, func(f *Fitted) bool { return f.Name == name })
		var under *Fitted
		if i >= 0 {
			under = c.fitted[i]
		}
		over := l.fitted(f, name, under)
		switch {
		case over == nil:
			c.partial = true
		case i >= 0:
			c.fitted[i] = over
		default:
			c.fitted = append(c.fitted, over)
		}
	}
	l.pickUp(r, &c, base, album)
	return c
}

// without takes away what a build sheet has, or what would join by itself, and
// this file says is not there.
func (l *loader) without(r *manifest.Reader, c *content) {
	names, _ := r.Texts("without")
	for _, name := range names {
		i := slices.IndexFunc(c.fitted, func(f *Fitted) bool { return f.Name == name })
		system := l.automatic(name)
		switch {
		case i >= 0:
			c.fitted = slices.Delete(c.fitted, i, i+1)
		case system == nil:
			l.notFitted(r, name, c.fitted)
		case system.Urgent:
			r.Problem("without", "urgent-page", fmt.Sprintf("%s cannot be left out", name), "Lives may hang on this page: every van has it. Remove the name.")
		default:
			c.absent = append(c.absent, name)
		}
	}
}

// notFitted reports a name in without that nothing goes by.
func (l *loader) notFitted(r *manifest.Reader, name string, fitted []*Fitted) {
	var valid []string
	for _, f := range fitted {
		valid = append(valid, f.Name)
	}
	detail := "Only what the build sheet has, or what joins by itself, can be taken away."
	if near := problem.Nearest(name, valid); near != "" {
		detail = "Did you mean \"" + near + "\"?"
	}
	r.Problem("without", "unknown-name", "Nothing is fitted under the name \""+name+"\"", detail)
}

// automatic finds the system that joins by itself under a name, nil for none.
func (l *loader) automatic(name string) *components.System {
	for _, s := range l.fleet.Library.Systems() {
		if len(s.Automatic) > 0 && path.Base(s.ID) == name {
			return s
		}
	}
	return nil
}

// ValidName reports whether something fitted, a spec or a build sheet can be called
// so.
func ValidName(name string) bool { return validName(name) && name != bodyName }
