package spec

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
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
	f.Pictures = nil
	for _, p := range list {
		file, ok := p.Text("file", manifest.Required, manifest.Example(`"rowan-gas-locker.jpg"`))
		alt, _ := p.Text("alt", manifest.Required, manifest.Example(`"The open locker with both cylinders"`))
		if !ok {
			continue
		}
		if strings.ContainsAny(file, `/\`) || !fs.ValidPath(file) || label.Reserved(file) {
			p.Problem("file", "bad-name", fmt.Sprintf("%q is no file in the folder pictures", file), "Write the file's name without a folder.")
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
		l.shots[file] = append(l.shots[file], picture.At)
	}
}

func (l *loader) pictureHint(file string) string {
	var there []string
	if entries, err := fs.ReadDir(l.files, "pictures"); err == nil {
		for _, e := range entries {
			there = append(there, e.Name())
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
				made[i], errs[i] = l.makePicture(files[i])
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
			l.badPicture(l.shots[file], file, errs[i])
			continue
		}
		l.fleet.Pictures[file] = made[i]
	}
}

// makePicture reads no more of a file than can be of use: a film put there by
// mistake may be larger than the memory.
func (l *loader) makePicture(name string) (pictures.Made, error) {
	file, err := l.files.Open("pictures/" + name)
	if err != nil {
		return pictures.Made{}, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, pictures.MaxBytes+1))
	if err != nil {
		return pictures.Made{}, err
	}
	return pictures.Make(name, data)
}

// badPicture reports a picture once, with every place that names it.
func (l *loader) badPicture(named []problem.Span, file string, err error) {
	code, summary, detail := "unreadable-file", fmt.Sprintf("Picture %q cannot be read", file),
		fmt.Sprintf("The system says: %v. Check its name and its permissions.", err)
	var refusal *pictures.Refusal
	var pathErr *fs.PathError
	switch {
	case errors.As(err, &refusal):
		code, summary, detail = "bad-picture", refusal.Summary, refusal.Detail
	case errors.As(err, &pathErr):
		detail = fmt.Sprintf("The system says: %v. Check its name and its permissions.", pathErr.Err)
	}
	p := problem.New(problem.Error, named[0], code, summary, detail)
	for _, at := range named[1:] {
		p = p.WithNote(at, "also named here")
	}
	l.problems.Add(p)
}
