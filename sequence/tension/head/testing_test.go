package head

import (
	"drawdown/geometry/thread"
	"drawdown/sequence/tension/strength"

	"pgregory.net/rapid"
)

func mustClass(t rapid.TB, text string, s thread.Thread) strength.Class {
	t.Helper()
	c, err := strength.ParseClass(text, s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}
