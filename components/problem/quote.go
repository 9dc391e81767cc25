package problem

import "strings"

// Quote gives every problem that has a place but no source line the line it
// stands on, from the bytes of the files by name.
func (l List) Quote(files map[string][]byte) {
	for i := range l {
		p := &l[i]
		if p.SourceLine == "" && p.Start.Known() {
			p.SourceLine = lineOf(files[p.File], p.Start.Line)
		}
	}
}

// lineOf is the n-th line of a file, counted from one, without its ending.
func lineOf(data []byte, n int) string {
	for line := range strings.Lines(string(data)) {
		if n--; n == 0 {
			return strings.TrimRight(line, "\r\n")
		}
	}
	return ""
}
