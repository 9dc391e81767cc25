package heating

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// MixedWater is the water that a store of hot water makes when cold is added
// until it is as warm as wanted.
//
//	V = Vh · (Th - Tc) / (Tm - Tc)
//
// with the volume of hot water Vh in m³, the temperatures of hot Th, cold Tc and
// mixed water Tm in K and the volume V in m³. It holds for liquid water, 0 °C
// to 100 °C, mixed to a warmth between that of the two; anything else is
// refused.
//
// It is the most that a boiler can give: cold water flows in below while hot is
// drawn, and some of it mixes, so that the last of the water is cooler. If all
// of it mixed at once, Vh · (Th - Tm) / (Tm - Tc) would be left.
//
// Accuracy: as water takes up nearly the same heat per litre at any warmth,
// within 3 % from 0 °C to 80 °C.
//
// Source: conservation of heat.
func MixedWater(hot quantity.CubicMetres, hotAt, cold, mixed quantity.Kelvins) (quantity.CubicMetres, error) {
	if _, err := calc.Positive("the volume of hot water", hot); err != nil {
		return 0, err
	}
	if !(cold >= freezing && cold < mixed && mixed <= hotAt && hotAt <= boiling) { // also refuses what is not a number
		return 0, calc.Outside("mixing %.4g K and %.4g K to %.4g K", float64(hotAt), float64(cold), float64(mixed))
	}
	return calc.Positive("the mixed water", hot*quantity.CubicMetres((hotAt-cold)/(mixed-cold)))
}

// FlowTime is how long a volume of water runs at a steady flow.
//
//	t = V / q
//
// with the volume V in m³, the flow q in m³/s and the time t in s.
//
// Source: definition of flow.
func FlowTime(volume quantity.CubicMetres, flow quantity.CubicMetresPerSecond) (quantity.Seconds, error) {
	if _, err := calc.Positive("the volume", volume); err != nil {
		return 0, err
	}
	if _, err := calc.Positive("the flow", flow); err != nil {
		return 0, err
	}
	return calc.Positive("the time", quantity.Seconds(float64(volume)/float64(flow)))
}
