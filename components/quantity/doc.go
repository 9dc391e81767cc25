// Package quantity holds the numbers of a van together with their units.
//
// A spec writes quantities as text, "5.5 bar". Parse reads that text for one
// expected dimension and refuses everything else with an error that says what
// was expected. A calculation takes and gives typed numbers in SI units
// (Kilograms, Seconds and so on, see Measure), so that the compiler rejects a
// pressure where a mass belongs; As and Of lead from a Quantity to such a
// number and back. A Formatter prints a Quantity for a reader's locale, rounded
// towards the safe side where the caller says which side that is.
//
// # What Parse accepts
//
// A number, optional space, a unit: "5.5 bar", "5.5bar", "-5 °C", "50 %". The
// decimal mark is the point, and a digit stands on each side of it. Groups of
// exactly three digits before the point may be set apart by a space (normal,
// no-break, thin or narrow no-break), as the SI Brochure has it: "1 000 kg". A comma is refused wherever it stands, because "1,000 kg" is a
// tonne to one reader and a kilogram to another. Exponents are refused, as is a
// number of more than 15 digits, which a float64 cannot hold exactly. Feet with
// inches and hours with minutes may be joined: "9 ft 2 in", "5 h 40 min".
// A ratio up to 1 may stand without a unit: "0.85"; more than that needs "%"
// (or the unit 1 written out), because a bare "50" may mean either.
//
// # Validity
//
// Every Quantity that is present is finite. Parse and New refuse negative
// values except for a temperature and a temperature difference, and refuse a
// temperature below absolute zero. A calculation may give a negative result, a
// mass still free for instance, so Of accepts one. Pressure is taken as
// written: whether a pressure is above the atmosphere (gauge) or absolute is
// for the fact that holds it to say.
//
// # Sources of the factors
//
// Metric prefixes, the litre, tonne, minute, hour and day: SI Brochure, 9th
// edition (2019), from memory. Other factors follow the definitions given in
// NIST SP 811 (2008), appendix B, from memory: bar 100 000 Pa, inch 0.0254 m,
// foot 12 in, yard 3 ft, mile 5280 ft, pound 0.453 592 37 kg, ounce 1/16 lb,
// standard gravity 9.806 65 m/s², hence psi; litre-based gallons 4.546 09 L
// (UK) and 3.785 411 784 L (US); Btu of the International Table
// 1055.055 852 62 J; horsepower of 550 ft·lbf/s, which is the mechanical one
// (745.7 W) and not the metric one (735.5 W); inch of water "conventional",
// 1000 kg/m³ under standard gravity. The tests check every one of them against
// the definitions of GNU units.
package quantity
