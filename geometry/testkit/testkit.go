// Package testkit has what the tests of all packages share: how many samples to
// try, golden files, published tables, programs that a test needs. Only tests
// import it.
package testkit

import (
	"os"
	"os/exec"
)

// TB is a test, or a run of a property test.
type TB interface {
	Helper()
	Errorf(format string, args ...any)
	Fatal(args ...any)
	Fatalf(format string, args ...any)
}

// Skipper is a test that can be skipped.
type Skipper interface {
	Helper()
	Skipf(format string, args ...any)
}

// Full reports whether all samples are requested: DRAWDOWN_SAMPLES=full. A
// plain run of the tests tries some of them.
func Full() bool { return os.Getenv("DRAWDOWN_SAMPLES") == "full" }

// Samples returns the number of samples to try: few in a plain run, full if all
// are requested.
func Samples(few, full int) int {
	if Full() {
		return full
	}
	return few
}

// Program finds the first installed program among some names. It skips the test
// if there is none.
func Program(t Skipper, names ...string) (path string) {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	t.Skipf("not installed: %s", names[0])
	return ""
}

// Python finds a Python with a module. It skips the test if there is none.
func Python(t Skipper, module string) (path string) {
	t.Helper()
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import "+module).Run() == nil {
			return name
		}
	}
	t.Skipf("not installed: %s, a module of Python", module)
	return ""
}
