package screw

import (
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

// VDI 2230, table A5: oiled austenitic steel reaches class D, 0.35.
func TestAustenitic(t *testing.T) {
	m8 := tensiontest.Thread(t, "M8")
	for lubricant, want := range map[string]Range{
		"engine oil": {0.08, 0.215, 0.35},
		"moly paste": {0.08, 0.12, 0.16},
	} {
		got, err := Target(Bolt{Thread: m8, Class: "A4-70", Lubricant: lubricant, HeadAcross: unit.Length(13)})
		if err != nil {
			t.Error(err)
		}
		tensiontest.Near(t, lubricant+" low", got.Friction.Thread.Low, want.Low, 1e-9)
		tensiontest.Near(t, lubricant+" nominal", got.Friction.Thread.Nominal, want.Nominal, 1e-9)
		tensiontest.Near(t, lubricant+" high", got.Friction.Head.High, want.High, 1e-9)
	}
}
