package compare

import (
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/rogpeppe/go-internal/diff"
)

// files tells which text files of a fleet folder changed, line by line.
func files(old, new fs.FS) []File {
	names := slices.Concat(texts(old), texts(new))
	slices.Sort(names)
	names = slices.Compact(names)
	var all []File
	for _, name := range names {
		was, now := contents(old, name), contents(new, name)
		if !bytes.Equal(was, now) {
			all = append(all, differing(name, was, now))
		}
	}
	return all
}

// texts lists the files that an operator writes.
func texts(files fs.FS) []string {
	var all []string
	for _, pattern := range []string{"*.toml", "vans/*.toml", "builds/*.toml", "pages/*.md", "systems/*/*/*.toml", "systems/*/*/*.md"} {
		found, err := fs.Glob(files, pattern)
		if err != nil {
			panic(err) // the patterns are ours
		}
		all = append(all, slices.DeleteFunc(found, func(name string) bool { return strings.HasPrefix(path.Base(name), ".") })...)
	}
	return all
}

// contents is a file with the line ends of other systems made ours, nil where
// there is none.
func contents(files fs.FS, name string) []byte {
	data, err := fs.ReadFile(files, name)
	if err != nil {
		return nil
	}
	return bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
}

func differing(name string, was, now []byte) File {
	f := File{Name: name}
	for line := range strings.Lines(string(diff.Diff("a", was, "b", now))) {
		var h Hunk
		var oldLines, newLines int
		if _, err := fmt.Sscanf(line, "@@ -%d,%d +%d,%d @@", &h.Old, &oldLines, &h.New, &newLines); err == nil && line[0] == '@' {
			f.Hunks = append(f.Hunks, h)
			continue
		}
		if len(f.Hunks) == 0 {
			continue // the head
		}
		last := &f.Hunks[len(f.Hunks)-1]
		l := Line{Mark: line[0], Text: strings.TrimSuffix(line[1:], "\n")}
		switch l.Mark {
		case '+':
			f.Added++
		case '-':
			f.Removed++
		case ' ':
		default: // what says that a file does not end in a new line
			continue
		}
		last.Lines = append(last.Lines, l)
	}
	return f
}
