package fact

import (
	"cmp"
	"slices"
	"strconv"

	"doorpocket/components/quantity"
)

// Compare tells how v stands to a value written in a condition: negative,
// zero or positive. ok is false where v is not stated or the two cannot be
// compared. For Choices zero means that the option is among them.
func (v Value) Compare(written string) (order int, ok bool) {
	switch v.Kind {
	case Quantity:
		q, err := quantity.Parse(written, v.Quantity.Dimension())
		if err != nil {
			return 0, false
		}
		order, err := quantity.Compare(v.Quantity, q)
		return order, err == nil
	case Choice, Choices:
		if slices.Contains(v.Options, written) {
			return 0, true
		}
		return 1, true
	case Count:
		n, err := strconv.Atoi(written)
		return cmp.Compare(v.Count, n), err == nil
	case YesNo:
		if v.Yes == (written == "yes") {
			return 0, true
		}
		return 1, true
	case Text:
		return cmp.Compare(v.Text, written), true
	default:
		return 0, false
	}
}

// Comparable reports whether a condition may compare the fact with the value
// as written; the error says what is expected.
func (d *Decl) Comparable(written string, ordering bool) error {
	if ordering && !d.Type.Numeric() {
		return errorf("%s is no number: compare it with = or !=", d.Name)
	}
	switch d.Type.Kind {
	case Quantity:
		_, err := quantity.Parse(written, d.Type.Dimension)
		return err
	case Choice, Choices:
		if !slices.Contains(d.Of, written) {
			return errorf("%q is no option of %s: it has %s", written, d.Name, list(d.Of))
		}
	case Count:
		if _, err := strconv.Atoi(written); err != nil {
			return errorf("%q is no whole number", written)
		}
	case YesNo:
		if written != "yes" && written != "no" {
			return errorf("%s is yes or no, not %q", d.Name, written)
		}
	case Date:
		return errorf("%s is a date, which conditions cannot compare", d.Name)
	}
	return nil
}
