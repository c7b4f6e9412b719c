package exercise_test

import (
	"bytes"
	"fmt"
	"testing"

	"drawdown/geometry/testkit"
)

// Pinned from our own output: the parts of a seed must not change, because
// printed sheets are marked against them.
func TestPartsOfASeedStay(t *testing.T) {
	t.Parallel()
	var all bytes.Buffer
	for k, e := range parts(t, 7, 24) {
		in := e.Input("sheet", names)
		fmt.Fprintf(&all, "%d %s: front %s\n", k+1, e.Family, in.Joint.Front)
		for _, kind := range in.Kinds {
			fmt.Fprintf(&all, "  %s %s\n", kind.Name, kind.Thread.Name)
		}
		for _, f := range in.Joint.Fasteners {
			fmt.Fprintf(&all, "  %s %s %.3f %.3f\n", f.ID, f.Kind, f.At.X, f.At.Y)
		}
		for _, b := range in.Joint.Bores {
			fmt.Fprintf(&all, "  bore %.3f %.3f %.3f\n", b.Centre.X, b.Centre.Y, b.Diameter)
		}
		for _, c := range in.Joint.Clusters {
			fmt.Fprintf(&all, "  cluster %s %v\n", c.Name, c.Of)
		}
		for _, p := range in.Joint.Outline {
			fmt.Fprintf(&all, "  outline %.3f\n", p)
		}
	}
	testkit.Golden(t, "testdata/parts.txt", all.Bytes())
}
