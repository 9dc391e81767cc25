package spec

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"doorpocket/build/pictures"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// pickUp gives what is fitted the pictures whose files are called after it, from
// the album of the van or build sheet that the file r is. They come after those
// that the same file lists, and in the place of those that its build sheet gives.
func (l *loader) pickUp(r *manifest.Reader, c *content, base *sheet, album string) {
	shots := l.album(album)
	if len(shots) == 0 || r == nil {
		return
	}
	u := pickup{loader: l, file: r.Source().Name, album: album, content: c, base: base, listed: c.listed()}
	u.knowNames()
	for _, shot := range shots {
		if !u.listed[shot] {
			u.take(shot)
		}
	}
	for name, shots := range u.found {
		u.give(name, shots)
	}
}

// pickup is the picking up of one album.
type pickup struct {
	*loader
	file    string // as shown in problems
	album   string
	content *content
	base    *sheet
	listed  map[string]bool
	fitted  map[string]*Fitted // by name
	joining map[string]bool    // names under which something may join by itself
	names   []string           // all of them, and what the build sheet has and this file takes away
	found   map[string][]Picture
}

// listed are the files of pictures that the file and its build sheets name.
func (c *content) listed() map[string]bool {
	all := map[string]bool{}
	for _, f := range c.fitted {
		for _, p := range f.Pictures {
			all[p.File] = all[p.File] || !p.ByName
		}
	}
	return all
}

func (u *pickup) knowNames() {
	u.fitted, u.joining, u.found = map[string]*Fitted{}, map[string]bool{bodyName: true}, map[string][]Picture{}
	for _, f := range u.content.fitted {
		u.fitted[f.Name] = f
	}
	for _, s := range u.fleet.Library.Systems() {
		if len(s.Automatic) > 0 && !slices.Contains(u.content.absent, path.Base(s.ID)) {
			u.joining[path.Base(s.ID)], u.joining[dashed(s)] = true, true
		}
	}
	known := map[string]bool{}
	maps.Copy(known, u.joining)
	for name := range u.fitted {
		known[name] = true
	}
	if u.base != nil {
		for _, f := range u.base.fitted {
			known[f.Name] = true // else gas would take the pictures of a gas-locker that is not there
		}
	}
	u.names = slices.Sorted(maps.Keys(known))
}

// dashed is the name of what joins by itself where its short name is taken.
func dashed(s *components.System) string { return strings.ReplaceAll(s.ID, "/", "-") }

// take finds out what a file shows and what its name says of it.
func (u *pickup) take(file string) {
	called := pictures.NameOf(file)
	name := called.After(u.names)
	if u.fitted[name] == nil && !u.joining[name] {
		u.stray(file, called)
		return
	}
	words := called.Words(name)
	if words == "" {
		u.wordless(file, name)
		return
	}
	u.found[name] = append(u.found[name], Picture{File: file, Alt: words, ByName: true, At: u.span("pictures/" + file)})
}

// give puts pictures where they belong. What a build sheet says of a fitted
// system is shared with other vans and stays as it is.
func (u *pickup) give(name string, shots []Picture) {
	for _, p := range shots {
		u.shot(p.File)
	}
	i := slices.IndexFunc(u.content.fitted, func(f *Fitted) bool { return f.Name == name })
	if i < 0 {
		u.content.joining[name] = shots
		return
	}
	f := *u.content.fitted[i]
	if f.listAt.File == u.file {
		shots = slices.Concat(f.Pictures, shots)
	}
	f.Pictures = shots
	u.content.fitted[i] = &f
}

func (u *pickup) stray(file string, called pictures.Called) {
	example := "gas-locker"
	if len(u.content.fitted) > 0 {
		example = u.content.fitted[0].Name
	}
	near := ""
	for _, begin := range called.Beginnings() {
		if near = problem.Nearest(begin, u.names); near != "" {
			break
		}
	}
	detail := fmt.Sprintf("Begin its name with the name of what it shows, as that stands in the spec, and say what it shows: \"%s the open door%s\".", example, path.Ext(file))
	if near != "" {
		detail = fmt.Sprintf("Did you mean %q? ", near) + detail
	}
	u.problems.Add(problem.New(problem.Warning, u.span("pictures/"+file), "stray-picture", fmt.Sprintf("Picture %q is called after nothing that is fitted", file), detail))
}

// wordless says of a picture without words that it is not shown, and gives both
// ways to words.
func (u *pickup) wordless(file, name string) {
	stem := strings.TrimSuffix(path.Base(file), path.Ext(file))
	detail := fmt.Sprintf("Those who cannot see it need to hear what it shows. Say so in its name: \"%s what it shows%s\".", stem, path.Ext(file))
	p := problem.New(problem.Warning, u.span("pictures/"+file), "picture-without-words", fmt.Sprintf("Picture %q has no words, so it is not shown", file), detail)
	// Lines to be copied are notes, which stay whole.
	item := fmt.Sprintf("{ file = %s, alt = \"what it shows\" }", manifest.Quote(file))
	list := "  pictures = [" + item + "]"
	switch f := u.fitted[name]; {
	case f == nil: // no spec can list its pictures
	case f.listAt.File == u.file:
		p = p.WithNote(f.listAt, "Or add to the list "+item+" here")
	case f.Span.File == u.file:
		p = p.WithNote(f.Span, "Or write below this line").WithNote(problem.Span{}, list)
	default:
		p = p.WithNote(problem.Span{File: u.file}, "Or write at the end of the spec").WithNote(problem.Span{}, "  "+f.header()).WithNote(problem.Span{}, list)
	}
	u.problems.Add(p)
}

// checkJoined warns of pictures that are called after something that could have
// joined by itself and is not there.
func (l *loader) checkJoined(v *Van, joining map[string][]Picture) {
	for _, name := range slices.Sorted(maps.Keys(joining)) {
		if v.Named(name) != nil {
			continue
		}
		for _, p := range joining[name] {
			if path.Dir(p.File) == v.Code {
				l.problems.Warnf(p.At, "stray-picture", fmt.Sprintf("Picture %q is called after nothing that is fitted", p.File), "This van has no %s. Rename it, or move it elsewhere.", name)
			}
		}
	}
}

// UnusablePicture is what to say of a picture that was picked up by its name and
// cannot be made: it keeps no page from being published. prefix is put before the
// name of its file.
func UnusablePicture(prefix, file string, err error) problem.Problem {
	code, summary, detail := whyNot(file, err)
	return problem.New(problem.Warning, problem.Span{File: prefix + "pictures/" + file}, code, summary, detail+" Until then it is not shown.")
}

// NeedsProgram is the code of what is said of a picture that only a program reads
// which the machine has not.
const NeedsProgram = "picture-needs-program"

// whyNot says why a picture cannot be made.
func whyNot(file string, err error) (code, summary, detail string) {
	var refusal *pictures.Refusal
	if errors.As(err, &refusal) {
		code = "bad-picture"
		if refusal.NeedsProgram {
			code = NeedsProgram
		}
		return code, refusal.Summary, refusal.Detail
	}
	var pathErr *fs.PathError
	if errors.As(err, &pathErr) {
		err = pathErr.Err
	}
	return "unreadable-file", fmt.Sprintf("Picture %q cannot be read", file), fmt.Sprintf("The system says: %v. Check its name and its permissions.", err)
}
