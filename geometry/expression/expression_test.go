package expression_test

import (
	"runtime"
	"testing"

	"drawdown/geometry/expression"
)

// An expression matches the same before and after its memory was taken back.
func TestUsedAgain(t *testing.T) {
	t.Parallel()
	bolt := expression.Lazily(`\bM(\d+)\b`)
	for range 3 {
		if m := bolt.FindStringSubmatch("ten M12 bolts"); len(m) != 2 || m[1] != "12" || bolt.MatchString("a cap") {
			t.Errorf("%q", m)
		}
		runtime.GC()
	}
}

// A mistake in a source is one of the program.
func TestMistakePanics(t *testing.T) {
	t.Parallel()
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	expression.Lazily(`(`).MatchString("")
}
