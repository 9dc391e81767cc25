package main

import (
	"embed"
	"fmt"
	"path"
	"strings"

	"doorpocket/components/problem"
)

//go:embed help/*.txt
var helpTexts embed.FS

// help prints how to use the program, or one of its commands.
type help struct {
	Topic string `arg:"" optional:""`
}

// Run is called by the command line.
func (c *help) Run(out *speaker) error {
	topic := c.Topic
	if topic == "" {
		topic = "doorpocket"
	}
	text, err := helpTexts.ReadFile("help/" + topic + ".txt")
	if err != nil {
		hint := "doorpocket help lists the commands"
		if near := problem.Nearest(topic, helpTopics()); near != "" {
			hint = fmt.Sprintf("did you mean %q?", near)
		}
		return errUsage{fmt.Errorf("there is no command %q: %s", topic, hint)}
	}
	out.say("%s", strings.TrimRight(string(text), "\n"))
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
