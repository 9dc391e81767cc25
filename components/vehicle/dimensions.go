package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// Size is the size of a van, everything in m. A zero is not known; it is never
// shown and never reckoned with.
type Size struct {
	Height, Length, Width, WidthMirrors, Wheelbase, FrontOverhang quantity.Metres
}

// CheckMirrors refuses a width across the mirrors that is smaller than that of
// the body. The van would seem to fit where its mirrors do not.
//
// Source: geometry.
func (s Size) CheckMirrors() error {
	if s.WidthMirrors > 0 && s.WidthMirrors < s.Width {
		return calc.Outside("the width across the mirrors, %g m, is less than that of the body, %g m", s.WidthMirrors, s.Width)
	}
	return nil
}

// CheckWheelbase refuses axles that are further apart than the van is long.
//
// Source: geometry.
func (s Size) CheckWheelbase() error {
	if s.Length > 0 && s.Wheelbase >= s.Length {
		return calc.Outside("the wheelbase, %g m, is not less than the length, %g m", s.Wheelbase, s.Length)
	}
	return nil
}

// CheckOverhang refuses a front overhang that puts the last axle behind the
// van.
//
// Source: geometry.
func (s Size) CheckOverhang() error {
	if s.Length > 0 && s.FrontOverhang > 0 && s.FrontOverhang+s.Wheelbase >= s.Length {
		return calc.Outside("the front overhang, %g m, and the wheelbase, %g m, are not less than the length, %g m",
			s.FrontOverhang, s.Wheelbase, s.Length)
	}
	return nil
}
