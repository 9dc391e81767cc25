//go:build !linux && !darwin

package site

import "errors"

// exchange would let two folders change places at once; this system cannot.
func exchange(string, string) error { return errors.ErrUnsupported }
