package problem_test

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"doorpocket/components/problem"
)

// Problems that were written down are the same when they are read again, and what
// they do not say takes no room.
func TestProblemsAsJSON(t *testing.T) {
	whole := problem.Problem{
		Severity: problem.Warning, Code: "odd-fact", Span: problem.Span{File: "vans/rowan.toml", Start: problem.Pos{Line: 12, Column: 3}, Length: 4},
		Summary: "Odd", Detail: "Mend it.", SourceLine: "net = 1",
		Notes: []problem.Note{{Span: problem.Span{File: "fleet.toml", Start: problem.Pos{Line: 1}}, Text: "first written here"}},
	}
	for _, want := range []problem.Problem{{Severity: problem.Error, Code: "odd"}, {Severity: problem.Error, Span: problem.Span{File: "a"}}, whole} {
		data, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		var got problem.Problem
		if err := json.Unmarshal(data, &got); err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%+v became %+v: %v", want, got, err)
		}
	}
	data, err := json.Marshal(problem.Problem{Severity: problem.Error, Code: "odd"})
	if err != nil || strings.Contains(string(data), "Start") || strings.Contains(string(data), "Notes") {
		t.Errorf("%s, %v", data, err)
	}
}

func TestPositionThatIsNone(t *testing.T) {
	for _, text := range []string{"", ":", "1", "1:", "a:1", "1:b", "1:2:3", "99999999999999999999:1"} {
		var p problem.Pos
		if err := p.UnmarshalText([]byte(text)); err == nil {
			t.Errorf("%q was read as %v", text, p)
		}
	}
}
