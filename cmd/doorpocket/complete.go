package main

import (
	"slices"
	"strings"

	"github.com/alecthomas/kong"
)

// complete is asked by the scripts of the shells, not by people: it prints what
// can come next on a command line, a candidate a line, with a tab before what
// it stands for. The lines @folders and @files leave the rest to the shell.
type complete struct {
	Words []string `arg:"" optional:"" passthrough:""` // all after the program's name; the last is being written
}

// Run is called by the command line.
func (c *complete) Run(out *speaker) error {
	words := c.Words
	if len(words) > 0 && words[0] == "--" {
		words = words[1:]
	}
	if len(words) == 0 {
		words = []string{""}
	}
	parser, err := newParser(out)
	if err != nil {
		return err
	}
	for _, o := range offered(parser.Model.Node, words) {
		if o.about == "" {
			out.say("%s", o.word)
		} else {
			out.say("%s\t%s", o.word, o.about)
		}
	}
	return nil
}

// offer is what can come next, and what it stands for.
type offer struct{ word, about string }

// commandLine is what is known of a command line that is being written.
type commandLine struct {
	node   *kong.Node
	place  int             // how many words without dashes the command has
	given  map[string]bool // options
	values map[string]string
	waits  *kong.Flag // the option whose value comes next
}

// offered gives what can stand for the last of some words.
func offered(root *kong.Node, words []string) []offer {
	last := len(words) - 1
	if words[last] == "=" {
		words = append(slices.Clone(words), "")
		last++
	}
	line := readLine(root, words[:last])
	return startingWith(line.next(words[last]), words[last])
}

// readLine follows the words from the program to a command.
func readLine(root *kong.Node, words []string) *commandLine {
	l := &commandLine{node: root, given: map[string]bool{}, values: map[string]string{}}
	for _, word := range words {
		switch {
		case l.waits != nil && word == "=":
			// bash makes three words of --as=text.
		case l.waits != nil:
			l.values[l.waits.Name] = word
			l.waits = nil
		case strings.HasPrefix(word, "--"):
			l.option(word)
		default:
			l.word(word)
		}
	}
	return l
}

func (l *commandLine) option(word string) {
	name, value, whole := strings.Cut(word[2:], "=")
	l.given[name] = true
	if whole {
		l.values[name] = value
		return
	}
	if f := l.flag(name); f != nil && !f.IsBool() {
		l.waits = f
	}
}

func (l *commandLine) word(word string) {
	for _, child := range l.node.Children {
		if child.Name == word {
			l.node = child
			return
		}
	}
	if p := l.positional(); p != nil {
		l.values[p.Name] = word
	}
	l.place++
}

func (l *commandLine) flag(name string) *kong.Flag {
	for _, f := range l.node.Flags {
		if f.Name == name {
			return f
		}
	}
	return nil
}

// positional is the word without dashes that comes next; the last of a command
// may stand for any number.
func (l *commandLine) positional() *kong.Positional {
	for i, p := range l.node.Positional {
		if i == l.place || p.IsCumulative() {
			return p
		}
	}
	return nil
}

// next gives what can come next, whatever it begins with.
func (l *commandLine) next(word string) []offer {
	if l.waits != nil {
		return l.of(l.waits.Tag)
	}
	if name, _, whole := strings.Cut(word, "="); whole && strings.HasPrefix(name, "--") {
		return l.afterEquals(name)
	}
	if strings.HasPrefix(word, "-") {
		return l.options()
	}
	var all []offer
	within := ""
	if l.node.Parent != nil {
		within = l.node.Name
	}
	for _, child := range l.node.Children {
		if !child.Hidden {
			all = append(all, offer{child.Name, helpLine(within, child.Name)})
		}
	}
	if p := l.positional(); p != nil {
		all = append(all, l.of(p.Tag)...)
	}
	return all
}

// afterEquals gives the values of an option that is written --as=text.
func (l *commandLine) afterEquals(name string) []offer {
	f := l.flag(name[2:])
	if f == nil {
		return nil
	}
	var all []offer
	for _, o := range l.of(f.Tag) {
		if !o.forShell() {
			all = append(all, offer{name + "=" + o.word, o.about})
		}
	}
	return all
}

// options are those of the command that are not there yet.
func (l *commandLine) options() []offer {
	var all []offer
	for _, f := range l.node.Flags {
		if !l.given[f.Name] || f.IsSlice() {
			all = append(all, offer{word: "--" + f.Name})
		}
	}
	return all
}

// forShell tells what the shell finds by itself.
func (o offer) forShell() bool { return strings.HasPrefix(o.word, "@") }

func startingWith(all []offer, begun string) []offer {
	var some []offer
	for _, o := range all {
		if o.forShell() || strings.HasPrefix(strings.ToLower(o.word), strings.ToLower(begun)) {
			some = append(some, o)
		}
	}
	return some
}
