package spec

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"doorpocket/build/pictures"
	"doorpocket/components/problem"
)

// Albums lists the folders in the folder pictures: one may hold pictures of the
// van, or of the vans of the build sheet, that it is called after.
func Albums(files fs.FS) []string {
	entries, err := fs.ReadDir(files, "pictures")
	if err != nil {
		return nil
	}
	var all []string
	for _, e := range entries {
		if !isJunk(e.Name()) && isFolder(files, "pictures/"+e.Name(), e) {
			all = append(all, e.Name())
		}
	}
	return all
}

// Album lists what lies in one of them, but for what computers put beside
// photographs. Folders end in a slash.
func Album(files fs.FS, name string) []string {
	entries, err := fs.ReadDir(files, "pictures/"+name)
	if err != nil {
		return nil
	}
	var all []string
	for _, e := range entries {
		switch {
		case isJunk(e.Name()):
		case isFolder(files, "pictures/"+name+"/"+e.Name(), e):
			all = append(all, e.Name()+"/")
		default:
			all = append(all, e.Name())
		}
	}
	return all
}

// isFolder reports whether an entry is a folder, or leads to one that lies
// elsewhere.
func isFolder(files fs.FS, name string, e fs.DirEntry) bool {
	if e.Type()&fs.ModeSymlink == 0 {
		return e.IsDir()
	}
	info, err := fs.Stat(files, name)
	return err == nil && info.IsDir()
}

// isJunk reports whether a computer or an editor put a file there for itself.
func isJunk(name string) bool {
	switch strings.ToLower(name) {
	case "thumbs.db", "ehthumbs.db", "desktop.ini", "icon\r", "__macosx", "@eadir":
		return true
	}
	return strings.HasPrefix(name, ".") || strings.HasSuffix(name, "~")
}

// album gives the photographs in the album of a van or build sheet, in the order
// in which people count, and warns of what else lies there. Where there is no
// such folder nothing is read.
func (l *loader) album(name string) []string {
	if !l.albums[name] {
		return nil
	}
	var shots []string
	for _, file := range Album(l.files, name) {
		at := l.span("pictures/" + name + "/" + file)
		switch {
		case strings.HasSuffix(file, "/"):
			l.problems.Warnf(at, "file-not-read", "Folder is not read", "Pictures lie in the folder of their van and not below it: move them up.")
		case pictures.IsPhotograph(file):
			shots = append(shots, name+"/"+file)
		case path.Ext(file) != ".txt" && path.Ext(file) != ".md":
			l.problems.Warnf(at, "file-not-read", "File is not read", "Pictures end in .jpg, .jpeg, .png, .webp or .heic. Save a copy as one of them, or move the file elsewhere.")
		}
	}
	slices.SortFunc(shots, func(a, b string) int { return pictures.NameOf(a).Compare(pictures.NameOf(b)) })
	return shots
}

// checkAlbums warns of folders of pictures that no van and no build sheet goes
// by.
func (l *loader) checkAlbums(vans []Summary) {
	names := slices.Collect(maps.Keys(l.sheets))
	for _, v := range vans {
		if v.Code == "" {
			return // it may be the one, which cannot be read
		}
		names = append(names, v.Code)
	}
	slices.Sort(names)
	for _, name := range slices.Sorted(maps.Keys(l.albums)) {
		if slices.Contains(names, name) {
			continue
		}
		detail := "A folder of pictures is called after the code of a van, such as pictures/RW, or after a build sheet. Rename it, or move it elsewhere."
		if near := problem.Nearest(name, names); near != "" {
			detail = fmt.Sprintf("Did you mean %q? ", "pictures/"+near) + detail
		}
		if slices.ContainsFunc(l.fleet.Left, func(v *LeftVan) bool { return v.Code == name }) {
			detail = "This van has left the fleet. Move the folder elsewhere."
		}
		l.problems.Warnf(l.span("pictures/"+name), "unknown-album", fmt.Sprintf("No van and no build sheet %q for these pictures", name), "%s", detail)
	}
}
