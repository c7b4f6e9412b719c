package survey

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// A reading that is off by the diameters, or by half of them, was taken in
// another way, within four times the scatter (first principles; the limit is a
// design choice).
func TestTakenAs(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		written  Way
		residual float64
		a, b     float64
		want     Way
	}{
		{Centre, 8, 9, 7, Outside}, {Centre, -8, 9, 7, Inside}, {Centre, 0, 9, 7, ""}, {Centre, 16, 9, 7, ""},
		{Outside, -8, 9, 7, Centre}, {Outside, -16, 9, 7, Inside}, {Outside, 8, 9, 7, ""},
		{Inside, 8, 9, 7, Centre}, {Inside, 16, 9, 7, Outside}, {Inside, -8, 9, 7, ""},
		{Centre, 8.39, 9, 7, Outside}, {Centre, 7.61, 9, 7, Outside}, {Centre, 8.41, 9, 7, ""}, {Centre, 7.59, 9, 7, ""},
		{Centre, 0, 0, 0, ""}, {Outside, 0, 0, 0, ""}, {Centre, 4, 8, 0, Outside},
	} {
		r := Report{
			Network:  Network{Diameters: []float64{c.a, c.b}, Readings: []Reading{{0, 1, 50}}, Ways: []Way{c.written}},
			Solution: Solution{Residuals: []float64{c.residual}, ScatterMm: 0.1},
		}
		if got := r.takenAs(0); got != c.want {
			t.Errorf("%s, %+g mm, %g and %g: %q, want %q", c.written, c.residual, c.a, c.b, got, c.want)
		}
	}
	for way, want := range map[Way]float64{Centre: 0, Outside: 8, Inside: -8} {
		same(t, string(way), way.OverCentre(9, 7), want)
	}
}

var ids = []string{"A", "B", "C", "D", "E", "F", "G", "H", "I"}

// Readings that were left out are reported as wrong, long or short. Those that
// were not are rivals, reported together at the end.
func TestSuspectsAndRivals(t *testing.T) {
	t.Parallel()
	r := Report{
		Network:  Network{Diameters: make([]float64, 4), Readings: []Reading{{0, 1, 50}, {1, 2, 60}, {2, 3, 70}, {3, 0, 80}}},
		Solution: Solution{Residuals: []float64{3, -2, 1, 1}, Out: []bool{true, true, false, false}, Suspect: []int{2, 0, 3, 1}},
		IDs:      ids[:4],
	}
	all := r.Suspects()
	if len(all) != 3 || all[0].Values["way"] != "long" || all[1].Values["way"] != "short" || all[0].Values["off"] != unit.Length(3) || all[1].Values["off"] != unit.Length(2) || all[2].Code != RivalReadings {
		t.Fatalf("%v", all)
	}
	if of := all[2].Values["readings"].([]finding.Finding); len(of) != 2 || of[0].Values["from"] != "C" || of[0].Values["to"] != "D" || of[1].Values["from"] != "D" {
		t.Errorf("rivals: %v", of)
	}
	r.Suspect = nil
	if all := r.Suspects(); all != nil {
		t.Errorf("none: %v", all)
	}
}

// Each doubt about a solution, one at a time.
func TestDoubts(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		s    Solution
		ids  int
		want []finding.Code
	}{
		{"nothing", Solution{}, 4, nil},
		{"mirrored", Solution{Mirrored: true}, 4, []finding.Code{MirrorFits}},
		{"a row", Solution{Straight: true}, 3, []finding.Code{OneLine}},
		{"a row of two", Solution{Straight: true}, 2, nil},
		{"unchecked", Solution{Unchecked: []int{0}}, 3, []finding.Code{Unchecked}},
		{"unchecked along a row", Solution{Unchecked: []int{0}, Straight: true}, 3, []finding.Code{OneLine}},
		{"mirrored and unchecked", Solution{Unchecked: []int{0}, Mirrored: true}, 3, []finding.Code{MirrorFits, Unchecked}},
	} {
		r := Report{Network: Network{Readings: []Reading{{0, 1, 5}}}, Solution: c.s, IDs: ids[:c.ids]}
		got := r.Doubts()
		for i, f := range got {
			if i >= len(c.want) || f.Code != c.want[i] {
				t.Errorf("%s: %v", c.name, got)
				break
			}
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// Agreement of the readings: printed to a hundredth, or to a thousandth if the
// stated accuracy is finer than that. A scatter is reported as more than stated
// from 5 % on.
func TestAgreementLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		stated, rounded, scatter float64
		fine, expected           bool
		as                       any
		because                  bool
	}{
		{0.01, 0, 0.0149, false, false, nil, false}, {0.0099, 0, 0.0149, true, true, "stated", false}, {0.0099, 0, 0.0102, true, false, nil, false},
		{0.009, 0, 0.00949, true, false, nil, false}, // both print as 0.009
		{1, 0, 1.04, false, false, nil, false}, {1, 0, 1.06, false, true, "stated", false}, {0, 0, 0.07, false, true, "usual", false},
		{1, 3, 1.38, false, true, "stated", true}, {1, 3, 1.40, false, true, "stated", false}, // 1.3229 · 1.05 = 1.389
	} {
		r := Report{Network: Network{AccuracyMm: c.stated, RoundedToMm: c.rounded}, Solution: Solution{ScatterMm: c.scatter, RMSMm: 0.3}}
		v := r.Agreement().Values
		if (v["fine"] != nil) != c.fine || (v["expected"] != nil) != c.expected || v["stated"] != c.as || (v["rounded"] != nil) != c.because || v["rms"] != unit.Length(0.3) {
			t.Errorf("%+v: %v", c, v)
		}
	}
}

// The named holes are weak evidence if they are within a fifth of the distance
// of the others on the other side, and more than half of the others are there.
func TestSideLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name         string
		heights      []float64 // of the holes after the two level ones
		above, below []int
		straight     bool
		loose        []Loose
		against      int
		of           int
		far          string
	}{
		{"near, three of four against", []float64{9, -50, -30, -20}, []int{2}, nil, false, nil, 3, 4, "D"},
		{"at a fifth", []float64{10, -50, -30, -20}, []int{2}, nil, false, nil, 0, 0, ""},
		{"half against", []float64{9, 20, -50, -30}, []int{2}, nil, false, nil, 0, 0, ""},
		{"the furthest comes later", []float64{9, -20, -50, -30}, []int{2}, nil, false, nil, 3, 4, "E"},
		{"named below", []float64{-9, 50, 30}, nil, []int{2}, false, nil, 2, 3, "D"},
		{"named on both sides", []float64{9, -50, -30, -20}, []int{2}, []int{5}, false, nil, 0, 0, ""},
		{"two named, one far off", []float64{9, -50, -30, -20, 40}, []int{2, 6}, nil, false, nil, 0, 0, ""},
		{"none named", []float64{9, -50, -30, -20}, nil, nil, false, nil, 0, 0, ""},
		{"a row", []float64{9, -50, -30, -20}, []int{2}, nil, true, nil, 0, 0, ""},
		{"a free hole counts for none", []float64{9, -50, -30, 20}, []int{2}, nil, false, []Loose{{Hole: 5, Why: Free}}, 2, 3, "D"},
		{"a weak hole counts", []float64{9, -50, -30, 20}, []int{2}, nil, false, []Loose{{Hole: 5, Why: Weak}}, 0, 0, ""},
	} {
		points := at(0, 0, 100, 0)
		for i, h := range c.heights {
			points = append(points, geometry.Point{X: float64(10 * i), Y: h})
		}
		r := Report{
			Network:  Network{Level: [2]int{0, 1}, Above: c.above, Below: c.below},
			Solution: Solution{Points: points, Straight: c.straight, Loose: c.loose}, IDs: ids[:len(points)],
		}
		got := r.Side()
		if (len(got) == 1) != (c.far != "") {
			t.Errorf("%s: %v", c.name, got)
		} else if len(got) == 1 {
			if v := got[0].Values; v["against"] != c.against || v["holes"] != c.of || v["far"] != c.far {
				t.Errorf("%s: %v", c.name, v)
			}
		}
	}
}

// A way round the part: more than half a turn, by more than half of the holes,
// in steps of less than half a turn (first principles on a circle).
func TestWayRoundLimits(t *testing.T) {
	t.Parallel()
	// The full circle is in the list, so that its middle is known. The
	// directions are those of the holes in order.
	for _, c := range []struct {
		name       string
		directions []float64
		straight   bool
		want       any
	}{
		{"round", []float64{0, 90, 180, 270}, false, "anticlockwise"},
		{"the other way round", []float64{0, 270, 180, 90}, false, "clockwise"},
		{"over the start", []float64{200, 290, 20, 110}, false, "anticlockwise"},
		{"three", []float64{0, 120, 240}, false, "anticlockwise"},
		{"two", []float64{0, 180}, false, nil},
		{"half a turn at once", []float64{0, 100, 279.5, 20}, false, nil},
		{"nearly half a turn", []float64{0, 100, 278.5, 20}, false, "anticlockwise"},
		{"half a turn in all", []float64{0, 90, 179, 90, 270}, false, nil},
		{"half a turn over the start", []float64{300, 30, 119, 299}, false, nil},
		{"more than half a turn", []float64{0, 100, 190, 290, 200}, false, "anticlockwise"},
		{"half of the holes", []float64{0, 90, 200, 90, 270, 30}, false, nil},
		{"more than half of the holes", []float64{0, 90, 200, 300, 270, 30}, false, "anticlockwise"},
		{"round and on, by half of the holes", []float64{0, 120, 240, 0, 120, 240, 0, 120}, false, nil},
		{"a row", []float64{0, 90, 180, 270}, true, nil},
	} {
		var points []geometry.Point
		for _, d := range c.directions {
			points = append(points, geometry.Polar(geometry.Point{X: 5, Y: 3}, 50, d))
		}
		r := Report{Solution: Solution{Points: points, Straight: c.straight}, IDs: ids[:len(points)]}
		var got any
		for _, f := range r.WayRound() {
			got = f.Values["way"]
			if f.Values["first"] != "A" {
				t.Errorf("%s: from %v", c.name, f.Values["first"])
			}
		}
		if got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		// A free hole among them does not count.
		r.Points = append(r.Points, geometry.Point{X: 900, Y: 900})
		r.Loose = []Loose{{Hole: len(points), Why: Free}}
		r.IDs = ids[:len(points)+1]
		if len(r.WayRound()) > 0 != (c.want != nil) {
			t.Errorf("%s, and a free hole: %v", c.name, r.WayRound())
		}
	}
}
