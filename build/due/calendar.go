package due

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"doorpocket/build/spec"
	"doorpocket/components/manifest"
)

// Calendar writes items that have a day as an iCalendar file, one event of a
// whole day for each, with a reminder some days before.
//
// Source: RFC 5545. Lines end in CR LF and are folded at 75 octets (3.1); texts
// escape backslash, comma, semicolon and line ends (3.3.11). The time stamp of an
// event is the day of the van's spec, so that the same fleet gives the same
// bytes.
func Calendar(op *spec.Operator, stated []Item) []byte {
	lang := op.Languages[0]
	var c calendar
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//doorpocket//due//"+strings.ToUpper(lang))
	c.line("CALSCALE", "GREGORIAN")
	for _, item := range stated {
		words := op.Library.Duty(item.Duty).Words[lang]
		c.line("BEGIN", "VEVENT")
		c.line("UID", uid(op, item))
		c.line("DTSTAMP", compact(item.SpecDate)+"T000000Z")
		c.line("DTSTART;VALUE=DATE", compact(item.Day))
		c.line("SUMMARY", escape(item.Code+" "+item.Name+": "+words.Title))
		c.line("DESCRIPTION", escape(words.Reason))
		c.line("TRANSP", "TRANSPARENT")
		if op.Due.Soon > 0 {
			c.line("BEGIN", "VALARM")
			c.line("ACTION", "DISPLAY")
			c.line("DESCRIPTION", escape(item.Name+": "+words.Title))
			c.line("TRIGGER", fmt.Sprintf("-P%dD", op.Due.Soon))
			c.line("END", "VALARM")
		}
		c.line("END", "VEVENT")
	}
	c.line("END", "VCALENDAR")
	return []byte(c.String())
}

// uid names an event for ever: the same duty keeps its event when its day moves.
func uid(op *spec.Operator, i Item) string {
	parts := []string{i.Code, i.Duty}
	if i.Fitted != "" {
		parts = append(parts, i.Fitted)
	}
	host, _, _ := strings.Cut(op.Address.Reading(""), "/")
	return strings.Join(parts, ".") + "@" + host
}

func compact(d manifest.Date) string { return fmt.Sprintf("%04d%02d%02d", d.Year, d.Month, d.Day) }

func escape(text string) string {
	return strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\r\n", `\n`, "\n", `\n`).Replace(text)
}

type calendar struct{ strings.Builder }

// foldAt is the longest line in octets, without its end.
const foldAt = 75

// line writes a property and folds it between characters, never within one.
func (c *calendar) line(name, value string) {
	text := name + ":" + value
	room := foldAt
	for len(text) > room {
		cut := room
		for !utf8.RuneStart(text[cut]) {
			cut--
		}
		c.WriteString(text[:cut] + "\r\n ")
		text, room = text[cut:], foldAt-1 // the space counts
	}
	c.WriteString(text + "\r\n")
}
