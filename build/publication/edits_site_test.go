package publication_test

import (
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"

	"doorpocket/build/publication"
)

// siteEdits are the ways in which a site becomes another than what was published, or
// only a part of what changed is published.
var siteEdits = map[string]func(e *edited){
	"spoil page": func(e *edited) {
		e.spoil("hirers/*/index.html", func(name string) error { return os.WriteFile(name, []byte("spoilt"), 0o644) })
	},
	"lose page":    func(e *edited) { e.spoil("hirers/*/*/*/index.html", os.Remove) },
	"lose folder":  func(e *edited) { e.spoil("hirers/*", os.RemoveAll) },
	"lose script":  func(e *edited) { e.spoil("hirers/parts/*", os.Remove) },
	"lose record":  func(e *edited) { e.spoil("ledger/*", os.Remove) },
	"spoil record": func(e *edited) { e.spoil("ledger/*", func(name string) error { return os.Truncate(name, 300) }) },
	"page written over, its time set back": func(e *edited) {
		e.spoil("hirers/*/*/*/index.html", func(name string) error { return rewrite(name, strings.ToUpper) })
	},
	"page replaced by an older one": func(e *edited) {
		e.spoil("staff/*/index.html", func(name string) error {
			data, err := os.ReadFile(name)
			aside := filepath.Join(filepath.Dir(e.site), "aside.html")
			if err == nil {
				err = os.WriteFile(aside, slices.Repeat([]byte("x"), len(data)), 0o644)
			}
			if err == nil {
				err = os.Chtimes(aside, longAgo(), longAgo())
			}
			if err == nil {
				err = os.Rename(aside, name)
			}
			return err
		})
	},
	"picture written over": func(e *edited) {
		e.spoil("hirers/pictures/*", func(name string) error { return rewrite(name, func(text string) string { return text[1:] + text[:1] }) })
	},
	"touched": func(e *edited) {
		e.spoil("hirers/*/index.html", func(name string) error { return os.Chtimes(name, time.Now(), time.Now()) })
	},
	"clock was ahead": func(e *edited) {
		later := time.Now().Add(time.Hour)
		e.spoil("ledger/*", func(name string) error { return os.Chtimes(name, later, later) })
		e.spoil("hirers/*/index.html", func(name string) error { return rewrite(name, strings.ToUpper) })
	},
	"only a part published": func(e *edited) {
		edits["name"](e)
		edits["hours"](e)
		e.spoil("hirers/*/*/*/index.html", func(name string) error { return rewrite(name, strings.ToUpper) }) // maybe of the other part
		half, err := publication.ParsePart([]string{"1/2", "2/2", "1/3"}[e.random.IntN(3)])
		if err != nil {
			panic(err)
		}
		if _, _, err := publishFiles(e.files, e.site, func(job *publication.Job) { e.as(job); job.Part = half }); err != nil {
			panic(err)
		}
	},
}

// longAgo is before anything that a test publishes; where the system does not tell
// when a file was last changed, only a later time can show it.
func longAgo() time.Time {
	if runtime.GOOS == "linux" || runtime.GOOS == "darwin" {
		return time.Date(2020, 1, 2, 3, 4, 5, 0, time.UTC)
	}
	return time.Now().Add(time.Second)
}

// rewrite puts as many other bytes into a file and sets its time back.
func rewrite(name string, other func(text string) string) error {
	data, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	changed := []byte(other(string(data)))
	if len(changed) != len(data) {
		changed = slices.Repeat([]byte("x"), len(data))
	}
	if err := os.WriteFile(name, changed, 0o644); err != nil {
		return err
	}
	return os.Chtimes(name, longAgo(), longAgo())
}

// spoil does something to one of the files of the site.
func (e *edited) spoil(pattern string, how func(name string) error) {
	found, err := filepath.Glob(filepath.Join(e.site, pattern))
	if err == nil && len(found) > 0 {
		err = how(found[e.random.IntN(len(found))])
	}
	if err != nil {
		panic(err)
	}
}
