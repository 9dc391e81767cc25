package quantity

// The definitions behind the factors; sources in the package comment.
const (
	inch        = 0.0254                          // m, exact
	foot        = 12 * inch                       // m
	yard        = 3 * foot                        // m
	mile        = 5280 * foot                     // m
	pound       = 0.45359237                      // kg, exact
	gravity     = 9.80665                         // m/s², standard, exact
	psi         = pound * gravity / (inch * inch) // Pa
	inchOfWater = inch * 1000 * gravity           // Pa, conventional
	btu         = 1055.05585262                   // J, International Table
	horsepower  = 550 * foot * pound * gravity    // W, mechanical
	litre       = 0.001                           // m³
	gallonUK    = 4.54609 * litre                 // m³, exact
	gallonUS    = 3.785411784 * litre             // m³, exact
	minute      = 60                              // s
	hour        = 3600                            // s
	day         = 86400                           // s
	fahrenheit  = 5.0 / 9                         // K in one degree
	mileAnHour  = mile / hour                     // m/s
)

// unitEntry is a unit with the other spellings under which it is accepted.
type unitEntry struct {
	traits
	aliases []string
}

// unit is the unit of an entry of the table.
func (e *unitEntry) unit() Unit { return Unit{&e.traits} }

// unit makes an entry of the table below.
func unit(dim Dimension, name, symbol string, factor float64, decimals int, aliases ...string) unitEntry {
	return unitEntry{
		traits:  traits{name: name, symbol: symbol, dimension: dim, factor: factor, decimals: decimals},
		aliases: aliases,
	}
}

// scale makes an entry for a temperature scale whose zero is not absolute.
func scale(name string, factor, offset float64, decimals int, aliases ...string) unitEntry {
	e := unit(Temperature, name, name, factor, decimals, aliases...)
	e.offset = offset
	return e
}

// composite makes an entry for a unit shown in two parts. Its factor is that
// of the smaller part.
func composite(dim Dimension, large, small string, ratio int, factor float64, aliases ...string) unitEntry {
	name := large + "-" + small
	e := unit(dim, name, name, factor, 0, aliases...)
	e.large, e.small, e.ratio = large, small, ratio
	return e
}

// Spellings of the temperature scales, shared by points and differences. The
// bare letter C is not among them: it is the coulomb.
var (
	celsiusSpellings    = []string{"ºC", "˚C", "℃", "deg C", "degC", "deg. C", "degrees C", "° C", "º C", "Celsius", "celsius"}
	fahrenheitSpellings = []string{"ºF", "˚F", "℉", "deg F", "degF", "deg. F", "degrees F", "° F", "º F", "Fahrenheit", "fahrenheit"}
	kelvinSpellings     = []string{"\u212a", "kelvin", "Kelvin", "kelvins"}
)

// units is the table of all units, never written to. Within a dimension the
// order is the one in which a message lists them. Temperature stands before
// TemperatureDifference so that UnitNamed finds the scales first.
//
// The number before the spellings is the most decimals a computed value shows:
// about what a person can read off or set.
var units = []unitEntry{
	unit(Mass, "kg", "kg", 1, 1, "Kg", "KG", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"),
	unit(Mass, "g", "g", 0.001, 0, "gram", "grams", "gramme", "grammes"),
	unit(Mass, "t", "t", 1000, 3, "tonne", "tonnes"),
	unit(Mass, "lb", "lb", pound, 0, "lbs", "pound", "pounds"),
	unit(Mass, "oz", "oz", pound/16, 1, "ounce", "ounces"),

	unit(Length, "m", "m", 1, 2, "metre", "metres", "meter", "meters"),
	unit(Length, "mm", "mm", 0.001, 0, "millimetre", "millimetres", "millimeter", "millimeters"),
	unit(Length, "cm", "cm", 0.01, 1, "centimetre", "centimetres", "centimeter", "centimeters"),
	unit(Length, "km", "km", 1000, 1, "kilometre", "kilometres", "kilometer", "kilometers"),
	unit(Length, "ft", "ft", foot, 1, "foot", "feet"),
	unit(Length, "in", "in", inch, 1, "inch", "inches"),
	unit(Length, "mi", "mi", mile, 1, "mile", "miles"),
	unit(Length, "yd", "yd", yard, 0, "yds", "yard", "yards"),
	composite(Length, "ft", "in", 12, inch),

	unit(Area, "m2", "m²", 1, 2, "m^2", "sq m", "sqm", "square metre", "square metres"),
	unit(Area, "cm2", "cm²", 1e-4, 0, "cm^2", "sq cm", "square centimetre", "square centimetres"),
	unit(Area, "mm2", "mm²", 1e-6, 2, "mm^2", "sq mm", "sqmm", "square millimetre", "square millimetres"),

	unit(Pressure, "bar", "bar", 1e5, 2, "Bar", "BAR", "bars"),
	unit(Pressure, "mbar", "mbar", 100, 0, "mBar", "millibar", "millibars"),
	unit(Pressure, "psi", "psi", psi, 1, "Psi", "PSI", "lb/in2", "lb/in²", "lbf/in2", "lbf/in²"),
	unit(Pressure, "kPa", "kPa", 1000, 0, "kpa", "KPa", "Kpa", "KPA", "kilopascal", "kilopascals"),
	unit(Pressure, "Pa", "Pa", 1, 0, "pascal", "pascals"),
	unit(Pressure, "inH2O", "inH₂O", inchOfWater, 1, "inH20", "in H2O", "inWG", "in WG", "inwg", "in wg"),

	unit(Power, "W", "W", 1, 0, "w", "watt", "watts", "Watt", "Watts"),
	unit(Power, "kW", "kW", 1000, 2, "kw", "KW", "Kw", "kilowatt", "kilowatts"),
	unit(Power, "hp", "hp", horsepower, 0, "HP", "bhp", "BHP", "horsepower"),
	unit(Power, "Btu/h", "Btu/h", btu/hour, 0, "BTU/h", "btu/h", "BTU/hr", "Btu/hr", "btu/hr"),

	unit(Energy, "Wh", "Wh", hour, 0, "wh", "WH", "W h", "W·h", "watt-hour", "watt-hours", "watt hours"),
	unit(Energy, "kWh", "kWh", 1000*hour, 2, "kwh", "KWh", "KWH", "kWH", "kW h", "kW·h", "kilowatt-hour", "kilowatt-hours", "kilowatt hours"),
	unit(Energy, "J", "J", 1, 0, "joule", "joules"),
	unit(Energy, "kJ", "kJ", 1000, 0, "kj", "KJ", "kilojoule", "kilojoules"),
	unit(Energy, "MJ", "MJ", 1e6, 1, "megajoule", "megajoules"),
	unit(Energy, "Btu", "Btu", btu, 0, "BTU", "btu"),

	unit(Charge, "Ah", "Ah", hour, 1, "ah", "AH", "A h", "A·h", "amp-hour", "amp-hours", "amp hours", "ampere-hour", "ampere-hours"),
	unit(Charge, "mAh", "mAh", hour/1000.0, 0, "mah", "mAH"),
	unit(Charge, "C", "C", 1, 0, "coulomb", "coulombs"),

	unit(Current, "A", "A", 1, 1, "a", "amp", "amps", "Amp", "Amps", "ampere", "amperes"),
	unit(Current, "mA", "mA", 0.001, 0, "milliamp", "milliamps", "milliampere", "milliamperes"),

	unit(Voltage, "V", "V", 1, 2, "v", "volt", "volts", "Volt", "Volts"),
	unit(Voltage, "mV", "mV", 0.001, 0, "millivolt", "millivolts"),
	unit(Voltage, "kV", "kV", 1000, 2, "kilovolt", "kilovolts"),

	unit(Volume, "L", "L", litre, 1, "l", "ℓ", "ltr", "ltrs", "litre", "litres", "liter", "liters", "Litre", "Litres"),
	unit(Volume, "ml", "ml", litre/1000, 0, "mL", "millilitre", "millilitres", "milliliter", "milliliters"),
	unit(Volume, "m3", "m³", 1, 3, "m^3", "cubic metre", "cubic metres"),
	unit(Volume, "gal-uk", "gal\u00a0(UK)", gallonUK, 1, "gal (UK)", "gal-UK", "UK gal", "UK gallon", "UK gallons", "imperial gallon", "imperial gallons"),
	unit(Volume, "gal-us", "gal\u00a0(US)", gallonUS, 1, "gal (US)", "gal-US", "US gal", "US gallon", "US gallons"),

	scale("°C", 1, 273.15, 1, celsiusSpellings...),
	scale("°F", fahrenheit, 459.67, 0, fahrenheitSpellings...),
	unit(Temperature, "K", "K", 1, 1, kelvinSpellings...),

	unit(TemperatureDifference, "K", "K", 1, 1, kelvinSpellings...),
	unit(TemperatureDifference, "°C", "°C", 1, 1, celsiusSpellings...),
	unit(TemperatureDifference, "°F", "°F", fahrenheit, 0, fahrenheitSpellings...),

	unit(Time, "h", "h", hour, 1, "hr", "hrs", "hour", "hours"),
	unit(Time, "min", "min", minute, 0, "mins", "minute", "minutes"),
	unit(Time, "s", "s", 1, 0, "sec", "secs", "second", "seconds"),
	unit(Time, "d", "d", day, 1, "day", "days"),
	composite(Time, "h", "min", 60, minute),

	unit(MassFlow, "g/h", "g/h", 0.001/hour, 0, "g/hr", "g/hour"),
	unit(MassFlow, "kg/h", "kg/h", 1.0/hour, 2, "kg/hr", "kg/hour", "Kg/h", "Kg/hr"),
	unit(MassFlow, "kg/s", "kg/s", 1, 4, "kg/sec"),

	unit(VolumeFlow, "L/min", "L/min", litre/minute, 1, "l/min", "L/m", "l/m", "lpm", "LPM", "litres/min", "litres per minute", "litre/min"),
	unit(VolumeFlow, "L/h", "L/h", litre/hour, 1, "l/h", "L/hr", "l/hr", "litres/hour", "litres per hour"),
	unit(VolumeFlow, "L/s", "L/s", litre, 2, "l/s", "L/sec", "l/sec", "litres per second"),
	unit(VolumeFlow, "m3/h", "m³/h", 1.0/hour, 1, "m^3/h", "m3/hr", "m³/hr"),
	unit(VolumeFlow, "gal-us/min", "gal\u00a0(US)/min", gallonUS/minute, 1, "gal (US)/min", "US gal/min"),
	unit(VolumeFlow, "m3/s", "m³/s", 1, 4, "m^3/s"),

	unit(Speed, "km/h", "km/h", 1000.0/hour, 0, "kph", "KPH", "kmh", "km/hr", "kmph"),
	unit(Speed, "mph", "mph", mileAnHour, 0, "MPH", "mi/h", "miles/h", "miles per hour"),
	unit(Speed, "m/s", "m/s", 1, 1, "m/sec"),

	unit(Ratio, "%", "%", 0.01, 0, "per cent", "percent"),
	unit(Ratio, "1", "", 1, 2),
}

// ambiguous lists unit names that people write for more than one unit, with
// what to write instead.
var ambiguous = map[string]string{
	"gal":     "write gal-uk or gal-us",
	"gals":    "write gal-uk or gal-us",
	"gallon":  "write gal-uk or gal-us",
	"gallons": "write gal-uk or gal-us",
	"gpm":     "write gal-us/min, or L/min",
	"ton":     "write t for the tonne of 1000 kg, or kg",
	"tons":    "write t for the tonne of 1000 kg, or kg",
	"°":       "write °C or °F",
	"º":       "write °C or °F",
	"deg":     "write °C or °F",
	"degrees": "write °C or °F",
}
