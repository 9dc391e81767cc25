package reading

import "regexp"

// figure is a number with a unit.
var figure = regexp.MustCompile(`(?i)(?:^|[^\w.,{$-])(\d+(?:[.,]\d+)*[ \x{a0}\x{202f}-]?(?:kg|g|mg|t|tonnes?|mm²|m[²³]|mm2?|cm|m|km|ft|feet|foot|in|inch(?:es)?|yards?|miles?|metres?|millimetres?|centimetres?|kilometres?|` +
	`lb|lbs|pounds?|ounces?|oz|kilos?|grams?|kilograms?|l|cl|ml|litres?|millilitres?|pints?|gallons?|v|mv|volts?|a|ma|amps?|amperes?|ah|mah|w|kw|watts?|kilowatts?|wh|kwh|bar|mbar|millibars?|psi|pa|hpa|kpa|` +
	`°|°c|°f|k|degrees?|%|per cent|percent|ppm|hz|db|h|hrs?|min|mins|s|secs?|minutes?|seconds?|hours?|days?|nights?|weeks?|months?|years?|km/h|kph|mph|g/h|kg/h|l/min|l/h))(?:[^\w]|$)`)

// voltageName is the name of a system of the van, not a figure to go by:
// "12-volt panel".
var voltageName = regexp.MustCompile(`(?i)\b(?:12|24|120|230)[ -](?:v|volts?)\b`)

// Figure finds the first number with a unit in a text, "" for none. One value
// has one source: words take their numbers from facts, constants and tables.
func Figure(text string) string {
	if all := Figures(text); len(all) > 0 {
		return all[0]
	}
	return ""
}

// Figures finds every number with a unit in a text, in order.
func Figures(text string) []string {
	var all []string
	text = voltageName.ReplaceAllString(text, "x")
	for {
		at := figure.FindStringSubmatchIndex(text)
		if at == nil {
			return all
		}
		all = append(all, text[at[2]:at[3]])
		text = text[at[3]:] // what follows the unit may come before the next figure
	}
}
