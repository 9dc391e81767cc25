package preview

import (
	"io/fs"
	"os"
	"path/filepath"

	"doorpocket/build/spec"
)

// lying is where a fleet's files lie. Its folders may be links to folders elsewhere,
// and so may any folder below them.
type lying struct {
	folders map[string]fs.FileInfo // by name below the fleet folder
	links   []string               // that lead to no folder
	gone    map[string]bool        // by real name: folders that were gone into, so that links in a circle end
}

// lookAround goes through a fleet folder.
func lookAround(root string) lying {
	l := lying{folders: map[string]fs.FileInfo{}, gone: map[string]bool{}}
	info, err := os.Stat(root)
	if err != nil || !info.IsDir() {
		return l
	}
	l.folders[root] = info
	if real, err := filepath.EvalSymlinks(root); err == nil {
		l.gone[real] = true
	}
	entries, _ := os.ReadDir(root) // none where it is gone while we look; the next look will tell
	for _, e := range entries {
		if e.Type()&fs.ModeSymlink != 0 {
			l.link(filepath.Join(root, e.Name()))
		}
	}
	for _, folder := range spec.Folders {
		name := filepath.Join(root, folder)
		if real, err := filepath.EvalSymlinks(name); err == nil {
			l.into(name, real)
		}
	}
	return l
}

// link notes a link where it leads to no folder.
func (l *lying) link(name string) (real string, folder bool) {
	info, err := os.Stat(name)
	if err != nil || !info.IsDir() {
		l.links = append(l.links, name)
		return "", false
	}
	real, err = filepath.EvalSymlinks(name)
	return real, err == nil
}

// into goes through a folder and all below it, once by whatever name.
func (l *lying) into(name, real string) {
	info, err := os.Stat(name)
	if err != nil || !info.IsDir() || l.gone[real] {
		return
	}
	l.gone[real], l.folders[name] = true, info
	entries, _ := os.ReadDir(name)
	for _, e := range entries {
		below := filepath.Join(name, e.Name())
		switch {
		case e.IsDir():
			l.into(below, filepath.Join(real, e.Name()))
		case e.Type()&fs.ModeSymlink != 0:
			if real, folder := l.link(below); folder {
				l.into(below, real)
			}
		}
	}
}
