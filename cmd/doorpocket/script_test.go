package main

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the expected output in testdata/script")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"doorpocket": main})
}

// The whole command, as a person uses it: each script is a session.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/script",
		UpdateScripts: *update,
		Setup: func(env *testscript.Env) error {
			env.Setenv("NO_COLOR", "1")
			notes, err := os.ReadFile("../../HOSTING.md") // whose examples scripts try
			return errors.Join(err, os.MkdirAll(env.WorkDir, 0o755), os.WriteFile(filepath.Join(env.WorkDir, "hosting.md"), notes, 0o644))
		},
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}
