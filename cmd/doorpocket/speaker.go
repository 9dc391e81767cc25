package main

import (
	"fmt"
	"io"
	"os"

	"golang.org/x/term"

	"doorpocket/components/problem"
)

// All that the program says goes through this file. The rules: results to
// standard output, problems to standard error; whole sentences that end with
// what to do; no colour unless standard error is a terminal and NO_COLOR is
// not set.

// speaker is where the program speaks.
type speaker struct {
	out, err io.Writer
	colour   bool
	tty      bool // somebody watches standard error
}

func newSpeaker(out, err io.Writer) *speaker {
	tty := terminal(err)
	wanted := os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	return &speaker{out: out, err: err, colour: tty && wanted && understandsColour(err), tty: tty}
}

func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// width is how many columns the terminal behind w has, 0 where there is none.
func width(w io.Writer) int {
	f, ok := w.(*os.File)
	if !ok {
		return 0
	}
	columns, _, err := term.GetSize(int(f.Fd()))
	if err != nil {
		return 0
	}
	return columns
}

// columns is the width of the terminal that results go to, 0 where there is none.
func (s *speaker) columns() int { return width(s.out) }

// widest is how long a line of running text may get: longer ones are hard to
// read, however wide the terminal is.
const widest = 100

// say prints a line of result.
func (s *speaker) say(format string, args ...any) {
	_, _ = fmt.Fprintf(s.out, format+"\n", args...)
}

// problems prints what is wrong with a fleet, and how much.
func (s *speaker) problems(list problem.List) {
	if len(list) == 0 {
		return
	}
	// Where even standard error cannot be written there is nobody to tell.
	_ = problem.Write(s.err, list.Gather(), problem.Style{Colour: s.colour, Width: min(width(s.err), widest)})
	errors, warnings := list.Counts()
	_, _ = fmt.Fprintf(s.err, "\n%s, %s\n", count(errors, "error"), count(warnings, "warning"))
	if errors > 0 && warnings > 0 {
		s.again(list[:min(errors, mostAgain)], errors)
	}
}

// mostAgain is how many errors are named once more.
const mostAgain = 12

// again names the errors once more, in short: the warnings below them have
// pushed them out of sight.
func (s *speaker) again(list problem.List, errors int) {
	_, _ = fmt.Fprintf(s.err, "The errors once more, in short:\n")
	for _, p := range list {
		_, _ = fmt.Fprintf(s.err, "  %s\n", p.String())
	}
	if errors > len(list) {
		_, _ = fmt.Fprintf(s.err, "  and %d more\n", errors-len(list))
	}
}

// failure says why the work could not be done.
func (s *speaker) failure(err error) {
	_, _ = fmt.Fprintf(s.err, "doorpocket: %v\n", err)
}

// misuse says how the command was used wrongly.
func (s *speaker) misuse(err error) {
	_, _ = fmt.Fprintf(s.err, "doorpocket: %v\nSee: doorpocket help\n", err)
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// warn prints a line beside the results.
func (s *speaker) warn(format string, args ...any) {
	_, _ = fmt.Fprintf(s.err, format+"\n", args...)
}

// overwrite puts a line in the place of the one that stands there.
func (s *speaker) overwrite(line string) { _, _ = fmt.Fprintf(s.err, "\r\x1b[K%s", line) }

// outcome prints what is wrong with a fleet where something is; of warnings
// alone it says only how many there are, since inspect is there to tell them.
func (s *speaker) outcome(list problem.List) {
	if list.HasErrors() {
		s.problems(list)
		return
	}
	if _, warnings := list.Counts(); warnings > 0 {
		s.warn("%s: doorpocket inspect tells them", count(warnings, "warning"))
	}
}
