package head

import (
	"math"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/sequence/tension/tensiontest"
)

func TestBearingGeometryAsPublished(t *testing.T) {
	for _, row := range tensiontest.Published(t, "bearing_geometry.csv") {
		s := tensiontest.Thread(t, row[0])
		across, _, err := HexagonAcross(s)
		if err != nil {
			t.Error(err)
		}
		if face, want := BearingFace(across, false), testkit.Number(t, row[1]); math.Abs(float64(face)-want) > 0.00501 { // printed to 0.01 mm
			t.Errorf("%s: face %.4f mm; published %v", row[0], float64(face), want)
		}
		if hole, _ := Hole(s); float64(hole) != testkit.Number(t, row[2]) {
			t.Errorf("%s: hole %v; published %s", row[0], hole, row[2])
		}
	}
}
