package components

// Plots lists the figures that draw a table, by their names on a page. The first
// column of such a table is the scale below the lines, every other is a line.
func Plots() map[string]string {
	return map[string]string{"gas-days": "gas/days"}
}
