package plan

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// First principles: a side shows its own and those for both.
func TestCautionsOfASide(t *testing.T) {
	in := cylinderHead(t)
	in.Cautions = []Caution{{"a", CautionLoosen}, {"b", CautionBoth}, {"c", CautionTighten}}
	p := build(t, in)
	for side, want := range map[CautionSide][]string{
		CautionTighten: {"b", "c"}, CautionLoosen: {"a", "b"}, CautionBoth: {"a", "b", "c"},
	} {
		if diff := cmp.Diff(want, p.CautionsFor(side)); diff != "" {
			t.Errorf("%q: %s", side, diff)
		}
	}
}
