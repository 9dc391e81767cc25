// Doorpocket publishes a guide for every van of a hire fleet.
package main

import (
	"errors"
	"io"
	"os"

	"github.com/alecthomas/kong"
)

// Exit statuses.
const (
	statusFine     = 0
	statusProblems = 1 // problems found in the fleet, or the work failed
	statusUsage    = 2 // the command was used wrongly
)

// commands are the words that can follow the program's name.
type commands struct {
	Publish publish    `cmd:""`
	Begin   starting   `cmd:""`
	Preview previewing `cmd:""`
	Due     due        `cmd:""`
	Compare compare    `cmd:""`
	Import  importing  `cmd:""`
	Export  export     `cmd:""`
	Inspect inspect    `cmd:""`
	Systems systems    `cmd:""`
	Labels  labels     `cmd:""`
	Table   table      `cmd:""`
	Schema  schema     `cmd:""`
	Print   printCmd   `cmd:""`
	Sheets  sheetsCmd  `cmd:""`
	Help    help       `cmd:""`
	Version version    `cmd:""`

	Completion completion `cmd:""`
	Complete   complete   `cmd:"" hidden:""`
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run does what the words ask and gives the exit status.
func run(words []string, stdout, stderr io.Writer) int {
	out := newSpeaker(stdout, stderr)
	if wantsHelp(words) {
		words = helpInstead(words)
	}
	parser, err := newParser(out)
	if err != nil {
		panic(err) // the commands above are not well formed
	}
	ctx, err := parser.Parse(words)
	if err != nil {
		out.misuse(err)
		return statusUsage
	}
	return status(out, ctx.Run(out))
}

// newParser reads command lines.
func newParser(out *speaker) (*kong.Kong, error) {
	return kong.New(&commands{}, kong.Name("doorpocket"), kong.NoDefaultHelp(), kong.Writers(out.out, out.err), kong.Exit(func(int) {}))
}

// wantsHelp reports whether the usual words for help are among the words, or
// there are none at all.
func wantsHelp(words []string) bool {
	for _, w := range words {
		if w == "--" {
			return false // what follows is not for us
		}
		if w == "--help" || w == "-h" || w == "-help" {
			return true
		}
	}
	return len(words) == 0
}

// helpInstead turns "publish --help" into "help publish".
func helpInstead(words []string) []string {
	if len(words) > 0 && words[0] != "" && words[0][0] != '-' && words[0] != "help" {
		return []string{"help", words[0]}
	}
	return []string{"help"}
}

// errProblems says that problems were found and have been told.
var errProblems = errors.New("problems found")

// errUsage wraps what a person used wrongly.
type errUsage struct{ error }

func status(out *speaker, err error) int {
	var usage errUsage
	switch {
	case err == nil:
		return statusFine
	case errors.Is(err, errProblems):
		return statusProblems
	case errors.As(err, &usage):
		out.misuse(usage.error)
		return statusUsage
	}
	out.failure(err)
	return statusProblems
}
