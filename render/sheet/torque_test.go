package sheet_test

import (
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

func TestTorqueSpan(t *testing.T) {
	nm := func(v float64) unit.GivenTorque { return unit.GivenTorque{Value: v, Unit: unit.NewtonMetre} }
	feet := unit.GivenTorque{Value: 30, Unit: unit.PoundForceFoot}
	for _, c := range []struct {
		language  string
		low, high unit.GivenTorque
		want      string
	}{
		{"en", nm(20), nm(20), "20 N·m"},
		{"en", nm(8.5), nm(24), "8.5–24 N·m"},
		{"de", nm(8.5), nm(24), "8,5–24\u00a0N·m"},
		{"fr", nm(8.5), feet, "8,5\u00a0N·m à 30\u00a0lbf·ft"},
	} {
		w, err := words.Find(c.language)
		if err != nil {
			t.Fatal(err)
		}
		if got := sheet.TorqueSpan(w, c.low, c.high); got != c.want {
			t.Errorf("%s: %q, want %q", c.language, got, c.want)
		}
	}
}
