package screw

import (
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/sequence/tension/tensiontest"
)

func TestScatterAsPublished(t *testing.T) {
	for _, row := range tensiontest.Published(t, "tightening_scatter.csv") {
		if row[0] == "EN" {
			continue // of flanges, for which there is no factor
		}
		alpha, err := TighteningFactor(row[1])
		if err != nil {
			t.Error(err)
		}
		tensiontest.Near(t, row[1]+" low", alpha.Low, testkit.Number(t, row[2]), 1e-12)
		tensiontest.Near(t, row[1]+" high", alpha.High, testkit.Number(t, row[3]), 1e-12)
	}
}

// Printed to 3 figures: 41.9 kN at αA 1.8.
func TestLeastPreloadOfVDI(t *testing.T) {
	tensiontest.Near(t, "least", float64(LeastPreload(41900, 1.8))/1000, tensiontest.Worked(t, "VDI", "least preload"), 0.05/23.3)
}
