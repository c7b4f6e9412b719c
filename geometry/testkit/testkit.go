// Package testkit has what the tests of every room share: how many samples to
// try, golden files, published tables, programs that a test needs. Only tests
// import it.
package testkit

import (
	"os"
	"os/exec"
)

// TB is a test, or a try of a property.
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

// Full reports whether samples are wanted in full: DRAWDOWN_SAMPLES=full. A plain
// run of the tests tries a part of them.
func Full() bool { return os.Getenv("DRAWDOWN_SAMPLES") == "full" }

// Samples returns the count of samples to try: few in a plain run, full where all
// are wanted.
func Samples(few, full int) int {
	if Full() {
		return full
	}
	return few
}

// Program finds a program by the first of its names that is installed. The test
// is skipped where there is none.
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

// Python finds a Python that has a module. The test is skipped where there is
// none.
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
