// Package gnuunits asks the program GNU units, for tests that hold a sum against
// somebody else's arithmetic.
package gnuunits

import (
	"bytes"
	"fmt"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// Question is an amount, which may be a whole sum, and the unit it is wanted
// in: "100 liter / (2 * 15 liter/day)" in "day".
type Question struct{ Have, Want string }

// Ask puts all questions to one process and gives its answers. It fails the test
// where the program is missing.
func Ask(t testing.TB, all []Question) []string {
	t.Helper()
	program, err := exec.LookPath("units")
	if err != nil {
		t.Fatal("GNU units is needed for this test, make tools installs it: ", err)
	}
	var questions bytes.Buffer
	for _, q := range all {
		fmt.Fprintf(&questions, "%s\n%s\n", q.Have, q.Want)
	}
	command := exec.Command(program, "--terse", "--quiet", "--output-format", "%.17g")
	command.Stdin = &questions
	out, err := command.CombinedOutput()
	if err != nil {
		t.Fatalf("units: %v\n%s", err, out)
	}
	answers := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(answers) != len(all) {
		t.Fatalf("%d answers to %d questions:\n%s", len(answers), len(all), out)
	}
	return answers
}

// Number puts one question and gives its answer.
func Number(t testing.TB, have, want string) float64 {
	t.Helper()
	answer := Ask(t, []Question{{have, want}})[0]
	v, err := strconv.ParseFloat(answer, 64)
	if err != nil {
		t.Fatalf("%s in %s: units says %q", have, want, answer)
	}
	return v
}
