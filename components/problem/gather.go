package problem

import (
	"fmt"
	"strings"
)

// fewFiles is up to how many files that share a problem are named.
const fewFiles = 6

// Gather makes one of all problems that say the same of whole files, so that a
// reader reads it once: the first stands for all, with a note that names the
// other files. What is about a place in a file stays as it is.
func (l List) Gather() List {
	type key struct {
		severity              Severity
		code, summary, detail string
	}
	var gathered List
	first := map[key]int{}
	others := map[int][]string{}
	for _, p := range l {
		k := key{p.Severity, p.Code, p.Summary, p.Detail}
		if p.Start.Known() || p.File == "" {
			gathered.Add(p)
		} else if i, known := first[k]; known {
			others[i] = append(others[i], p.File)
		} else {
			first[k] = len(gathered)
			gathered.Add(p)
		}
	}
	for i, files := range others {
		text := "also: " + strings.Join(files[:min(len(files), fewFiles)], ", ")
		if more := len(files) - fewFiles; more > 0 {
			text += fmt.Sprintf(" and %d more", more)
		}
		gathered[i] = gathered[i].WithNote(Span{}, text)
	}
	return gathered
}
