// Package content holds the demonstration fleet: invented vans of an invented
// operator, so that the program can be tried with no fleet at hand.
package content

import (
	"embed"
	"io/fs"
)

//go:embed fleet.toml labels.toml builds vans pages pictures
var fleet embed.FS

// Fleet is the demonstration fleet's folder.
func Fleet() fs.FS { return fleet }

//go:embed starter
var starter embed.FS

// Starter is the folder of a small fleet to begin with. Its file gitignore is
// to be written as .gitignore.
func Starter() fs.FS {
	files, err := fs.Sub(starter, "starter")
	if err != nil {
		panic(err) // the name is ours and valid
	}
	return files
}
