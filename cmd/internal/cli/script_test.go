package cli_test

import (
	"encoding/json"
	"errors"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/testscript"

	"drawdown/cmd/internal/cli"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"drawdown": cli.Main})
}

// TestScripts runs every script in testdata/script. It is not parallel with
// other tests, because its commands change the working directory of the
// process.
func TestScripts(t *testing.T) {
	scripts, err := filepath.Abs("testdata/script")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: scripts,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status": checkStatus, "partly": checkPartly, "json": checkJSON, "near": checkNear, "holds": checkHolds, "waitfor": waitFor,
		},
		Setup: func(env *testscript.Env) error {
			if strings.HasSuffix(env.WorkDir, "script-records") {
				return recordedWork(filepath.Join(env.WorkDir, "shop"))
			}
			if strings.HasSuffix(env.WorkDir, "script-trace") {
				return tracePictures(env)
			}
			return nil
		},
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}

// checkStatus is the script command
//
//	status N program arguments…
//
// The program must end with that exit status. Unless it is 0, standard error
// must say why and standard output must be empty, except with JSON: check
// --json prints what is wrong as data.
func checkStatus(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N program arguments…")
	}
	want, stdout, stderr := runTo(ts, args)
	if want == 0 || slices.Contains(args, "--json") {
		return
	}
	if stdout != "" {
		ts.Fatalf("a failure prints on standard output: %s", stdout)
	}
	if stderr == "" {
		ts.Fatalf("a failure says nothing on standard error")
	}
}

// waitFor is the script command
//
//	waitfor FILE
//
// It waits until a program in the background has written the file.
func waitFor(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: waitfor FILE")
	}
	for range 3000 {
		if _, err := os.Stat(ts.MkAbs(args[0])); err == nil {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	ts.Fatalf("nobody writes %s", args[0])
}

// checkPartly is the script command
//
//	partly N program arguments…
//
// The program does part of its work, prints it, and ends with status N because
// of what failed, which it reports on standard error.
func checkPartly(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: partly N program arguments…")
	}
	if _, _, stderr := runTo(ts, args); stderr == "" {
		ts.Fatalf("a failure says nothing on standard error")
	}
}

// runTo runs a program and checks that it ends with the status given first,
// which it returns with the output.
func runTo(ts *testscript.TestScript, args []string) (want int, stdout, stderr string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	do := runHere
	if ownProcess(ts, args[1:]) {
		do = runApart
	}
	got, stdout, stderr := do(ts, args[1:])
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
	return want, stdout, stderr
}

// ownProcess reports whether a call needs a separate process, as for a user:
// other programs, calls that read standard input or the environment, and the
// script about the command itself. For the rest, starting a process costs more
// than the work.
func ownProcess(ts *testscript.TestScript, args []string) bool {
	return ts.Name() == "command" || args[0] != "drawdown" || slices.Contains(args, "-") ||
		len(args) > 1 && (args[1] == "bench" || args[1] == "records")
}

func runApart(ts *testscript.TestScript, args []string) (status int, stdout, stderr string) {
	if err := ts.Exec(args[0], args[1:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		status = exit.ExitCode()
	}
	return status, ts.ReadFile("stdout"), ts.ReadFile("stderr")
}

// inFolder keeps the process in one folder.
var inFolder sync.Mutex

func runHere(ts *testscript.TestScript, args []string) (status int, stdout, stderr string) {
	inFolder.Lock()
	defer inFolder.Unlock()
	home, err := os.Getwd()
	ts.Check(err)
	ts.Check(os.Chdir(ts.MkAbs(".")))
	defer func() { ts.Check(os.Chdir(home)) }()
	var out, problems strings.Builder
	p := cli.Program{Stdin: strings.NewReader(""), Stdout: &out, Stderr: &problems}
	status = int(p.Run(args[1:]))
	io.WriteString(ts.Stdout(), out.String())
	io.WriteString(ts.Stderr(), problems.String())
	return status, out.String(), problems.String()
}

// checkJSON is the script command
//
//	[!] json path [value]
//
// It decodes the last standard output and compares the value at the path, such
// as steps.0.id, with a JSON value. Additional keys are ignored; lists must
// match completely. With ! there must be nothing at the path.
func checkJSON(ts *testscript.TestScript, neg bool, args []string) {
	var document any
	ts.Check(json.Unmarshal([]byte(ts.ReadFile("stdout")), &document))
	got, found := lookUp(document, args[0])
	if neg {
		if found {
			ts.Fatalf("there is a %s: %v", args[0], got)
		}
		return
	}
	if !found || len(args) != 2 {
		ts.Fatalf("usage: json path value; %s found: %v", args[0], found)
	}
	var want any
	ts.Check(json.Unmarshal([]byte(args[1]), &want))
	if diff := cmp.Diff(want, onlyNamed(got, want)); diff != "" {
		ts.Fatalf("%s (- wanted, + printed):\n%s", args[0], diff)
	}
}

// checkNear is the script command
//
//	near path value percent
//
// The value at the path of the last JSON must be a number within that many
// percent of value.
func checkNear(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: near path value percent")
	}
	var document any
	ts.Check(json.Unmarshal([]byte(ts.ReadFile("stdout")), &document))
	found, _ := lookUp(document, args[0])
	got, ok := found.(float64)
	want, err := strconv.ParseFloat(args[1], 64)
	ts.Check(err)
	percent, err := strconv.ParseFloat(args[2], 64)
	ts.Check(err)
	if !ok || !(math.Abs(got-want) <= percent/100*math.Abs(want)) {
		ts.Fatalf("%s is %v, want %v within %v %%", args[0], found, want, percent)
	}
}

func lookUp(value any, path string) (any, bool) {
	for _, key := range strings.Split(path, ".") {
		switch v := value.(type) {
		case map[string]any:
			inner, ok := v[key]
			if !ok {
				return nil, false
			}
			value = inner
		case []any:
			i, err := strconv.Atoi(key)
			if err != nil || i < 0 || i >= len(v) {
				return nil, false
			}
			value = v[i]
		default:
			return nil, false
		}
	}
	return value, true
}

// onlyNamed removes the keys that the wanted value does not have.
func onlyNamed(got, want any) any {
	switch w := want.(type) {
	case map[string]any:
		g, ok := got.(map[string]any)
		if !ok {
			return got
		}
		named := map[string]any{}
		for key, inner := range w {
			if value, ok := g[key]; ok {
				named[key] = onlyNamed(value, inner)
			}
		}
		return named
	case []any:
		g, ok := got.([]any)
		if !ok || len(g) != len(w) {
			return got
		}
		named := make([]any, len(g))
		for i := range g {
			named[i] = onlyNamed(g[i], w[i])
		}
		return named
	}
	return got
}

// checkHolds is the script command
//
//	holds folder names…
//
// The folder must contain exactly these names, including hidden ones.
func checkHolds(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: holds folder names…")
	}
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	got := []string{}
	for _, e := range entries {
		got = append(got, filepath.Base(e.Name()))
	}
	want := slices.Sorted(slices.Values(args[1:]))
	if diff := cmp.Diff(append([]string{}, want...), got); diff != "" {
		ts.Fatalf("%s (- wanted, + there):\n%s", args[0], diff)
	}
}
