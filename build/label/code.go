package label

import (
	"regexp"
	"strings"
)

// A van code is two or three letters and digits that begin with a letter, such
// as RW: it is the first folder of every address of the van.
var vanCode = regexp.MustCompile(`^[A-Z][A-Z0-9]{1,3}$`)

// A label code is a letter and a number without leading zero, such as G1.
var labelCode = regexp.MustCompile(`^[A-Z][1-9][0-9]?$`)

// ValidVan reports whether code can be a van's: two to four capital letters
// and digits, a letter first, and no name that some file systems reserve.
func ValidVan(code string) bool { return vanCode.MatchString(code) && !Reserved(code) }

// ValidLabel reports whether code can stand on a label: a letter and a number
// from 1 to 99.
func ValidLabel(code string) bool { return labelCode.MatchString(code) }

// reserved are the device names no file or folder can have on Windows, with
// or without an ending.
var reserved = regexp.MustCompile(`^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\..*)?$`)

// Reserved reports whether a folder of this name could not be written on every
// system.
func Reserved(name string) bool { return reserved.MatchString(strings.ToLower(name)) }
