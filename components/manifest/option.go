package manifest

import "math"

// Option changes how a Reader takes one value.
type Option func(*wish)

// wish is what the caller wants to know of a key.
type wish struct {
	required bool
	single   bool
	example  string
	given    bool   // the example is the caller's
	brackets string // the form of a header that would do, for a table
	low      float64
	high     float64
}

// Required makes a missing key an error, and an empty text or list as well.
func Required(w *wish) { w.required = true }

// OrSingle lets Texts accept one text without brackets.
func OrSingle(w *wish) { w.single = true }

// Example gives the right-hand side to show in messages, as it would be written
// in the file: Example(`"6.36 m"`).
func Example(written string) Option {
	return func(w *wish) { w.example, w.given = written, true }
}

// Between sets the smallest and largest value that Float accepts.
func Between(low, high float64) Option {
	return func(w *wish) { w.low, w.high = low, high }
}

// wishFor gathers options; an example of the caller's replaces the usual one.
func wishFor(usual string, options []Option) wish {
	w := wish{example: usual, low: math.Inf(-1), high: math.Inf(1)}
	for _, set := range options {
		set(&w)
	}
	return w
}
