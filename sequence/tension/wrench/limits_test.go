package wrench

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

func codes(list []finding.Finding) (all []finding.Code) {
	for _, f := range list {
		all = append(all, f.Code)
	}
	return all
}

// The limits of an adapter's values are accepted, values beyond are not (common
// practice, no source: 3 m; a fifth of the wrench left as lever).
func TestSpansOfAnAdapter(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		wrench, adapter unit.Length
		angle           unit.Angle
		want            finding.Code
	}{
		{400, 0, 0, ""}, {0, 0, 0, ""}, {0, 0, 999, ""}, {400, 3000, 0, ""}, {400, 3001, 0, AdapterRange}, {400, -1, 0, AdapterRange}, {0, 60, 0, NoLength},
		{3000, 60, 0, ""}, {3001, 60, 0, LengthRange}, {-1, 60, 0, LengthRange},
		{400, 60, 360, ""}, {400, 60, 361, AdapterAngleRange}, {400, 60, -360, ""}, {400, 60, -361, AdapterAngleRange},
		{400, 320, 180, ""}, {400, 321, 180, LeverTooShort}, {400, 319, 180, ""},
	} {
		err := checkAdapter(c.wrench, c.adapter, c.angle)
		f, _ := err.(finding.Finding)
		if f.Code != c.want || (err == nil) != (c.want == "") {
			t.Errorf("%v with %v at %v: %v, want %q", c.wrench, c.adapter, c.angle, err, c.want)
		}
	}
	if got := effectiveLength(400, 60, 90); got != 400 {
		t.Errorf("an adapter across makes %g mm", got)
	}
}

// The same for a wrench's own range and division.
func TestSpansOfAWrench(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		w    Wrench
		want finding.Code
	}{
		{Wrench{Min: 0, Max: 10}, ""}, {Wrench{Min: 9.9, Max: 10}, ""}, {Wrench{Min: 10, Max: 10}, RangeFalls}, {Wrench{Min: -1, Max: 10}, RangeFalls},
		{Wrench{Max: math.Inf(1)}, RangeFalls}, {Wrench{Max: 10, Division: 5}, ""}, {Wrench{Max: 10, Division: 5.1}, DivisionRange}, {Wrench{Max: 10, Division: -1}, DivisionRange},
	} {
		f, _ := c.w.check().(finding.Finding)
		if f.Code != c.want {
			t.Errorf("%+v: %q, want %q", c.w, f.Code, c.want)
		}
	}
}

// A setting is rounded to the nearest division, at least one, and never above
// the end of the scale; without divisions it is rounded as on usual scales.
func TestSettingOnTheScale(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		w             Wrench
		setting, want float64
	}{
		{Wrench{Max: 100, Division: 0.5}, 69.565, 69.5}, {Wrench{Max: 100, Division: 0.5}, 69.76, 70}, {Wrench{Max: 100, Division: 3}, 100, 99},
		{Wrench{Max: 99, Division: 3}, 99, 99}, {Wrench{Max: 10, Division: 3}, 10, 9}, {Wrench{Max: 10, Division: 4}, 10, 8}, {Wrench{Max: 10, Division: 5}, 1, 5},
	} {
		got := c.w.onScale(unit.Torque(c.setting))
		tensiontest.Near(t, "on the scale", got.Value, c.want, 1e-12)
	}
	plain := Wrench{Max: 100}
	if got, want := plain.onScale(69.5652), unit.Torque(69.5652).OnScale(unit.NewtonMetre); got != want {
		t.Errorf("without divisions: %v, want %v", got, want)
	}
	if got := rounded(1e-9, unit.NewtonMetre); got.Value != 1e-9 {
		t.Errorf("a torque too small for a scale: %v", got)
	}
	for v, want := range map[float64]float64{0: 0, -3: 0, 1234.5: 1235, 0.0123456: 0.01235, 99.996: 100, 10: 10} {
		tensiontest.Near(t, "four figures", fourFigures(v), want, 1e-12)
	}
}

// The result without a wrench: its own range, from the setting to five times as
// much (ISO 6789:2003, section 5.1.5.2), its tolerance, its sources.
func TestSettingWithoutAWrench(t *testing.T) {
	t.Parallel()
	r, err := Set(Work{Torque: 80})
	if err != nil {
		t.Fatal(err)
	}
	if r.Least != 80 || r.Most != 400 || r.Scale.Value != 80 || r.Length != 0 || r.LengthFrom != "" || len(r.Sources) != 1 || len(r.Notes) != 0 {
		t.Errorf("%+v", r)
	}
	if small := r.Assumptions[0].Values["small"]; small != false || len(r.Assumptions) != 1 {
		t.Errorf("%v", r.Assumptions)
	}
	if r, err = Set(Work{Torque: 5}); err != nil || r.Assumptions[0].Values["small"] != true {
		t.Errorf("5 N·m: %v, %v", r.Assumptions, err) // ISO 6789, table 3: 6 % up to 10 N·m
	}
	r, err = Set(Work{Torque: 80, Length: 400, Adapter: 60})
	if err != nil || r.Length != 400 || r.LengthFrom != LengthStated || len(r.Sources) != 2 || !slices.Equal(codes(r.Notes), []finding.Code{HoldAtGrip}) {
		t.Errorf("%+v, %v", r, err)
	}
	own := []Wrench{{Name: "own", Min: 20, Max: 100, Length: 300}}
	r, err = Set(Work{Torque: 80, Length: 400, Adapter: 60, Wrenches: own, Again: true})
	if err != nil || r.Length != 300 || r.LengthFrom != LengthOfList || !slices.Equal(codes(r.Notes), []finding.Code{HoldAtGrip, Breakaway}) {
		t.Errorf("%+v, %v", r, err)
	}
	for _, bad := range []unit.Torque{0, -1, unit.Torque(math.Inf(1)), unit.Torque(math.NaN())} {
		if _, err := Set(Work{Torque: bad}); err == nil {
			t.Errorf("%v N·m passes", bad)
		}
	}
}

// A scale that starts below a fifth of its end is used from the fifth on, which
// is reported. There is a warning if the scale of a shop's wrench rounds by
// more than its own tolerance of 4 %.
func TestWhatIsSaidOfAWrench(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		w       Wrench
		torque  unit.Torque
		notes   []finding.Code
		assumes []finding.Code
		least   unit.Torque
	}{
		{Wrench{Min: 20, Max: 100, Division: 1}, 50, nil, []finding.Code{ClickAssumed}, 20},
		{Wrench{Min: 19, Max: 100, Division: 1}, 50, nil, []finding.Code{ClickAssumed, UsableAssumed}, 20},
		{Wrench{Min: 30, Max: 100, Division: 10}, 52, nil, []finding.Code{ClickAssumed}, 30},
		{Wrench{Min: 30, Max: 100, Division: 10}, 52.1, []finding.Code{CoarseScale}, []finding.Code{ClickAssumed}, 30},
		{Wrench{Min: 30, Max: 100, Division: 10}, 48, []finding.Code{CoarseScale}, []finding.Code{ClickAssumed}, 30},
	} {
		r, err := Set(Work{Torque: c.torque, Wrenches: []Wrench{c.w}})
		if err != nil || !slices.Equal(codes(r.Notes), c.notes) || !slices.Equal(codes(r.Assumptions), c.assumes) || r.Least != c.least || r.Most != 100 {
			t.Errorf("%+v at %v: %v, %v, from %v, %v", c.w, c.torque, codes(r.Notes), codes(r.Assumptions), r.Least, err)
		}
	}
}

// If none fits, the error gives the ranges and the scale that would fit.
func TestNoneFits(t *testing.T) {
	t.Parallel()
	small := []Wrench{{Name: "small", Min: 5, Max: 25}}
	for _, c := range []struct {
		work  Work
		least float64
		most  float64
	}{{Work{Torque: 80, Wrenches: small}, 80, 400}, {Work{Torque: 4, Wrenches: small}, 4, 20}, {Work{Torque: 92, Length: 400, Adapter: 60, Wrenches: small}, 80, 400}} {
		_, err := Set(c.work)
		f, ok := err.(finding.Finding)
		if !ok || f.Code != NoneFits {
			t.Errorf("%+v: %v", c.work, err)
			continue
		}
		tensiontest.Near(t, "least", f.Values["least"].(float64), c.least, 1e-12)
		tensiontest.Near(t, "most", f.Values["most"].(unit.GivenTorque).Value, c.most, 1e-12)
		if ranges := f.Values["ranges"].([]finding.Finding); len(ranges) != 1 || ranges[0].Code != OutOfRange {
			t.Errorf("%v", f.Values)
		}
	}
}
