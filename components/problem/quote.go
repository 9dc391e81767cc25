package problem

import "bytes"

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

// lineOf is the n-th line of a file, counted from one, without its ending. It
// is a copy, so that a problem does not keep the whole file.
func lineOf(data []byte, n int) string {
	for line := range bytes.Lines(data) {
		if n--; n == 0 {
			return string(bytes.TrimRight(line, "\r\n"))
		}
	}
	return ""
}
