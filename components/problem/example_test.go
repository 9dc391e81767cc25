package problem_test

import (
	"os"

	"doorpocket/components/problem"
)

func ExampleWrite() {
	var found problem.List
	span := problem.Span{File: "vans/rowan.toml", Start: problem.Pos{Line: 2, Column: 1}, Length: 4}
	first := problem.Span{File: "vans/rowan.toml", Start: problem.Pos{Line: 1, Column: 1}, Length: 4}
	found.Add(problem.New(problem.Error, span, "duplicate-key", `Duplicate key "name"`, "Remove one of the two.").
		WithLine(`name = "Rowan"`).WithNote(first, "first written here"))
	problem.Write(os.Stdout, found, problem.Style{})
	// Output:
	// vans/rowan.toml:2:1: error: Duplicate key "name"
	//    2 | name = "Rowan"
	//      | ^^^^
	//   Remove one of the two.
	//   first written here: vans/rowan.toml:1:1
}
