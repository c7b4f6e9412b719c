package head

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
)

// Pinned from our own output: the assumed heads, faces and holes, so that no
// row of a table changes unnoticed. Published rows are also checked separately.
func TestTheAssumedHeadsAndHolesAreUnchanged(t *testing.T) {
	want, err := os.ReadFile("testdata/heads_and_holes.txt")
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, d := range slices.Sorted(maps.Keys(mediumHoles)) {
		fmt.Fprintf(&b, "M%g: hole %v", d, mediumHoles[d])
		if across, ok := metricAcross[d]; ok {
			fmt.Fprintf(&b, ", head %v, face %v", across, BearingFace(across, false))
		}
		b.WriteString("\n")
	}
	for _, d := range slices.Sorted(maps.Keys(inchAcross)) {
		fmt.Fprintf(&b, "%g/16 in: head %g/16 in\n", d, inchAcross[d])
	}
	if b.String() != string(want) {
		t.Errorf("testdata/heads_and_holes.txt differs; the tables give\n%s", b.String())
	}
}
