package reading

import "regexp"

// figure is a number with a unit.
var figure = regexp.MustCompile(`(?i)(?:^|[^\w.,{$-])(\d+(?:[.,]\d+)?[ \x{a0}-]?(?:kg|g|t|tonnes?|mm|cm|m|km|ft|in|inch(?:es)?|metres?|centimetres?|` +
	`l|ml|litres?|v|volts?|a|amps?|ah|w|kw|watts?|kwh|bar|mbar|psi|kpa|°c|°f|degrees?|%|per cent|hz|h|min|s|minutes?|seconds?|hours?|days?|weeks?|months?|years?|km/h|mph))(?:[^\w]|$)`)

// voltageName is the name of a system of the van, not a figure to go by:
// "12-volt panel".
var voltageName = regexp.MustCompile(`(?i)\b(?:12|24|120|230)[ -](?:v|volts?)\b`)

// Figure finds the first number with a unit in a text, "" for none. One value
// has one source: words take their numbers from facts, constants and tables.
func Figure(text string) string {
	if m := figure.FindStringSubmatch(voltageName.ReplaceAllString(text, "x")); m != nil {
		return m[1]
	}
	return ""
}
