//go:build !linux && !darwin

package site

// flush would wait until the disk holds what was written. Here that could only be
// asked for file by file, which takes longer than all the rest.
func flush(string) error { return nil }
