package report

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"testing"

	"doorpocket/components/problem"
)

var update = flag.Bool("update", false, "rewrite testdata")

// sample has all that a problem can have, and one without a place in its file.
func sample() problem.List {
	first := problem.Span{File: "vans/rowan a.toml", Start: problem.Pos{Line: 3, Column: 5}, Length: 4}
	second := problem.Span{File: "vans/hazel.toml", Start: problem.Pos{Line: 1, Column: 1}, Length: 4}
	return problem.List{
		problem.New(problem.Error, first, "duplicate-code", `A second van with the code "RW"`, "Give one of them another.").
			WithLine(`    code = "RW" # <é>`).WithNote(second, "first written here"),
		problem.New(problem.Error, problem.Span{File: "vans"}, "no-vans", "No vans", ""),
		problem.New(problem.Warning, second, "duplicate-code", "Another of the same kind", "Look at it."),
	}
}

func TestWrite(t *testing.T) {
	for _, form := range Forms {
		t.Run(form, func(t *testing.T) {
			var got bytes.Buffer
			if err := Write(&got, form, "1.2.3", sample()); err != nil {
				t.Fatal(err)
			}
			if !json.Valid(got.Bytes()) {
				t.Fatalf("not JSON:\n%s", &got)
			}
			file := "testdata/problems." + form
			if *update {
				if err := os.WriteFile(file, got.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got.Bytes(), want) {
				t.Errorf("%s differs (-update rewrites it):\n%s", file, &got)
			}
		})
	}
}

func TestWriteNone(t *testing.T) {
	var got bytes.Buffer
	if err := Write(&got, "json", "1", nil); err != nil {
		t.Fatal(err)
	}
	if want := "{\n  \"errors\": 0,\n  \"warnings\": 0,\n  \"problems\": []\n}\n"; got.String() != want {
		t.Errorf("got %s, want %s", &got, want)
	}
	if err := Write(&got, "xml", "1", nil); err == nil {
		t.Error("an unknown form was written")
	}
}
