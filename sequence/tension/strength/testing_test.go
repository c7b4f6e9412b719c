package strength

import (
	"drawdown/geometry/thread"

	"pgregory.net/rapid"
)

func mustClass(t rapid.TB, text string, s thread.Thread) Class {
	t.Helper()
	c, err := ParseClass(text, s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

const in = 25.4 // mm, NIST SP 811, B.8
