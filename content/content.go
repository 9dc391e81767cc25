// Package content holds the demonstration fleet: invented vans of an invented
// operator, so that the program can be tried with no fleet at hand.
package content

import (
	"embed"
	"io/fs"
)

//go:embed fleet.toml all:builds all:vans pages
var fleet embed.FS

// Fleet is the demonstration fleet's folder.
func Fleet() fs.FS { return fleet }
