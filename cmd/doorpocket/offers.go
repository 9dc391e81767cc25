package main

import (
	"bufio"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"doorpocket/build/sheets"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/content"
	"doorpocket/layouts"
)

// of gives what an option or a word can be. Its tag "offers" names the words,
// with | between them, or a kind of thing.
func (l *commandLine) of(tag *kong.Tag) []offer {
	switch kind := tag.Get("offers"); kind {
	case "":
		return nil
	case "@folders", "@files":
		return []offer{{word: kind}}
	case "@vans":
		return vanCodes(l.fleet())
	case "@systems":
		return append(familyNames(), systemNames(l.fleet())...)
	case "@tables":
		return tableNames()
	case "@families":
		return familyNames()
	case "@grids":
		return append(gridNames(), offer{word: "@files"})
	case "@topics":
		return words(slices.DeleteFunc(helpTopics(), func(t string) bool { return t == firstPage }))
	default:
		return words(strings.Split(kind, "|"))
	}
}

func words(list []string) []offer {
	var all []offer
	for _, w := range list {
		all = append(all, offer{word: w})
	}
	return all
}

// fleet is the fleet that a command line is about. What is wrong with it is not
// for now.
func (l *commandLine) fleet() fs.FS {
	folder := l.values["fleet"]
	for _, p := range l.node.Positional {
		if p.Tag.Get("offers") == "@folders" && l.values[p.Name] != "" {
			folder = l.values[p.Name]
		}
	}
	s, err := findSource(folder, true)
	if err != nil {
		return content.Fleet()
	}
	return s.files
}

// heading finds the code and the name of a van above the first table of its
// spec. To read the specs of a large fleet properly takes longer than somebody
// at a keyboard waits, and here nothing hangs on it.
var heading = regexp.MustCompile(`^(code|name)\s*=\s*["']([^"']*)["']`)

// vanCodes gives the codes of a fleet's vans with their names.
func vanCodes(files fs.FS) []offer {
	names, err := fs.Glob(files, "vans/*.toml")
	if err != nil {
		return nil
	}
	var all []offer
	for _, name := range names {
		if o := vanHeading(files, name); o.word != "" {
			all = append(all, o)
		}
	}
	slices.SortFunc(all, func(a, b offer) int { return strings.Compare(a.word, b.word) })
	return all
}

func vanHeading(files fs.FS, name string) (o offer) {
	f, err := files.Open(name)
	if err != nil {
		return o
	}
	defer f.Close()
	for lines := bufio.NewScanner(f); lines.Scan() && !strings.HasPrefix(lines.Text(), "["); {
		switch found := heading.FindStringSubmatch(lines.Text()); {
		case found == nil:
		case found[1] == "code":
			o.word = found[2]
		default:
			o.about = found[2]
		}
	}
	return o
}

// library is the library that comes with the program, which is in order.
func library() *components.Library {
	lib, _ := components.Load(components.Embedded())
	return lib
}

// systemNames gives the systems of the library and a fleet's own ones.
func systemNames(files fs.FS) []offer {
	lib, _ := spec.Library(files, "", library())
	var all []offer
	for _, s := range lib.Systems() {
		o := offer{word: s.ID}
		if w := s.Words[language]; w != nil {
			o.about = w.Title
		}
		all = append(all, o)
	}
	return all
}

func familyNames() []offer {
	var all []offer
	for _, f := range library().Families {
		all = append(all, offer{f.ID, f.Words[language].Title})
	}
	return all
}

func tableNames() []offer {
	tables := library().Tables
	var all []offer
	for _, id := range slices.Sorted(maps.Keys(tables)) {
		all = append(all, offer{id, tables[id].Words[language].Caption})
	}
	return all
}

func gridNames() []offer {
	grids, err := sheets.Grids(layouts.Files())
	if err != nil {
		return nil
	}
	var all []offer
	for _, g := range grids {
		all = append(all, offer{word: g.Name})
	}
	return all
}
