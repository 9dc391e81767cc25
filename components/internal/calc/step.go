package calc

import (
	"math"

	"doorpocket/components/quantity"
)

// stepNoise is the part of a step that the noise of arithmetic may make up: a
// number so near to a whole number of steps is that number.
const stepNoise = 1e-9

// StepUp rounds up to a whole number of steps, for what is told more coarsely
// than by decimals: an estimate has no single watts.
func StepUp[T quantity.Measure](v, step T) T {
	return T(math.Ceil(float64(v/step)-stepNoise)) * step
}

// StepDown rounds down to a whole number of steps. Less than one step gives
// zero, which no table may show.
func StepDown[T quantity.Measure](v, step T) T {
	return T(math.Floor(float64(v/step)+stepNoise)) * step
}
