package quantity

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// digitsMost is how many digits a number may have; a float64 holds every
// decimal number of 15 digits exactly enough to give the same digits back.
const digitsMost = 15

// ParseError says what is wrong with the text of a quantity.
type ParseError struct {
	Text    string // the whole text
	Offset  int    // the byte of it where the trouble is
	Message string // what is wrong
	Hint    string // what to write instead; may be empty
}

// Error gives text, message and hint in one line.
func (e *ParseError) Error() string {
	line := fmt.Sprintf("%s: %s", excerpt(e.Text), e.Message)
	if e.Hint != "" {
		line += "; " + e.Hint
	}
	return line
}

// Parse reads a quantity of a wanted dimension from the text of a spec. The
// package comment says what is accepted. Every error is a *ParseError.
func Parse(text string, want Dimension) (Quantity, error) {
	p := parser{text: text, want: want, end: len(strings.TrimRightFunc(text, isSpace))}
	q, problem := p.quantity()
	if problem != nil {
		return Quantity{}, problem
	}
	return q, nil
}

// parser walks through the text of one quantity.
type parser struct {
	text string
	want Dimension
	at   int // the next byte to read
	end  int // where the text ends but for spaces
}

// fail makes an error about the byte at offset.
func (p *parser) fail(offset int, message, hint string) *ParseError {
	return &ParseError{Text: p.text, Offset: offset, Message: message, Hint: hint}
}

// rest gives what has not been read yet.
func (p *parser) rest() string {
	if p.at >= p.end {
		return ""
	}
	return p.text[p.at:p.end]
}

// skipSpaces moves past spaces and reports whether there were any.
func (p *parser) skipSpaces() bool {
	start := p.at
	for _, r := range p.rest() {
		if !isSpace(r) {
			break
		}
		p.at += utf8.RuneLen(r)
	}
	return p.at > start
}

// quantity reads the whole text.
func (p *parser) quantity() (Quantity, *ParseError) {
	if p.want == None || p.want >= dimensionCount {
		return Quantity{}, p.fail(0, "nothing says which dimension this has", "")
	}
	p.skipSpaces()
	if p.rest() == "" {
		return Quantity{}, p.fail(0, "empty: expected "+withArticle(p.want), p.listUnits())
	}
	start := p.at
	n, problem := p.number()
	if problem != nil {
		return Quantity{}, problem
	}
	p.skipSpaces()
	u, problem := p.unit(&n)
	if problem != nil {
		return Quantity{}, problem
	}
	value := n.value()
	if why := impossible(value, u); why != "" {
		return Quantity{}, p.fail(start, why, "")
	}
	return written(value, u, n.decimals), nil
}

// unit reads the unit after the number n. A second part, as in "9 ft 2 in", is
// added to n.
func (p *parser) unit(n *numeral) (Unit, *ParseError) {
	name := p.rest()
	if name == "" {
		return p.noUnit(*n)
	}
	if u, ok := UnitOf(name, p.want); ok {
		return u, nil
	}
	if isDigit(name[0]) {
		return Unit{}, p.fail(p.at, "digits after a space that are not a group of three", "write the number without spaces")
	}
	if u, done, problem := p.parts(n); done {
		return u, problem
	}
	return Unit{}, p.badUnit(name)
}

// noUnit decides about a number that stands alone.
func (p *parser) noUnit(n numeral) (Unit, *ParseError) {
	if p.want == Ratio {
		if n.value() <= 1 {
			return SI(Ratio), nil
		}
		return Unit{}, p.fail(p.end, "no unit after "+n.text()+": a ratio above 1 needs one",
			"write "+n.text()+" %, or a number from 0 to 1")
	}
	return Unit{}, p.fail(p.end, "no unit after "+n.text()+": expected "+withArticle(p.want), p.listUnits())
}

// parts reads the rest of "9 ft 2 in" from "ft" on. It is not done if the text
// does not look like two parts.
func (p *parser) parts(n *numeral) (u Unit, done bool, problem *ParseError) {
	rest := p.rest()
	k := strings.IndexAny(rest, "0123456789")
	if k <= 0 {
		return Unit{}, false, nil
	}
	u, ok := p.compositeOf(strings.TrimRightFunc(rest[:k], isSpace))
	if !ok {
		return Unit{}, false, nil
	}
	second := parser{text: p.text, want: p.want, at: p.at + k, end: p.end}
	m, problem := second.number()
	if problem != nil {
		return Unit{}, true, problem
	}
	second.skipSpaces()
	small := second.rest()
	if found, _ := UnitOf(small, p.want); found.Name() != u.is().small || small == "" {
		return Unit{}, false, nil
	}
	return u, true, p.join(n, m, u, p.at+k)
}

// compositeOf finds the composite unit of which name is the larger part.
func (p *parser) compositeOf(name string) (Unit, bool) {
	large, ok := UnitOf(name, p.want)
	if !ok {
		return Unit{}, false
	}
	for _, u := range Units(p.want) {
		if u.Composite() && u.is().large == large.Name() {
			return u, true
		}
	}
	return Unit{}, false
}

// join makes n and the smaller part m one number of small parts.
func (p *parser) join(n *numeral, m numeral, u Unit, offset int) *ParseError {
	if n.decimals > 0 {
		return p.fail(offset, "a second part after a number with decimals", "write a whole number of "+u.is().large)
	}
	if m.value() >= float64(u.is().ratio) || m.negative {
		return p.fail(offset, fmt.Sprintf("expected less than %d %s after the %s", u.is().ratio, u.is().small, u.is().large), "")
	}
	if n.length()+m.length() > digitsMost-2 {
		return p.fail(offset, tooManyDigits, "")
	}
	whole := n.value()*float64(u.is().ratio) + m.value()
	n.parsed, n.decimals = whole, m.decimals
	return nil
}

// badUnit says what is wrong with a unit that is none of the wanted dimension.
func (p *parser) badUnit(name string) *ParseError {
	if u, ok := UnitNamed(name); ok {
		return p.wrongDimension(u, name)
	}
	if hint, ok := ambiguous[tidySpaces(name)]; ok {
		return p.fail(p.at, excerpt(name)+" can mean more than one unit", hint)
	}
	if known, after := knownPrefix(name); known != "" {
		if _, ok := UnitOf(known, p.want); !ok {
			u, _ := UnitNamed(known)
			return p.wrongDimension(u, known)
		}
		return p.fail(p.at+after, "unexpected "+excerpt(name[after:])+" after the unit", "")
	}
	if near := nearest(name, p.want); near != "" {
		return p.fail(p.at, "unknown unit "+excerpt(name)+": expected "+withArticle(p.want), "did you mean "+near+"?")
	}
	return p.fail(p.at, "unknown unit "+excerpt(name)+": expected "+withArticle(p.want), p.listUnits())
}

// wrongDimension says what was written and what was expected.
func (p *parser) wrongDimension(u Unit, name string) *ParseError {
	hint := p.listUnits()
	if u.Name() == "C" && (p.want == Temperature || p.want == TemperatureDifference) {
		hint = "write °C"
	}
	return p.fail(p.at, fmt.Sprintf("%s is a unit of %s: expected %s", name, u.Dimension(), withArticle(p.want)), hint)
}

// knownPrefix finds the longest run of words at the start of name that is a
// unit of any dimension, and where the words after it start.
func knownPrefix(name string) (known string, after int) {
	for i := len(name); i > 0; {
		r, size := utf8.DecodeLastRuneInString(name[:i])
		if isSpace(r) {
			if _, ok := UnitNamed(name[:i]); ok {
				return strings.TrimRightFunc(name[:i], isSpace), i
			}
		}
		i -= size
	}
	return "", 0
}

// listUnits is the hint that names the units of the wanted dimension.
func (p *parser) listUnits() string {
	var names []string
	for _, u := range Units(p.want) {
		if !u.Composite() {
			names = append(names, u.Name())
		}
	}
	return "units of " + p.want.String() + ": " + strings.Join(names, ", ")
}

// withArticle gives "a mass", "an area".
func withArticle(d Dimension) string {
	if strings.ContainsRune("aeiou", rune(d.String()[0])) {
		return "an " + d.String()
	}
	return "a " + d.String()
}

// excerpt quotes the start of a text for a message.
func excerpt(text string) string {
	const most = 40
	if utf8.RuneCountInString(text) > most {
		runes := []rune(text[:min(len(text), most*utf8.UTFMax)])
		text = string(runes[:min(len(runes), most)]) + "…"
	}
	return strconv.Quote(text)
}
