//go:build !windows

package main

import "io"

// understandsColour is for consoles that have to be asked; terminals take
// colours from what is written to them.
func understandsColour(io.Writer) bool { return true }
