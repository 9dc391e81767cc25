package main

import (
	"embed"
	"fmt"
	"path"
	"regexp"
	"strings"

	"doorpocket/components/problem"
)

//go:embed help/*.txt
var helpTexts embed.FS

// firstPage is the page of help about the whole program.
const firstPage = "doorpocket"

// help prints how to use the program, or one of its commands.
type help struct {
	Topic string `arg:"" optional:"" offers:"@topics"`
	As    string `name:"as" default:"text" offers:"text|man"`
}

var helpForms = []string{"text", "man"}

// Run is called by the command line.
func (c *help) Run(out *speaker) error {
	if err := oneForm(c.As, helpForms); err != nil {
		return err
	}
	if c.As == "man" {
		return c.manual(out)
	}
	topic := c.Topic
	if topic == "" {
		topic = firstPage
	}
	text, err := helpTexts.ReadFile("help/" + topic + ".txt")
	if err != nil {
		hint := "doorpocket help lists the commands"
		if near := problem.Nearest(topic, helpTopics()); near != "" {
			hint = fmt.Sprintf("did you mean %q?", near)
		}
		return errUsage{fmt.Errorf("there is no command %q: %s", topic, hint)}
	}
	out.say("%s", strings.TrimRight(fitted(string(text), out.columns()), "\n"))
	return nil
}

// manual prints all pages as one.
func (c *help) manual(out *speaker) error {
	if c.Topic != "" {
		return errUsage{fmt.Errorf("the manual page is about all commands: doorpocket help --as man")}
	}
	text, err := manual(programVersion())
	if err != nil {
		return err
	}
	out.say("%s", strings.TrimRight(text, "\n"))
	return nil
}

func helpTopics() []string {
	entries, err := helpTexts.ReadDir("help")
	if err != nil {
		panic(err) // the folder is part of the program
	}
	var topics []string
	for _, e := range entries {
		topics = append(topics, strings.TrimSuffix(path.Base(e.Name()), ".txt"))
	}
	return topics
}

// commandLines are the lines of a page of help that say what a command is for,
// or a kind within a command.
var (
	commandLines = regexp.MustCompile(`(?m)^  doorpocket ([a-z]+)(?: [A-Z\[\] ]+)?  +(.+)$`)
	kindLines    = regexp.MustCompile(`(?m)^([a-z]+)  +([^:;\n]+)`)
)

// helpLine says in a line what a command is for; within names the command that
// it is a kind of, or is "".
func helpLine(within, command string) string {
	page, lines := firstPage, commandLines
	if within != "" {
		page, lines = within, kindLines
	}
	text, err := helpTexts.ReadFile("help/" + page + ".txt")
	if err != nil {
		return ""
	}
	for _, found := range lines.FindAllSubmatch(text, -1) {
		if string(found[1]) == command {
			return string(found[2])
		}
	}
	return ""
}
