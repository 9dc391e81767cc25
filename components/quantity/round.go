package quantity

import "math"

// Rounding says which way a number goes when digits are dropped.
type Rounding uint8

const (
	// Nearest goes to the nearer number, from halfway away from zero.
	Nearest Rounding = iota
	// Up goes towards plus infinity: for a load, a height of the vehicle.
	Up
	// Down goes towards minus infinity: for a duration, a headroom.
	Down
)

// String gives "nearest", "up" or "down".
func (r Rounding) String() string {
	switch r {
	case Up:
		return "up"
	case Down:
		return "down"
	}
	return "nearest"
}

// The noise that binary arithmetic leaves in a number: one part in 10^9 of it,
// but never so much that a digit anybody could mean is taken for noise.
const (
	noisePart = 1e-9
	noiseMost = 1e-3
)

// Limits of what is worth printing: beyond wholeMost a float64 has no exact
// whole numbers to round to.
const (
	decimalsMost = 12
	wholeMost    = 1e15
)

var powersOfTen = [decimalsMost + 1]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12}

// whole rounds x to a whole number. A number within the noise of a whole one
// is that one whichever the rounding: 4.999999999 rounded up is 5, and
// 5.000000001 rounded up is 5 too.
func (r Rounding) whole(x float64) float64 {
	noise := math.Min(noisePart*math.Max(1, math.Abs(x)), noiseMost)
	near := math.Round(x)
	if math.Abs(x-near) <= noise {
		return near
	}
	switch r {
	case Up:
		return math.Ceil(x)
	case Down:
		return math.Floor(x)
	}
	// A half that noise made a little smaller still counts as a half.
	if half := math.Trunc(x) + math.Copysign(0.5, x); math.Abs(x-half) <= noise {
		return math.Trunc(x) + math.Copysign(1, x)
	}
	return near
}

// scaled rounds x to so many decimals and gives the result as a whole number
// of the last of them: 5.25 at 1 decimal is 53. It reports false for a number
// too large for that, which has no decimals to round.
func (r Rounding) scaled(x float64, decimals int) (int64, bool) {
	n := x * powersOfTen[decimals]
	if !(math.Abs(n) < wholeMost) {
		return 0, false
	}
	return int64(r.whole(n)), true
}

// significantLeast is how many significant figures a computed value keeps even
// where its unit's usual decimals would leave fewer.
const significantLeast = 2

// sensibleMost bounds the decimals that are added for that; what is smaller
// is shown as zero.
const sensibleMost = 6

// sensibleDecimals gives how many decimals a computed value shows at most: the
// unit's own number, or more if two significant figures need them.
func sensibleDecimals(x float64, u Unit) int {
	if x == 0 {
		return u.is().decimals
	}
	need := significantLeast - 1 - int(math.Floor(math.Log10(math.Abs(x))))
	return max(u.is().decimals, min(need, sensibleMost))
}
