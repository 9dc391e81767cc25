package fact

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// Decode reads the value that a file states for the fact, with type, options
// and range checked. The value is zero where problems hold an error about it.
func (d *Decl) Decode(e manifest.Entry, problems *problem.List) Value {
	if _, broken := e.Value.(manifest.Unreadable); broken {
		return Value{}
	}
	v, p := d.decode(e)
	if p != nil {
		problems.Add(*p)
		return Value{}
	}
	v.At = e.ValueSpan
	return v
}

func (d *Decl) decode(e manifest.Entry) (Value, *problem.Problem) {
	switch d.Type.Kind {
	case Quantity:
		return d.decodeQuantity(e)
	case Choice:
		return d.decodeChoice(e)
	case Choices:
		return d.decodeChoices(e)
	case Count:
		return d.decodeCount(e)
	case YesNo:
		if b, ok := e.Value.(bool); ok {
			return Value{Kind: YesNo, Yes: b}, nil
		}
		return Value{}, d.wrong(e, "Write true or false without quotes.")
	case Date:
		if day, ok := e.Value.(manifest.Date); ok {
			return Value{Kind: Date, Date: day}, nil
		}
		return Value{}, d.wrong(e, "Write a day without quotes, for example 2027-03-14.")
	default:
		return d.decodeText(e)
	}
}

func (d *Decl) decodeQuantity(e manifest.Entry) (Value, *problem.Problem) {
	text, ok := e.Value.(string)
	if !ok {
		return Value{}, d.wrong(e, fmt.Sprintf("Write a %s with its unit in quotes, for example %q.", d.Type.Dimension, d.example()))
	}
	q, err := quantity.Parse(text, d.Type.Dimension)
	if err != nil {
		return Value{}, d.notParsed(e, err)
	}
	v := Value{Kind: Quantity, Quantity: q}
	if below(v, d.Low) || below(d.High, v) {
		return Value{}, d.outOfRange(e, text)
	}
	return v, nil
}

// notParsed points at the very character that Parse stumbled over.
func (d *Decl) notParsed(e manifest.Entry, err error) *problem.Problem {
	p := problem.New(problem.Error, e.ValueSpan, "bad-quantity", fmt.Sprintf("Value of %s is not understood", d.Name), err.Error())
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		p.Summary = fmt.Sprintf("Value of %s: %s", d.Name, parse.Message)
		p.Detail = strings.TrimSpace(parse.Hint)
		if p.Detail == "" {
			p.Detail = fmt.Sprintf("Write a %s with its unit, for example %q.", d.Type.Dimension, d.example())
		}
		if text, ok := e.Value.(string); ok && parse.Offset <= len(text) && e.ValueSpan.Length == utf8.RuneCountInString(text)+2 {
			p.Start.Column += 1 + utf8.RuneCountInString(text[:parse.Offset])
			p.Length = max(1, utf8.RuneCountInString(text[parse.Offset:]))
		}
	}
	return &p
}

func (d *Decl) decodeChoice(e manifest.Entry) (Value, *problem.Problem) {
	text, ok := e.Value.(string)
	if !ok {
		return Value{}, d.wrong(e, "Write one of "+list(d.Of)+" in quotes.")
	}
	if !slices.Contains(d.Of, text) {
		return Value{}, d.noOption(e, text)
	}
	return Value{Kind: Choice, Options: []string{text}}, nil
}

func (d *Decl) decodeChoices(e manifest.Entry) (Value, *problem.Problem) {
	items, ok := e.Value.([]manifest.Entry)
	if !ok {
		return Value{}, d.wrong(e, fmt.Sprintf("Write a list of %s, for example [%q].", list(d.Of), d.Of[0]))
	}
	v := Value{Kind: Choices}
	for _, item := range items {
		text, ok := item.Value.(string)
		if !ok {
			return Value{}, d.wrong(item, "Write options in quotes.")
		}
		if !slices.Contains(d.Of, text) {
			return Value{}, d.noOption(item, text)
		}
		if !slices.Contains(v.Options, text) {
			v.Options = append(v.Options, text)
		}
	}
	return v, nil
}

func (d *Decl) decodeCount(e manifest.Entry) (Value, *problem.Problem) {
	n, ok := e.Value.(int64)
	if !ok {
		return Value{}, d.wrong(e, "Write a whole number without quotes, for example 2.")
	}
	const most = 100_000 // no van has more of anything
	v := Value{Kind: Count, Count: int(n)}
	if n < 0 || n > most || below(v, d.Low) || below(d.High, v) {
		return Value{}, d.outOfRange(e, fmt.Sprint(n))
	}
	return v, nil
}

func (d *Decl) decodeText(e manifest.Entry) (Value, *problem.Problem) {
	text, ok := e.Value.(string)
	switch {
	case !ok:
		return Value{}, d.wrong(e, "Write words in quotes.")
	case strings.TrimSpace(text) == "":
		return Value{}, d.wrong(e, "It is empty. Write the words, or leave the line out.")
	}
	return Value{Kind: Text, Text: strings.Join(strings.Fields(text), " ")}, nil
}

// below reports whether a is stated, b is stated, and a is less than b.
func below(a, b Value) bool {
	switch {
	case a.IsZero() || b.IsZero():
		return false
	case a.Kind == Count:
		return a.Count < b.Count
	default:
		order, err := quantity.Compare(a.Quantity, b.Quantity)
		return err == nil && order < 0
	}
}

func (d *Decl) wrong(e manifest.Entry, detail string) *problem.Problem {
	p := problem.New(problem.Error, e.ValueSpan, "wrong-type",
		fmt.Sprintf("Value of %s is %s", d.Name, manifest.Describe(e.Value)), detail)
	return &p
}

func (d *Decl) noOption(e manifest.Entry, text string) *problem.Problem {
	detail := "It can be " + list(d.Of) + "."
	if near := problem.Nearest(text, d.Of); near != "" {
		detail = fmt.Sprintf("Did you mean %q? ", near) + detail
	}
	p := problem.New(problem.Error, e.ValueSpan, "unknown-option", fmt.Sprintf("%q is no option of %s", text, d.Name), detail)
	return &p
}

func (d *Decl) outOfRange(e manifest.Entry, text string) *problem.Problem {
	detail := "It can be " + d.RangeText() + ". Look at the unit and the decimal point."
	p := problem.New(problem.Error, e.ValueSpan, "out-of-range", fmt.Sprintf("%s %s is out of range", d.Name, text), detail)
	return &p
}

// RangeText says the range in words for messages: "from 2 kg to 47 kg".
func (d *Decl) RangeText() string {
	end := func(v Value) string {
		if v.Kind == Count {
			return fmt.Sprint(v.Count)
		}
		return v.Quantity.String()
	}
	switch {
	case d.Low.IsZero() && d.High.IsZero():
		return "any value that a " + d.Name + " can have"
	case d.High.IsZero():
		return end(d.Low) + " or more"
	case d.Low.IsZero():
		return end(d.High) + " or less"
	}
	return "from " + end(d.Low) + " to " + end(d.High)
}

func (d *Decl) example() string {
	if !d.Low.IsZero() {
		return d.Low.Quantity.String()
	}
	return "1 " + quantity.Units(d.Type.Dimension)[0].Name()
}

func list(names []string) string {
	if len(names) == 0 {
		return "nothing"
	}
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

func errorf(format string, args ...any) error { return fmt.Errorf(format, args...) }
