package problem

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// Style says how problems are printed. The zero value is right for a file or a
// test: no colour, 80 columns.
type Style struct {
	Colour bool // mark severities and carets with terminal colours
	Width  int  // columns; 0 means 80
	Codes  bool // print the code behind the summary
}

// width returns the columns to use, never too few to be readable.
func (s Style) width() int {
	if s.Width <= 0 {
		return 80
	}
	return max(s.Width, 40)
}

// Write prints the problems in the order of the list, with an empty line
// between them:
//
//	vans/rowan.toml:2:1: error: Unknown key "nmae"
//	   2 | nmae = "Rowan"
//	     | ^^^^
//	  Write "name" instead.
//	  first written here: vans/rowan.toml:1:1
//
// The text is made in memory and written at once.
func Write(w io.Writer, list List, style Style) error {
	var b strings.Builder
	for i, p := range list {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(p.Text(style))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// Text returns the printed form of one problem, ending with a line feed.
func (p Problem) Text(style Style) string {
	var b strings.Builder
	b.WriteString(p.headline(style) + "\n")
	p.quote(&b, style)
	for _, line := range Wrap(safe(p.Detail), style.width()-2) {
		b.WriteString("  " + line + "\n")
	}
	for _, n := range p.Notes {
		b.WriteString("  " + noteText(n) + "\n")
	}
	return b.String()
}

// headline returns "place: severity: summary".
func (p Problem) headline(style Style) string {
	severity := p.Severity.String() + ":"
	if style.Colour {
		severity = colour(p.Severity, severity)
	}
	parts := []string{severity, safe(p.Summary)}
	if place := p.Span.String(); place != "" {
		parts = append([]string{safe(place) + ":"}, parts...)
	}
	if style.Codes && p.Code != "" {
		parts = append(parts, "("+safe(p.Code)+")")
	}
	return strings.Join(parts, " ")
}

// quote prints the source line with its number and the carets below it.
func (p Problem) quote(b *strings.Builder, style Style) {
	if p.SourceLine == "" || !p.Start.Known() {
		return
	}
	number := fmt.Sprintf("%4d", p.Start.Line)
	blank := strings.Repeat(" ", len(number))
	shown, carets := excerpt(p.SourceLine, p.Start.Column, p.Length, style.width()-len(number)-3-2*len(cutMark))
	b.WriteString(strings.TrimRight(number+" | "+shown, " ") + "\n")
	if carets == "" {
		return
	}
	if style.Colour {
		carets = colour(p.Severity, carets)
	}
	b.WriteString(blank + " | " + carets + "\n")
}

// noteText returns a note on one line, with its place if it has one.
func noteText(n Note) string {
	if place := n.Span.String(); place != "" {
		return safe(n.Text) + ": " + safe(place)
	}
	return safe(n.Text)
}

// colour wraps a text in the terminal colour of the severity.
func colour(s Severity, text string) string {
	const red, yellow, plain = "\x1b[31m", "\x1b[33m", "\x1b[0m"
	if s == Warning {
		return yellow + text + plain
	}
	return red + text + plain
}

// Wrap breaks a text at spaces into lines of at most limit runes. A longer word
// stays whole.
func Wrap(text string, limit int) []string {
	var lines []string
	line, length := "", 0
	for _, word := range strings.Fields(text) {
		n := utf8.RuneCountInString(word)
		if length > 0 && length+1+n > limit {
			lines = append(lines, line)
			line, length = "", 0
		}
		if length > 0 {
			line, length = line+" ", length+1
		}
		line, length = line+word, length+n
	}
	if length > 0 {
		lines = append(lines, line)
	}
	return lines
}
