package trace_test

import (
	"testing"

	"drawdown/geometry/trace"
)

// A whole A4 at 300 dpi.
func BenchmarkFind(b *testing.B) {
	picture := grainy(blurred(coverGasket().paint(a4At300, scanner(a4At300, 300, 2.3)), 1), 5, 1)
	for b.Loop() {
		if _, err := trace.Find(picture, trace.PerInch(300, 300), trace.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
