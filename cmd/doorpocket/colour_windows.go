package main

import (
	"io"
	"os"

	"golang.org/x/sys/windows"
)

// understandsColour tells the console to take colours from what is written to
// it; old ones cannot.
func understandsColour(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	var mode uint32
	console := windows.Handle(f.Fd())
	if err := windows.GetConsoleMode(console, &mode); err != nil {
		return false
	}
	return windows.SetConsoleMode(console, mode|windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING) == nil
}
