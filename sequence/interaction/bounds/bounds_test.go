package bounds

import (
	"math"
	"testing"
)

// First principles: the bounds of three figures with the middle one kept;
// statistics of a list with the divisor n; two significant digits.
func TestBand(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		soft, nominal, stiff float64
		want                 Band
	}{{1, 2, 3, Band{1, 2, 3}}, {3, 2, 1, Band{1, 2, 3}}, {2, 1, 3, Band{1, 1, 3}}, {2, 5, 3, Band{2, 5, 5}}, {-1, -2, -3, Band{-3, -2, -1}}} {
		if got := Of(c.soft, c.nominal, c.stiff); got != c.want {
			t.Errorf("%g, %g, %g: %v", c.soft, c.nominal, c.stiff, got)
		}
	}
	if low, nominal, high := (Band{1, 2, 3}).Ends(); low != 1 || nominal != 2 || high != 3 {
		t.Errorf("%g, %g, %g", low, nominal, high)
	}
}

func TestRough(t *testing.T) {
	t.Parallel()
	for v, want := range map[float64]float64{0: 0, 1234: 1200, 1250.1: 1300, 99.6: 100, 0.01234: 0.012, -876: -880, 7: 7, 10: 10, 1: 1} {
		if got := Rough(v); math.Abs(got-want) > 1e-12*math.Abs(want) {
			t.Errorf("%g: %g, want %g", v, got, want)
		}
	}
	if got := (Band{111, 222, 333}).Rough(); got != (Band{110, 220, 330}) {
		t.Errorf("%v", got)
	}
}

func TestSpread(t *testing.T) {
	t.Parallel()
	if got := SpreadOf([]float64{2, 4, 4, 4, 5, 5, 7, 9}); got != (Spread{Min: 2, Mean: 5, Max: 9, SD: 2}) {
		t.Errorf("%+v", got)
	}
	if got := SpreadOf(nil); got != (Spread{}) {
		t.Errorf("of nothing: %+v", got)
	}
	got := SpreadsOf(Spread{1, 2, 3, 4}, Spread{2, 3, 4, 3}, Spread{0, 5, 2, 5})
	if want := (Spreads{Min: Band{0, 2, 2}, Mean: Band{2, 3, 5}, Max: Band{2, 4, 4}, SD: Band{3, 3, 5}}); got != want {
		t.Errorf("%+v", got)
	}
	if got := Percent([]float64{50, 30}, []float64{100, 20}); got[0] != 50 || got[1] != 150 || len(got) != 2 {
		t.Errorf("%v", got)
	}
}
