package label

import (
	"bytes"
	"fmt"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// side is one half of a merge that did not work out.
type side struct {
	at    problem.Span
	lines []string
}

// mergeMarks finds what a merge of two branches leaves where both changed the
// same lines, and says what to do with each place.
func mergeMarks(name string, data []byte) problem.List {
	if !bytes.Contains(data, []byte("<<<<<<<")) && !bytes.Contains(data, []byte(">>>>>>>")) {
		return nil
	}
	var found problem.List
	var ours, theirs side
	in := 0 // 1 in ours, 2 in the common ancestor, 3 in theirs
	number := 0
	for line := range strings.Lines(string(data)) {
		number++
		line = strings.TrimRight(line, "\r\n")
		at := problem.Span{File: name, Start: problem.Pos{Line: number, Column: 1}, Length: len([]rune(line))}
		switch {
		case marks(line, '<'):
			ours, theirs, in = side{at: at}, side{}, 1
		case in > 0 && marks(line, '|'):
			in = 2
		case in > 0 && marks(line, '='):
			theirs.at, in = at, 3
		case marks(line, '>'):
			found.Add(explainMerge(ours, theirs, at, in))
			in = 0
		case in == 1:
			ours.lines = append(ours.lines, line)
		case in == 3:
			theirs.lines = append(theirs.lines, line)
		}
	}
	if in > 0 {
		found.Add(problem.New(problem.Error, ours.at, "merge-conflict", "A merge that was not finished", "The end of the conflict, a line of >>>>>>>, is missing. Restore the file with git checkout --merge "+RegisterFile+" and resolve it again."))
	}
	return found
}

// marks reports whether a line is one that git puts round a conflict.
func marks(line string, char byte) bool {
	run := strings.Repeat(string(char), 7)
	return line == run || strings.HasPrefix(line, run+" ")
}

func explainMerge(ours, theirs side, end problem.Span, in int) problem.Problem {
	if in != 3 {
		return problem.New(problem.Error, end, "merge-conflict", "A merge that was not finished", "This is the end of a conflict whose beginning is missing. Restore the file with git checkout --merge "+RegisterFile+" and resolve it again.")
	}
	p := problem.New(problem.Error, ours.at, "merge-conflict", "Two branches changed the register here", mergeAdvice(ours.lines, theirs.lines)).
		WithNote(theirs.at, "the other branch begins here")
	return p.WithNote(end, "and ends here")
}

// mergeAdvice compares the lines of two branches.
func mergeAdvice(ours, theirs []string) string {
	theirOwn := map[string]string{}
	for _, line := range theirs {
		if key, _, ok := registerLine(line); ok {
			theirOwn[key] = line
		}
	}
	var parts []string
	for _, line := range ours {
		key, _, ok := registerLine(line)
		if other, both := theirOwn[key]; ok && both && strings.TrimSpace(other) != strings.TrimSpace(line) {
			parts = append(parts, clashAdvice(key, line, other))
		}
	}
	if len(parts) == 0 {
		parts = append(parts, "No label is given to two different things: keep the lines of both branches, each label once.")
	} else {
		parts = append(parts, "All other lines of both branches stay.")
	}
	return strings.Join(parts, " ") + " Then delete the lines of <<<<<<<, ======= and >>>>>>> and run doorpocket labels."
}

// registerLine reads one line of the register by itself.
func registerLine(line string) (key string, entry *manifest.Table, ok bool) {
	table, found := manifest.Parse("line", []byte(line))
	if table == nil || found.HasErrors() || table.Len() != 1 {
		return "", nil, false
	}
	e := table.Entries()[0]
	entry, ok = e.Value.(*manifest.Table)
	return e.Key, entry, ok
}

// clashes says more about keys written twice: in this file they are labels that
// two people gave out.
func clashes(source *manifest.Source, found problem.List) problem.List {
	for i, p := range found {
		if p.Code != "duplicate-key" || len(p.Notes) == 0 {
			continue
		}
		second, first := source.Line(p.Start.Line), source.Line(p.Notes[0].Start.Line)
		key, _, ok := registerLine(second)
		firstKey, _, firstOK := registerLine(first)
		if !ok || !firstOK || key != firstKey {
			continue
		}
		if _, isLabel := ParseRef(key); isLabel {
			found[i].Summary = fmt.Sprintf("Label %s is written twice", key)
		} else {
			found[i].Summary = fmt.Sprintf("Van %s is written twice", key)
		}
		found[i].Code = "label-clash"
		found[i].Detail = "Here: " + strings.TrimSpace(second) + " First: " + strings.TrimSpace(first) + " " + clashAdvice(key, first, second)
	}
	return found
}

// clashAdvice says what to do where one label has two lines.
func clashAdvice(key, first, second string) string {
	if strings.TrimSpace(first) == strings.TrimSpace(second) {
		return "Both lines say the same: delete one."
	}
	_, a, _ := registerLine(first)
	_, b, _ := registerLine(second)
	if _, isLabel := ParseRef(key); !isLabel {
		return fmt.Sprintf("Van %s is called %s in one line and %s in the other. Where both are one van, keep one line. Where two people gave two vans the same code, give the van whose labels are not printed another code in its spec, delete its line here, and run doorpocket labels.", key, text(a, "name"), text(b, "name"))
	}
	if text(a, "fitted") == text(b, "fitted") && text(a, "system") == text(b, "system") {
		return fmt.Sprintf("Both lines of %s are about the same thing: keep the one that is further on, with what was printed and what became of it, and delete the other.", key)
	}
	advice := fmt.Sprintf("%s stands for %s (%s) in one line and for %s (%s) in the other: two people gave the same label. ", key, text(a, "fitted"), text(a, "system"), text(b, "fitted"), text(b, "system"))
	switch aPrinted, bPrinted := printed(a), printed(b); {
	case aPrinted && bPrinted:
		return advice + fmt.Sprintf("Both are printed. Keep the line of the one whose sticker stays, delete the other line, take its sticker off the van, and run doorpocket labels: it gives %s or %s a new label to print.", text(a, "fitted"), text(b, "fitted"))
	case aPrinted:
		return advice + fmt.Sprintf("Keep the line of %s, which is printed, and delete the other. doorpocket labels then gives %s a new label.", text(a, "fitted"), text(b, "fitted"))
	case bPrinted:
		return advice + fmt.Sprintf("Keep the line of %s, which is printed, and delete the other. doorpocket labels then gives %s a new label.", text(b, "fitted"), text(a, "fitted"))
	}
	return advice + "Neither is printed. Keep one line and delete the other; doorpocket labels then gives what lost its line a new label."
}

func text(t *manifest.Table, key string) string {
	e, ok := t.Get(key)
	s, isText := e.Value.(string)
	if !ok || !isText {
		return "?"
	}
	return s
}

func printed(t *manifest.Table) bool {
	_, now := t.Get("printed")
	_, before := t.Get("former_printed")
	return now || before
}
