package render

import (
	"bytes"
	"strings"
)

// names numbers the classes and elements that the rules of a sheet name; others
// do not matter to it.
type names struct {
	classes, elements map[string]int
	count             int
}

// of gives the number of a name, a new one where it has none.
func (n *names) of(known map[string]int, name string) int {
	number, ok := known[name]
	if !ok {
		number = n.count
		known[name] = number
		n.count++
	}
	return number
}

func (n *names) class(seen *nameSet, name string) {
	if number, ok := n.classes[name]; ok {
		seen.add(number)
	}
}

func (n *names) element(seen *nameSet, name string) {
	if number, ok := n.elements[name]; ok {
		seen.add(number)
	}
}

// nameSet is a set of numbers of names, one bit each.
type nameSet []uint64

func (s *nameSet) add(number int) {
	for len(*s) <= number/64 {
		*s = append(*s, 0)
	}
	(*s)[number/64] |= 1 << (number % 64)
}

// hasAll reports whether all names of another set are in this one.
func (s nameSet) hasAll(other nameSet) bool {
	for i, bits := range other {
		if bits != 0 && (i >= len(s) || bits&^s[i] != 0) {
			return false
		}
	}
	return true
}

// Parts of a page as our templates write it, and what tick.js will give a class.
var (
	classStart  = []byte(`class="`)
	scriptStart = []byte(`<script src="`)
	toneStart   = []byte(`&#34;tone&#34;:&#34;`)
)

// scan adds the names of the elements and classes of a page, and tells of its
// scripts. Within the values of attributes and in texts < and " are escaped.
func (n *names) scan(seen *nameSet, page []byte, script func(name string)) {
	for rest := page; ; {
		i := bytes.IndexByte(rest, '<')
		if i < 0 {
			break
		}
		rest = rest[i:]
		name := leading(rest[1:], isNameByte)
		if len(name) == 0 || name[0] < 'a' {
			rest = rest[1:]
			continue
		}
		if number, ok := n.elements[string(name)]; ok {
			seen.add(number)
		}
		if bytes.HasPrefix(rest, scriptStart) {
			script(scriptName(rest[len(scriptStart):]))
		}
		rest = rest[1+len(name):]
		tag, _, _ := bytes.Cut(rest, []byte(">"))
		if _, value, ok := bytes.Cut(tag, classStart); ok {
			value, _, _ = bytes.Cut(value, []byte(`"`))
			for class := range bytes.FieldsSeq(value) {
				if number, ok := n.classes[string(class)]; ok {
					seen.add(number)
				}
			}
		}
	}
	for _, after, ok := bytes.Cut(page, toneStart); ok; _, after, ok = bytes.Cut(after, toneStart) {
		n.class(seen, string(leading(after, func(c byte) bool { return c >= 'a' && c <= 'z' })))
	}
}

func isNameByte(c byte) bool { return c >= 'a' && c <= 'z' || c >= '0' && c <= '9' }

func leading(text []byte, is func(byte) bool) []byte {
	for i, c := range text {
		if !is(c) {
			return text[:i]
		}
	}
	return text
}

// scriptName is the name of a script that bears its sum: tick of
// ../parts/tick-0a1b.js.
func scriptName(after []byte) string {
	address, _, _ := bytes.Cut(after, []byte(`"`))
	name := string(address[bytes.LastIndexByte(address, '/')+1:])
	name, _, _ = strings.Cut(name, "-")
	return name
}

// keptSheets is how many sheets are remembered, by the names that pages use: some
// megabytes at most. There are many pages and few such sets.
const keptSheets = 1000

func (s nameSet) key() string {
	var b strings.Builder
	for _, bits := range s {
		for shift := 0; shift < 64; shift += 8 {
			b.WriteByte(byte(bits >> shift))
		}
	}
	return b.String()
}
