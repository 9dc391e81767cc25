package main

import (
	"fmt"
	"strings"
)

// manual writes the pages of help as one manual page, in the macros of man(7).
// It has no date: the version says which program it is about.
func manual(version string) (string, error) {
	first, err := helpTexts.ReadFile("help/" + firstPage + ".txt")
	if err != nil {
		return "", err
	}
	about, _, _ := strings.Cut(string(first), ":")
	about = strings.Join(strings.Fields(about), " ")
	var b strings.Builder
	fmt.Fprintf(&b, ".TH DOORPOCKET 1 \"\" \"doorpocket %s\"\n", roff(version))
	fmt.Fprintf(&b, ".SH NAME\ndoorpocket \\- %s\n", roff(strings.TrimPrefix(about, "Doorpocket ")))
	b.WriteString(".SH SYNOPSIS\n.B doorpocket\n.I COMMAND\n[\\,\\fIWORD\\fR\\,...] [\\,\\fIOPTION\\fR\\,...]\n.SH DESCRIPTION\n")
	manBlocks(&b, blocks(string(first)))
	b.WriteString(".SH COMMANDS\n")
	for _, topic := range helpTopics() {
		if topic == firstPage {
			continue
		}
		text, err := helpTexts.ReadFile("help/" + topic + ".txt")
		if err != nil {
			return "", err
		}
		all := blocks(string(text))
		fmt.Fprintf(&b, ".SS %s\n.nf\n.B\n", topic)
		for _, line := range all[0].lines {
			fmt.Fprintf(&b, ".B %s\n", roff(line))
		}
		b.WriteString(".fi\n")
		manBlocks(&b, all[1:])
	}
	return b.String(), nil
}

func manBlocks(b *strings.Builder, all []block) {
	for _, x := range all {
		b.WriteString(".PP\n")
		if x.asIs {
			b.WriteString(".nf\n")
		}
		for _, line := range x.lines {
			b.WriteString(roff(line) + "\n")
		}
		if x.asIs {
			b.WriteString(".fi\n")
		}
	}
}

// roff makes a line safe for the formatter: no sign of it means anything else.
func roff(line string) string {
	line = strings.NewReplacer(`\`, `\e`, `-`, `\-`, `'`, `\(aq`, `"`, `\(dq`, "`", "\\(ga", `^`, `\(ha`, `~`, `\(ti`).Replace(line)
	if strings.HasPrefix(line, ".") {
		return `\&` + line
	}
	return line
}
