// Package layouts holds what pages are made of besides the library's words:
// templates, the style sheets, the few scripts, the safety signs and the words
// of the interface. It knows nothing of vans.
package layouts

import (
	"embed"
	"io/fs"
	"path"
	"strings"
)

//go:embed pages/*.html styles/*.css scripts/*.js thirdparty/*/* signs/*.svg grids/*.toml words.*.toml
var files embed.FS

// Files is the tree of the layouts: pages, styles, scripts, signs, grids and
// words.LANG.toml.
func Files() fs.FS { return files }

// Signs lists the safety signs that are drawn, by their ISO 7010 identifiers.
func Signs() []string {
	names, err := fs.Glob(files, "signs/*.svg")
	if err != nil {
		panic(err) // the pattern is ours
	}
	for i, name := range names {
		names[i] = strings.TrimSuffix(path.Base(name), ".svg")
	}
	return names
}
