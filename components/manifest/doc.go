// Package manifest reads the TOML files that people write for us: strictly, and
// with the place of every key and value, so that each mistake can be shown on
// the line where it stands.
//
// The usual call parses a file, reads it by name, and asks at the end for what
// nobody read:
//
//	table, found := manifest.Parse("vans/rowan.toml", data)
//	if table == nil {
//		return found // too broken to look further
//	}
//	r := manifest.NewReader(table, &found)
//	name, _ := r.Text("name", manifest.Required)
//	date, _ := r.Date("spec_date")
//	if body := r.Table("body"); body != nil {
//		steering, _ := body.Text("steering")
//	}
//	r.Done() // reports unknown keys, here and in every table handed out
//
// Every mistake is reported once and none stops the reading: a value that could
// not be read is left out by the reader in silence, because Parse has already
// reported it.
//
// The values come from a TOML library; it gives no places for keys, so a small
// scanner of our own finds those. The scanner trusts the library about what is
// well formed, and a fuzz test holds the two together.
//
// Keys are exact: "Name" is not "name". TOML forbids writing a key twice, and so
// do we for two keys that differ only in case. Numbers must be finite.
package manifest
