package quantity

// Dimension says what kind of thing a quantity measures.
type Dimension uint8

// The dimensions of a van. None is the dimension of an absent quantity.
//
// Temperature is a point on a scale and TemperatureDifference the distance
// between two such points: 5 °C of frost and 5 °C of cooling convert
// differently to °F, so they are never mixed.
const (
	None Dimension = iota
	Mass
	Length
	Area
	Pressure
	Power
	Energy
	Charge
	Current
	Voltage
	Volume
	Temperature
	TemperatureDifference
	Time
	MassFlow
	VolumeFlow
	Speed
	Ratio
	dimensionCount
)

// dimensionNames is indexed by Dimension.
var dimensionNames = [dimensionCount]string{
	None:                  "none",
	Mass:                  "mass",
	Length:                "length",
	Area:                  "area",
	Pressure:              "pressure",
	Power:                 "power",
	Energy:                "energy",
	Charge:                "charge",
	Current:               "current",
	Voltage:               "voltage",
	Volume:                "volume",
	Temperature:           "temperature",
	TemperatureDifference: "temperature-difference",
	Time:                  "time",
	MassFlow:              "mass-flow",
	VolumeFlow:            "volume-flow",
	Speed:                 "speed",
	Ratio:                 "ratio",
}

// DimensionNamed finds a dimension by the name a system file uses for it:
// "mass", "temperature-difference", "volume-flow". "none" is not such a name.
func DimensionNamed(name string) (Dimension, bool) {
	for d := None + 1; d < dimensionCount; d++ {
		if dimensionNames[d] == name {
			return d, true
		}
	}
	return None, false
}

// Dimensions gives all dimensions but None, in the order of the constants.
func Dimensions() []Dimension {
	all := make([]Dimension, 0, dimensionCount-1)
	for d := None + 1; d < dimensionCount; d++ {
		all = append(all, d)
	}
	return all
}

// String gives the name that DimensionNamed accepts; "none" for None and for
// a value that is no dimension.
func (d Dimension) String() string {
	if d >= dimensionCount {
		d = None
	}
	return dimensionNames[d]
}

// mayBeNegative reports whether a spec may state a value below zero.
func (d Dimension) mayBeNegative() bool {
	return d == Temperature || d == TemperatureDifference
}
