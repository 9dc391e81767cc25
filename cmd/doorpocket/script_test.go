package main

import (
	"flag"
	"os"
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
			return os.MkdirAll(env.WorkDir, 0o755)
		},
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}
