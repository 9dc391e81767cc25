package render

import (
	"crypto/sha256"
	"encoding/base32"
	"html/template"
)

// revisionToken stands where the revision goes until the page is complete. No
// text can hold it: the noncharacter is refused in specs and pages.
const revisionToken = template.HTML("\ufdd0revision\ufdd0")

// letters are digits and capitals without those that are easily mistaken for
// another when read out or written by hand.
var letters = base32.NewEncoding("23456789ABCDEFGHJKLMNPQRSTUVWXYZ").WithPadding(base32.NoPadding)

// revisionLong is how many letters a revision has: 30 bits tell printouts of
// one page apart.
const revisionLong = 6

// Revision names a content in a few letters that can be read out.
func Revision(content []byte) string {
	sum := sha256.Sum256(content)
	return revisionIn(sum[:])
}

func revisionIn(sum []byte) string { return letters.EncodeToString(sum)[:revisionLong] }
