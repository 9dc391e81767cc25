// Package calc is what the calculations of all families share: refusing a
// number that a formula cannot take, and taking a number from a fact.
package calc

import (
	"errors"
	"fmt"
	"math"

	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// ErrOutside is wrapped by every error of a calculation that was asked for
// something its formula does not hold for.
var ErrOutside = errors.New("outside what the formula holds for")

// Outside makes an error that wraps ErrOutside.
func Outside(format string, args ...any) error {
	return fmt.Errorf("%s: %w", fmt.Sprintf(format, args...), ErrOutside)
}

// Positive gives v back if it is finite and above zero, and otherwise an error
// that wraps ErrOutside. It stands before every division and after it: a tiny
// divisor may make a result that no float64 holds.
func Positive[T quantity.Measure](what string, v T) (T, error) {
	if !(v > 0) || math.IsInf(float64(v), 1) { // the first also catches what is not a number
		return 0, Outside("%s is %g, which must be above zero and finite", what, float64(v))
	}
	return v, nil
}

// Take gives the number that a fact states. The error says, for the staff, why
// the fact cannot be reckoned with: it is not stated, measures something else,
// or is nothing.
func Take[T quantity.Measure](f table.Fact) (T, error) {
	v, err := quantity.As[T](f.Quantity)
	if errors.Is(err, quantity.ErrAbsent) {
		return 0, fmt.Errorf("%s is not stated", f.Name)
	}
	if err != nil {
		return 0, fmt.Errorf("%s: %w", f.Name, err)
	}
	if _, err := Positive(f.Name, v); err != nil {
		return 0, fmt.Errorf("%s is %s, which must be above zero: %w", f.Name, f.Quantity, ErrOutside)
	}
	return v, nil
}
