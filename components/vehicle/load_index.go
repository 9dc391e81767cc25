package vehicle

import (
	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
)

// The load indices that a van's tyre may have.
const (
	lowestIndex  = 60
	highestIndex = lowestIndex + len(indexLoads) - 1
)

// indexLoads are the loads in kg that one tyre carries, by load index from
// lowestIndex up.
//
// Source: UN Regulations No. 30 and No. 54, annex 4, and ISO 4000-1, as quoted
// alike in public tables.
var indexLoads = [...]quantity.Kilograms{
	250, 257, 265, 272, 280, 290, 300, 307, 315, 325, // 60 to 69
	335, 345, 355, 365, 375, 387, 400, 412, 425, 437, // 70 to 79
	450, 462, 475, 487, 500, 515, 530, 545, 560, 580, // 80 to 89
	600, 615, 630, 650, 670, 690, 710, 730, 750, 775, // 90 to 99
	800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030, // 100 to 109
	1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360, // 110 to 119
	1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850, // 120 to 129
	1900, // 130
}

// TyreLoad is the load that one tyre of a load index may carry.
//
// It is read from a table and holds up to the speed of the tyre's speed symbol,
// at the pressure that goes with the load. Indices outside 60 to 130 are
// refused. Of a tyre with two indices the second holds where two wheels stand
// side by side.
//
// Source: that of indexLoads.
func TyreLoad(index int) (quantity.Kilograms, error) {
	if index < lowestIndex || index > highestIndex {
		return 0, calc.Outside("the load index is %d, which must lie between %d and %d", index, lowestIndex, highestIndex)
	}
	return indexLoads[index-lowestIndex], nil
}

// AxleCapacity is the load that all tyres of an axle, or of a pair of axles,
// carry together: the load of one tyre times their number.
//
// Source: UN Regulation No. 54, which states loads for single and for twin
// wheels so that they may be added up.
func AxleCapacity(index, tyres int) (quantity.Kilograms, error) {
	if tyres < 2 || tyres%2 != 0 {
		return 0, calc.Outside("an axle has %d tyres, which must be an even number", tyres)
	}
	one, err := TyreLoad(index)
	if err != nil {
		return 0, err
	}
	return one * quantity.Kilograms(tyres), nil
}
