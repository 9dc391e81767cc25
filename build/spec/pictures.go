package spec

import (
	"fmt"
	"io"
	"io/fs"
	"maps"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"

	"doorpocket/build/label"
	"doorpocket/build/pictures"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// pictures reads the pictures of a fitted system, in place of those that its
// build sheet gives it.
func (l *loader) pictures(r *manifest.Reader, f *Fitted) {
	list := r.Tables("pictures")
	if list == nil {
		return
	}
	f.Pictures, f.listAt = nil, r.KeySpan("pictures")
	for _, p := range list {
		file, ok := p.Text("file", manifest.Required, manifest.Example(`"rowan-gas-locker.jpg"`))
		alt, _ := p.Text("alt", manifest.Required, manifest.Example(`"The open locker with both cylinders"`))
		if !ok {
			continue
		}
		if strings.Count(file, "/") > 1 || strings.Contains(file, `\`) || !fs.ValidPath(file) || label.Reserved(path.Base(file)) {
			p.Problem("file", "bad-name", fmt.Sprintf("%q is no file in the folder pictures", file), "Write the file's name, or one folder and the file's name, as in \"RW/gas-locker.jpg\".")
			continue
		}
		picture := Picture{File: file, Alt: strings.TrimSpace(alt), At: p.Span("file"), Marks: l.marks(p)}
		if first := f.Picture(picture.Stem()); first != nil {
			p.Report(problem.New(problem.Error, picture.At, "duplicate-picture", fmt.Sprintf("A second picture %q of one system", picture.Stem()),
				"Pages call a picture by its file's name without the ending: remove one of the two, or rename its file.").WithNote(first.At, "first written here"))
			continue
		}
		f.Pictures = append(f.Pictures, picture)
		if _, err := fs.Stat(l.files, "pictures/"+file); err != nil {
			p.Problem("file", "missing-picture", fmt.Sprintf("No picture %q", file), l.pictureHint(file))
			continue
		}
		l.shot(file, picture.At)
	}
}

// shot notes a picture, and where it is listed.
func (l *loader) shot(file string, listed ...problem.Span) {
	l.shots[file] = append(l.shots[file], listed...)
}

func (l *loader) pictureHint(file string) string {
	var there []string
	folder := path.Dir(file)
	if entries, err := fs.ReadDir(l.files, path.Join("pictures", folder)); err == nil {
		for _, e := range entries {
			there = append(there, path.Join(folder, e.Name()))
		}
	}
	if near := problem.Nearest(file, there); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	return "Put the file into the folder pictures, or remove the line."
}

// makePictures makes every picture that is named, each once however many vans
// show it, and as many at a time as there are processors: it is by far the
// longest part of reading a fleet.
func (l *loader) makePictures() {
	files := slices.Sorted(maps.Keys(l.shots))
	made := make([]pictures.Made, len(files))
	errs := make([]error, len(files))
	queue := make(chan int)
	var group sync.WaitGroup
	for range min(len(files), runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := range queue {
				made[i], errs[i] = l.makePicture(files[i], pictures.MakeJPEG)
			}
		})
	}
	for i := range files {
		queue <- i
	}
	close(queue)
	group.Wait()
	l.fleet.Pictures = map[string]pictures.Made{}
	for i, file := range files {
		if errs[i] != nil {
			if spans := l.shots[file]; len(spans) > 0 {
				l.badPicture(spans, file, errs[i])
			} else {
				l.problems.Add(UnusablePicture(l.prefix, file, errs[i]))
			}
			continue
		}
		l.fleet.Pictures[file] = made[i]
	}
}

// makePicture reads no more of a file than can be of use: a film put there by
// mistake may be larger than the memory.
func (l *loader) makePicture(name string, how func(name string, data []byte) (pictures.Made, error)) (pictures.Made, error) {
	file, err := l.files.Open("pictures/" + name)
	if err != nil {
		return pictures.Made{}, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, pictures.MaxBytes+1))
	if err != nil {
		return pictures.Made{}, err
	}
	return how(name, data)
}

// badPicture reports a picture once, with every place that names it.
func (l *loader) badPicture(named []problem.Span, file string, err error) {
	code, summary, detail := whyNot(file, err)
	p := problem.New(problem.Error, named[0], code, summary, detail)
	for _, at := range named[1:] {
		p = p.WithNote(at, "also named here")
	}
	l.problems.Add(p)
}
