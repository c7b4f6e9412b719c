package measure_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
)

func dec(s string) unit.Decimal {
	d, err := unit.ParseDecimal(s)
	if err != nil {
		panic(err)
	}
	return d
}

func limit(s string) *unit.Decimal {
	d := dec(s)
	return &d
}

// intake is a valve adjusted by shims under or on its follower.
func intake() measure.Value {
	return measure.Value{What: "valve clearance", Unit: "mm", From: limit("0.15"), To: limit("0.25"), At: []measure.Place{{Station: "T1"}},
		Shims: &measure.Shims{From: dec("2.00"), To: dec("3.20"), Step: dec("0.05")}}
}

// Common practice, no source: workshop manuals print the formula new shim = old
// shim + measured clearance − specified clearance. The figures of these
// examples are calculated from it by hand, for 0.20 mm wanted and shims in
// steps of 0.05 mm.
func TestShims(t *testing.T) {
	for name, tt := range map[string]struct {
		fitted, measured       string
		exact, size, clearance string
		advice                 measure.Advice
	}{
		"too much clearance":              {"2.40", "0.33", "2.53", "2.55", "0.18", measure.Change},
		"too little":                      {"2.80", "0.08", "2.68", "2.70", "0.18", measure.Change},
		"none at all":                     {"2.80", "0.00", "2.60", "2.60", "0.20", measure.Change},
		"within the limits":               {"2.40", "0.24", "2.44", "2.40", "0.24", measure.Keep},
		"at the upper limit":              {"2.40", "0.25", "2.45", "2.40", "0.25", measure.Keep},
		"at the lower limit":              {"2.40", "0.15", "2.35", "2.40", "0.15", measure.Keep},
		"half way: the thinner":           {"2.425", "0.300", "2.525", "2.50", "0.225", measure.Change},
		"a worn shim, measured":           {"2.37", "0.31", "2.48", "2.50", "0.18", measure.Change},
		"no shim is thick enough":         {"3.15", "0.40", "3.35", "3.20", "0.35", measure.NoSize},
		"the thickest still does":         {"3.15", "0.30", "3.25", "3.20", "0.25", measure.Change},
		"no shim is thin enough":          {"2.00", "0.05", "1.85", "2.00", "0.05", measure.NoSize},
		"binary fractions leave no trace": {"2.35", "0.30", "2.45", "2.45", "0.20", measure.Change},
	} {
		got, ok := intake().NewShim(dec(tt.fitted), dec(tt.measured))
		if !ok {
			t.Fatal(name)
		}
		for what, pair := range map[string][2]string{"exact": {got.Exact.String(), tt.exact}, "size": {got.Size.String(), tt.size}, "clearance": {got.Clearance.String(), tt.clearance}} {
			if dec(pair[0]) != dec(pair[1]) && dec(pair[0]).Millionths != dec(pair[1]).Millionths {
				t.Errorf("%s: %s is %s, want %s", name, what, pair[0], pair[1])
			}
		}
		if got.Advice != tt.advice {
			t.Errorf("%s: %s, want %s", name, got.Advice, tt.advice)
		}
	}
	v := intake()
	v.Wanted = limit("0.16")
	if got, _ := v.NewShim(dec("2.40"), dec("0.30")); got.Exact.String() != "2.54" || got.Size.String() != "2.55" {
		t.Errorf("for 0.16 wanted: %+v", got)
	}
	v.Shims = nil
	if _, ok := v.NewShim(dec("2.40"), dec("0.30")); ok {
		t.Error("a value without shims asks for one")
	}
}

// First principles: a size within the range is within half a step of the exact
// thickness, so the clearance is within half a step of the wanted one; no other
// size is nearer, and fitted + measured equals shim + clearance exactly.
func TestNearestShim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, from, to int64) unit.Decimal {
			return unit.Decimal{Millionths: rapid.Int64Range(from, to).Draw(t, name) * 1000, Decimals: 3}
		}
		v := intake()
		s := measure.Shims{From: draw("thinnest", 1000, 2500), Step: draw("step", 1, 80)}
		s.To = s.From.Plus(s.Step.Times(rapid.Int64Range(1, 40).Draw(t, "steps")))
		v.Shims = &s
		fitted, measured := draw("fitted", 900, 6000), draw("measured", 0, 1500)
		got, _ := v.NewShim(fitted, measured)
		if sum := got.Size.Plus(got.Clearance); sum.Millionths != fitted.Plus(measured).Millionths {
			t.Fatalf("%s + %s ≠ %s + %s", got.Size, got.Clearance, fitted, measured)
		}
		if got.Advice == measure.Keep {
			if got.Size != fitted || v.Judge(measured).Outside() {
				t.Fatalf("kept: %+v", got)
			}
			return
		}
		if inRange := !got.Exact.Less(s.From) && !s.To.Less(got.Exact); inRange && 2*off(got.Size, got.Exact) > s.Step.Millionths {
			t.Fatalf("%+v is more than half a step of %s off", got, s.Step)
		}
		for n := range s.Count() {
			size := s.Size(n)
			if off(size, got.Exact) < off(got.Size, got.Exact) || off(size, got.Exact) == off(got.Size, got.Exact) && size.Less(got.Size) {
				t.Fatalf("%s is nearer to %s than %s, or thinner", size, got.Exact, got.Size)
			}
		}
		if (got.Advice == measure.NoSize) != v.Judge(got.Clearance).Outside() {
			t.Fatalf("%+v", got)
		}
	})
}

func off(a, b unit.Decimal) int64 {
	d := a.Minus(b).Millionths
	return max(d, -d)
}

// First principles: the table agrees with the formula for every clearance, and
// has each clearance once.
func TestBandsAreTheFormula(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := intake()
		v.Shims.Step = unit.Decimal{Millionths: rapid.Int64Range(1, 20).Draw(t, "step") * 10_000, Decimals: 2}
		v.Shims.From, v.Shims.To = dec("1.00"), dec("1.00").Plus(v.Shims.Step.Times(200))
		bands := v.Bands(5)
		for read := dec("0.00"); !dec("0.40").Less(read); read = read.Plus(dec("0.01")) {
			if bands[len(bands)-1].To.Less(read) {
				return
			}
			fitted := v.Shims.Size(50)
			want, _ := v.NewShim(fitted, read)
			in := slices.DeleteFunc(slices.Clone(bands), func(b measure.Band) bool { return read.Less(b.From) || b.To.Less(read) })
			if len(in) != 1 || in[0].By.Millionths != want.Size.Minus(fitted).Millionths || in[0].Keep != (want.Advice == measure.Keep) {
				t.Fatalf("%s: %+v, the formula says %+v", read, in, want)
			}
		}
	})
}

// First principles: a figure equal to a limit is within it.
func TestJudge(t *testing.T) {
	v := intake()
	for read, want := range map[string]measure.Verdict{
		"0.14": measure.Below, "0.149999": measure.Below, "0.15": measure.Within, "0.25": measure.Within, "0.250001": measure.Above,
	} {
		if got := v.Judge(dec(read)); got != want {
			t.Errorf("%s is %q, want %q", read, got, want)
		}
	}
	v.From = nil
	if v.Judge(dec("-5")) != measure.Within {
		t.Error("no lower limit")
	}
	v.To = nil
	if v.Judge(dec("7")) != measure.Unlimited {
		t.Error("no limit at all")
	}
	list := []measure.Value{intake(), {What: "end float", Unit: "mm"}}
	if _, found := measure.Find(list, "end float", measure.Place{}); !found {
		t.Error("a value of the whole part is not found")
	}
	if _, found := measure.Find(list, "valve clearance", measure.Place{Station: "T2"}); found {
		t.Error("a value is found at a place that it is not taken at")
	}
}
