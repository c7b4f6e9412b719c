package unit

import "testing"

// NIST SP 811, Appendix B.8, to the figures printed.
func TestAskedUnits(t *testing.T) {
	tests := []struct {
		name   string
		inside float64
		want   string
	}{
		{"lbf.in", 10, "88.51 lbf·in"},
		{"ft-lb", 50, "36.88 lbf·ft"},
		{"kgf·m", 49.03325, "5.000 kgf·m"},
		{"lbf", 1000, "224.8 lbf"},
		{"kip", 4448.2216152605, "1.000 kip"},
		{"psi", 1, "145.0 psi"},
		{"ksi", 940, "136.3 ksi"},
		{"MPa", 0.0012345, "0.001234 MPa"},
		{"in", 25.4, "1.000 in"},
		{"kN", 43412.5, "43.41 kN"},
		{"N", 43412.5, "43412 N"},
	}
	for _, tt := range tests {
		asked, err := ParseAsked(tt.name)
		if err != nil {
			t.Fatal(err)
		}
		if got := asked.Print(tt.inside); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
	for _, name := range []string{"", "furlong", "kg"} {
		if _, err := ParseAsked(name); err == nil {
			t.Errorf("%q is taken for a unit", name)
		}
	}
}
