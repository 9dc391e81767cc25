// Package offline writes the worker that keeps the guide of one van on a phone:
// the script of the layouts, with the list of exactly the files that were
// written.
//
// The worker of a van depends on nothing but the files of that van and the
// shared files that its pages use.
package offline

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"slices"
	"strings"
)

// SumLong is how many hexadecimal digits of a file's SHA-256 the list holds: 64
// bits tell a file from whatever a network may give in its place.
const SumLong = 16

// File is one file of a guide, by the path below the hirer tree at which it was
// written and the first digits of the sum of its content.
type File struct{ Path, Sum string }

// Sum is what a list holds of a file's SHA-256.
func Sum(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])[:SumLong]
}

// Guide is what a worker has to know.
type Guide struct {
	Van     string // its code
	Safety  string // changes where something changes that keeps people safe
	Files   []File
	Spare   []File      // kept only where a browser asks for one of them: it cannot read what Files has instead
	Instead [][2]string // a path that is not kept, and the file that stands in for it
	Lost    []byte      // the page for one that is not on the phone; START is the van's start
}

// Path is where the list and the script of a van stand below the hirer tree.
func Path(van string) string { return van + "/kept.js" }

// Address is what phones register for a van, below the hirer tree: not in the
// van's folder, so that it also answers for the van's address without a slash.
func Address(van string) string { return RootPath + "?van=" + van }

// RootPath is where the file of that address stands, the same for all vans.
const RootPath = "worker.js"

// Root is its content: it takes in the list and the script of its van.
func Root() []byte {
	return []byte(`"use strict";
const [van] = new URL(self.location).searchParams.getAll("van");
if (!/^[A-Z][A-Z0-9]{1,3}$/.test(van)) throw new Error("no van");
importScripts(van + "/kept.js");
`)
}

// Worker writes the list of a guide and, below it, the layouts' script.
func Worker(script []byte, g Guide) []byte {
	list := struct {
		Van     string      `json:"van"`
		Safety  string      `json:"safety"`
		Files   [][2]string `json:"files"`
		Spare   [][2]string `json:"spare"`
		Instead [][2]string `json:"instead"`
		Lost    string      `json:"lost"`
	}{g.Van, g.Safety, nil, [][2]string{}, g.Instead, string(g.Lost)}
	files := slices.Clone(g.Files)
	slices.SortStableFunc(files, func(a, b File) int { return cmp.Compare(rank(g.Van, a.Path), rank(g.Van, b.Path)) })
	for _, f := range files {
		list.Files = append(list.Files, [2]string{strings.TrimSuffix(f.Path, "index.html"), f.Sum})
	}
	for _, f := range g.Spare {
		list.Spare = append(list.Spare, [2]string{f.Path, f.Sum})
	}
	if list.Instead == nil {
		list.Instead = [][2]string{}
	}
	var b bytes.Buffer
	b.WriteString("const guide = ")
	if err := json.NewEncoder(&b).Encode(list); err != nil {
		panic(err) // strings can always be encoded
	}
	return append(append(bytes.TrimSpace(b.Bytes()), ";\n"...), script...)
}

// rank is the order in which files are fetched: what one needs most comes first
// where the signal goes early.
func rank(van, path string) int {
	path, own := strings.CutPrefix(path, van+"/")
	switch {
	case own && path == "index.html":
		return 0
	case own && strings.HasPrefix(path, "wrong/"):
		return 1
	case strings.HasSuffix(path, ".js"):
		return 2
	case own:
		return 3
	}
	return 4
}

// Vans is the list of the vans that a fleet has, by which the worker of a van
// that left it knows that its time is over.
func Vans(codes []string) []byte {
	data, err := json.Marshal(map[string][]string{"vans": codes})
	if err != nil {
		panic(err) // strings can always be encoded
	}
	return append(data, '\n')
}
