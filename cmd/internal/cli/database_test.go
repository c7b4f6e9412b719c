package cli_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"drawdown/cmd/internal/record/servertest"
)

// TestDatabaseScripts runs the scripts that need a database.
func TestDatabaseScripts(t *testing.T) {
	server := servertest.Start(t)
	testscript.Run(t, testscript.Params{
		Dir:  "testdata/database",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"status": checkStatus, "waitfor": waitFor},
		Setup: func(env *testscript.Env) error {
			address := server.Database(t)
			env.Setenv("STORE", address)
			env.Setenv("PLAIN", strings.Replace(address, ":"+servertest.Password, "", 1))
			env.Setenv("PASSWORD", servertest.Password)
			return recordedWork(filepath.Join(env.WorkDir, "shop"))
		},
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}
