package fact

import (
	"slices"

	"doorpocket/components/quantity"
)

// Same reports whether two values of one fact mean the same: 500 mm is 0.5 m. Two
// that are not stated do.
func (v Value) Same(other Value) bool {
	if v.Kind != other.Kind {
		return false
	}
	if v.Kind == Quantity {
		order, err := quantity.Compare(v.Quantity, other.Quantity)
		return err == nil && order == 0
	}
	return v.Count == other.Count && v.Yes == other.Yes && v.Date == other.Date && v.Text == other.Text && slices.Equal(v.Options, other.Options)
}
