package publication_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"doorpocket/build/label"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/components/manifest"
)

// register gives the fleet a register of its labels, and of one more of each van
// that was removed.
func (e *edited) register(t *testing.T) {
	t.Helper()
	lib := fewPages()
	reading := spec.OpenForLabels(e.files, "", lib)
	if found := reading.Skim(); found.HasErrors() {
		t.Fatal(found)
	}
	plan := reading.Fleet().PlanLabels(nil, manifest.Date{})
	text, err := label.Revise(nil, plan.Register())
	if err != nil {
		t.Fatal(err)
	}
	var gone strings.Builder
	for i := range 2 {
		fmt.Fprintf(&gone, "\"%s Z9\" = { fitted = \"old\", system = \"living/bike-box\", since = 2026-01-01, became = \"removed\", on = 2026-02-01 }\n", sample.Code(i))
	}
	e.files[label.RegisterFile] = file(string(text) + gone.String())
}

// registerEdits change the lines of one van in the register, and say whether its
// pages show it.
var registerEdits = map[string]struct {
	shown bool
	edit  func(e *edited, lines []string, van string) []string
}{
	"printed": {false, func(e *edited, lines []string, van string) []string {
		return eachLine(lines, `"`+van+" ", func(line string) string {
			return strings.Replace(printedOn.ReplaceAllString(line, ""), ", since", fmt.Sprintf(", printed = 2026-03-%02d, since", 1+e.number()%28), 1)
		})
	}},
	"comment": {false, func(e *edited, lines []string, _ string) []string {
		return slices.Insert(lines, 0, fmt.Sprintf("# %d", e.last))
	}},
	"another name": {true, func(e *edited, lines []string, van string) []string {
		return eachLine(lines, van+" = ", func(line string) string {
			return vanNamed.ReplaceAllString(line, fmt.Sprintf("name = \"Van %d\"", e.last))
		})
	}},
	"removed earlier": {true, func(e *edited, lines []string, van string) []string {
		return eachLine(lines, `"`+van+` Z9"`, func(line string) string {
			return removedOn.ReplaceAllString(line, fmt.Sprintf("on = 20%02d-02-01 }", 27+e.last%60))
		})
	}},
	"other thing": {true, func(e *edited, lines []string, van string) []string {
		return eachLine(lines, `"`+van+` Z9"`, func(line string) string {
			return fittedAs.ReplaceAllString(line, fmt.Sprintf("fitted = \"old-%d\"", e.last))
		})
	}},
}

var (
	printedOn = regexp.MustCompile(`, printed = [-0-9]+`)
	removedOn = regexp.MustCompile(`on = [-0-9]+ \}`)
	vanNamed  = regexp.MustCompile(`name = "[^"]*"`)
	fittedAs  = regexp.MustCompile(`fitted = "[^"]*"`)
)

func eachLine(lines []string, begin string, do func(string) string) []string {
	for i, line := range lines {
		if strings.HasPrefix(line, begin) {
			lines[i] = do(line)
		}
	}
	return lines
}

// An edit of one van's lines in the register makes that van anew where its pages
// show it, and no other; the site is as if all were made anew.
func TestEditsOfTheRegister(t *testing.T) {
	e := newEdited(t, 9)
	e.register(t)
	var history []string
	e.compare(t, []string{"register"})
	var names []string
	for name := range registerEdits {
		names = append(names, name)
	}
	slices.Sort(names)
	for step := range names {
		name, van := names[step], sample.Code(e.random.IntN(2))
		lines := strings.Split(string(e.files[label.RegisterFile].Data), "\n")
		e.last++
		e.files[label.RegisterFile] = file(strings.Join(registerEdits[name].edit(e, lines, van), "\n"))
		history = append(history, name+" "+van)
		made, found, err := publishFiles(e.files, e.site, e.as)
		if err != nil || found.HasErrors() {
			t.Fatalf("after %v: %v %v", history, err, found)
		}
		var anew []string
		for _, r := range made.Reasons {
			anew = append(anew, r.Van+": "+r.Why)
		}
		var want []string
		if registerEdits[name].shown {
			want = []string{van + ": " + van + " in labels.toml changed"}
		}
		if !slices.Equal(anew, want) {
			t.Errorf("after %v: made anew %q, want %q", history, anew, want)
		}
		if e.compare(t, history); t.Failed() {
			return
		}
	}
}
