package manifest_test

import (
	"fmt"
	"os"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

func Example() {
	text := `name = "Rowan"
spec_date = 2026-10-02

[body]
length = 6.36
stering = "right"
`
	table, found := manifest.Parse("vans/rowan.toml", []byte(text))
	if table != nil {
		r := manifest.NewReader(table, &found)
		name, _ := r.Text("name", manifest.Required)
		date, _ := r.Date("spec_date")
		fmt.Println(name, date)
		body := r.Table("body")
		body.Text("length", manifest.Example(`"6.36 m"`))
		body.Choice("steering", []string{"left", "right"})
		r.Done()
	}
	found.Sort()
	problem.Write(os.Stdout, found, problem.Style{})
	// Output:
	// Rowan 2026-10-02
	// vans/rowan.toml:5:10: error: Wrong type for "length"
	//    5 | length = 6.36
	//      |          ^^^^
	//   Written here: a number, 6.36. Expected: a text in quotes. For example: length
	//   = "6.36 m"
	//
	// vans/rowan.toml:6:1: error: Unknown key "stering"
	//    6 | stering = "right"
	//      | ^^^^^^^
	//   This name is not known here. Did you mean "steering"?
}
