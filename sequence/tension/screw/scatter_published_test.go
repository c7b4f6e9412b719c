package screw

import (
	"math"
	"testing"

	"drawdown/sequence/tension/tensiontest"
)

func TestScatterAsPublished(t *testing.T) {
	const mu = 0.12
	for _, row := range tensiontest.Published(t, "tightening_scatter.csv") {
		if row[0] == "EN" {
			got, err := FlangeScatter(1000, row[1], mu)
			if err != nil {
				t.Error(err)
			}
			tensiontest.Near(t, row[1], got.Scatter, tensiontest.Number(t, row[2])+tensiontest.Number(t, row[3])*mu, 1e-12)
			continue
		}
		alpha, err := TighteningFactor(row[1])
		if err != nil {
			t.Error(err)
		}
		tensiontest.Near(t, row[1]+" low", alpha.Low, tensiontest.Number(t, row[2]), 1e-12)
		tensiontest.Near(t, row[1]+" high", alpha.High, tensiontest.Number(t, row[3]), 1e-12)
		for share, want := range map[float64]float64{ScatterOfFactor(alpha.Low): tensiontest.Number(t, row[4]), ScatterOfFactor(alpha.High): tensiontest.Number(t, row[5])} {
			if math.Round(share*100) != want {
				t.Errorf("%s: %.1f %%; printed %v", row[1], share*100, want)
			}
		}
	}
}

// Printed to 3 figures: 41.9 kN at αA 1.8.
func TestLeastPreloadOfVDI(t *testing.T) {
	tensiontest.Near(t, "least", float64(LeastPreload(41900, 1.8))/1000, tensiontest.Worked(t, "VDI", "least preload"), 0.05/23.3)
}

// First principles: high over low is the factor, and the scatter is even.
func TestSpreadKeepsItsFactor(t *testing.T) {
	for _, way := range Methods() {
		s, err := ScatterOf(20000, way)
		if err != nil {
			t.Fatal(err)
		}
		alpha, _ := TighteningFactor(way)
		tensiontest.Near(t, way, float64(s.High/s.Low), alpha.High, 1e-12)
		tensiontest.Near(t, way, float64(s.High+s.Low)/2, 20000, 1e-12)
		tensiontest.Near(t, way, s.Factor, alpha.High, 1e-12)
	}
	for _, way := range FlangeMethods() {
		s, err := FlangeScatter(20000, way, 0.2)
		if err != nil || !(0 < s.Low && s.Low < s.Nominal && s.Nominal < s.High) {
			t.Errorf("%s: %+v, %v", way, s, err)
		}
	}
}
