package render

import (
	"bytes"
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

// seal puts the revision of a page, made from its content, into the page, also
// where it stands in an address.
func seal(page []byte) []byte {
	revision := []byte(Revision(page))
	page = bytes.ReplaceAll(page, []byte(query(string(revisionToken))), revision)
	return bytes.ReplaceAll(page, []byte(revisionToken), revision)
}

// Revision names a content in a few letters that can be read out.
func Revision(content []byte) string {
	sum := sha256.Sum256(content)
	return letters.EncodeToString(sum[:])[:revisionLong]
}
