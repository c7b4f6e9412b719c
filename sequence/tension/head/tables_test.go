package head

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

func threadNamed(t *testing.T, name string) thread.Thread {
	t.Helper()
	th, err := thread.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return th
}

// ISO 273, fine, medium and coarse series (values from memory): each hole gives
// its thread, within 0.15 mm for a caliper; in between it is the largest that
// goes through.
func TestHolesOfISO273(t *testing.T) {
	t.Parallel()
	series := map[string][3]unit.Length{
		"M3": {3.2, 3.4, 3.6}, "M4": {4.3, 4.5, 4.8}, "M5": {5.3, 5.5, 5.8}, "M6": {6.4, 6.6, 7}, "M8": {8.4, 9, 10}, "M10": {10.5, 11, 12},
		"M12": {13, 13.5, 14.5}, "M14": {15, 15.5, 16.5}, "M16": {17, 17.5, 18.5}, "M20": {21, 22, 24}, "M24": {25, 26, 28}, "M30": {31, 33, 35}, "M36": {37, 39, 42},
	}
	for name, holes := range series {
		for _, hole := range holes {
			for _, off := range []unit.Length{-0.14, 0, 0.14} {
				if got, sure := ThreadForHole(hole + off); !sure || got != name {
					t.Errorf("a hole of %v is for %q, sure %v; want %s", hole+off, got, sure, name)
				}
			}
		}
		if got, _ := Hole(threadNamed(t, name)); got != holes[1] {
			t.Errorf("the hole for %s is %v, want %v", name, got, holes[1])
		}
	}
	for hole, want := range map[unit.Length]string{2.9: "", 3.04: "", 7.5: "M6", 19.5: "M16", 23: "M20", 30: "M24", 60: "M36"} {
		if got, sure := ThreadForHole(hole); sure || got != want {
			t.Errorf("a hole of %v is for %q, sure %v; want %q", hole, got, sure, want)
		}
	}
	for _, hole := range []unit.Length{8.4 - 0.16, 8.4 + 0.16, 42.16} {
		if _, sure := ThreadForHole(hole); sure {
			t.Errorf("a hole of %v is told for sure", hole)
		}
	}
}

// ISO 4762, table 1 (values from memory): the key of a socket head.
func TestKeysOfSocketHeads(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]unit.Length{
		"M3": 2.5, "M4": 3, "M5": 4, "M6": 5, "M8": 6, "M10": 8, "M12": 10, "M14": 12, "M16": 14, "M20": 17, "M24": 19, "M30": 22, "M36": 27,
	} {
		if got, standard, err := KeyAcross(threadNamed(t, name)); got != want || standard != "ISO 4762 "+name || err != nil {
			t.Errorf("%s: %v by %q, %v; want %v", name, got, standard, err, want)
		}
	}
	for _, name := range []string{"M18", "1/4-20 UNC"} {
		_, _, err := KeyAcross(threadNamed(t, name))
		f, ok := err.(finding.Finding)
		if !ok || f.Code != NoSocket || f.Values["allowed"].([]string)[0] != "M3" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// ISO 286-1 (values from memory): h13 to 30 mm, h14 to 50 mm, h15 to 60 mm, h16
// above; IT16 of the face to 18 mm.
func TestStepsOfTolerances(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		across, want unit.Length
	}{
		{5.5, 5.5 - 0.18 - 0.75}, {6, 6 - 0.18 - 0.75}, {7, 7 - 0.22 - 0.90}, {10, 10 - 0.22 - 0.90}, {13, 13 - 0.27 - 1.10}, {18, 18 - 0.27 - 1.10},
		{21, 0.95 * (21 - 0.33)}, {30, 0.95 * (30 - 0.33)}, {36, 0.95 * (36 - 0.62)}, {50, 0.95 * (50 - 1)}, {60, 0.95 * (60 - 1.2)}, {80, 0.95 * (80 - 1.9)}, {95, 0.95 * (95 - 2.2)},
	} {
		if got := BearingFace(c.across, false); abs(got-c.want) > 1e-9 {
			t.Errorf("%v across flats: a face of %v, want %v", c.across, got, c.want)
		}
	}
	if got := BearingFace(20, true); abs(got-18) > 1e-9 {
		t.Errorf("inch head: %v", got)
	}
}

func abs(l unit.Length) unit.Length { return max(l, -l) }

// ISO 7089, tables 1 and 2 (values from memory): hole, outer diameter, thickness.
func TestNormalWashers(t *testing.T) {
	t.Parallel()
	const table = `1.6 1.7 4 0.3, 2 2.2 5 0.3, 2.5 2.7 6 0.5, 3 3.2 7 0.5, 3.5 3.7 8 0.5, 4 4.3 9 0.8, 5 5.3 10 1, 6 6.4 12 1.6, 8 8.4 16 1.6, 10 10.5 20 2, 12 13 24 2.5, 14 15 28 2.5,
16 17 30 3, 18 19 34 3, 20 21 37 3, 22 23 39 3, 24 25 44 4, 27 28 50 4, 30 31 56 4, 33 34 60 5, 36 37 66 5, 39 42 72 6, 42 45 78 8,
45 48 85 8, 48 52 92 8, 52 56 98 8, 56 62 105 10, 60 66 110 10, 64 70 115 10`
	rows := strings.Split(table, ",")
	if len(rows) != len(normalWashers) {
		t.Errorf("%d sizes, want %d", len(normalWashers), len(rows))
	}
	for _, row := range rows {
		var d float64
		var hole, outer, thick float64
		if _, err := fmt.Sscan(row, &d, &hole, &outer, &thick); err != nil {
			t.Fatal(err)
		}
		th := thread.Thread{Name: fmt.Sprintf("M%g×1", d), MajorMm: d}
		got, standard, err := NormalWasherSize(th)
		if want := (WasherSize{unit.Length(hole), unit.Length(outer), unit.Length(thick)}); err != nil || got != want || standard != fmt.Sprintf("ISO 7089 M%g", d) {
			t.Errorf("%s: %v by %q, %v; want %v", th.Name, got, standard, err, want)
		}
	}
	for _, name := range []string{"M11", "1/4-20 UNC"} {
		if _, _, err := NormalWasherSize(threadNamed(t, name)); err == nil {
			t.Errorf("%s has a washer", name)
		}
	}
	// h14 to 56 mm, h15 above (ISO 286-1, values from memory).
	for outer, want := range map[unit.Length]unit.Length{10: 9.64, 18: 17.57, 30: 29.48, 50: 49.38, 56: 55.26, 80: 78.8, 115: 113.6} {
		if got := (WasherSize{Outer: outer}).leastOuter(); abs(got-want) > 1e-9 {
			t.Errorf("outer %v: at least %v, want %v", outer, got, want)
		}
	}
	// VDI 2230-1, section 5.5.4 (value from memory): dWa = dW + 1.6 hS, at most the washer.
	size := WasherSize{10.5, 20, 2}
	if wide, all := size.spread(15), size.spread(18); abs(wide-18.2) > 1e-9 || abs(all-19.48) > 1e-9 {
		t.Errorf("spread to %v and %v", wide, all)
	}
}

// ISO 7089, clause 1 (value from memory): 200 HV to class 8.8, 300 HV to 10.9.
func TestHardnessOfWashers(t *testing.T) {
	t.Parallel()
	for yield, want := range map[unit.Stress]string{640: "200 HV false", 660: "200 HV false", 661: "300 HV false", 940: "300 HV false", 941: "300 HV true", 1100: "300 HV true"} {
		if hardness, beyond := washerHardness(strength.Class{Yield: yield}); fmt.Sprint(hardness, " ", beyond) != want {
			t.Errorf("%v: %s, beyond %v", yield, hardness, beyond)
		}
	}
}

// ASME B18.2.8, normal (values from memory): a sixty-fourth for No. 0 and No. 1,
// a thirty-second to 7/16, a sixteenth to 7/8, 3/32 to 1 1/4, an eighth above.
func TestInchClearances(t *testing.T) {
	t.Parallel()
	for diameter, want := range map[float64]float64{1.89: 0.25, 1.9: 0.5, 7: 0.5, 8: 1, 15: 1, 16: 1.5, 21: 1.5, 22: 2, 24: 2} {
		if got := float64(inchClearance(diameter) / sixteenth); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g sixteenths: %g sixteenths of clearance, want %g", diameter, got, want)
		}
	}
	if got := sixteenths(threadNamed(t, "3/8-16 UNC")); got != 6 {
		t.Errorf("3/8 in are %v sixteenths", got)
	}
}

// Stated values override the standard. Values below the thread's diameter or
// above four times that are rejected; both limits are allowed.
func TestStatedHeads(t *testing.T) {
	t.Parallel()
	m10 := threadNamed(t, "M10")
	class := strength.Class{Yield: 940}
	for _, c := range []struct {
		name   string
		stated Stated
		code   finding.Code // of the error
		face   unit.Length
		hole   unit.Length
		part   Ring
		notes  []finding.Code
	}{
		{"nothing", Stated{}, "", 16 - 0.27 - 1.1, 11, Ring{16 - 0.27 - 1.1, 11}, []finding.Code{FaceAssumed, HoleAssumed}},
		{"across", Stated{Across: 18}, "", 18 - 0.27 - 1.1, 11, Ring{18 - 0.27 - 1.1, 11}, []finding.Code{FaceOfAcross, HoleAssumed}},
		{"across of the hexagon by name", Stated{Across: 18, Form: Hexagon, Hole: 10}, "", 18 - 0.27 - 1.1, 10, Ring{18 - 0.27 - 1.1, 10}, []finding.Code{FaceOfAcross}},
		{"across of a socket", Stated{Across: 18, Form: Socket}, AcrossTellsNone, 0, 0, Ring{}, nil},
		{"face", Stated{WasherFace: 20, Across: 18, Form: Socket, Hole: 12}, "", 20, 12, Ring{20, 12}, nil},
		{"the widest face", Stated{WasherFace: 40, Hole: 12}, "", 40, 12, Ring{40, 12}, nil},
		{"a face too wide", Stated{WasherFace: 40.1}, SizeRange, 0, 0, Ring{}, nil},
		{"a hole too small", Stated{Hole: 9.9}, SizeRange, 0, 0, Ring{}, nil},
		{"across too small", Stated{Across: 9.9}, SizeRange, 0, 0, Ring{}, nil},
		{"a face as wide as its hole", Stated{WasherFace: 12, Hole: 12}, FaceNotWider, 0, 0, Ring{}, nil},
		{"no such form", Stated{Form: "round"}, NoSuchForm, 0, 0, Ring{}, nil},
		{"no washer", Stated{Washer: NoWasher, Hole: 12, WasherFace: 20}, "", 20, 12, Ring{20, 12}, nil},
		{"no such washer", Stated{Washer: "large"}, NoSuchWasher, 0, 0, Ring{}, nil},
		// The head turns on the washer, 10.5 mm wide inside and 20 mm outside, which
		// spreads its load by 3.2 mm.
		{"washer", Stated{Washer: NormalWasher, WasherFace: 15, Hole: 12}, "", 15, 10.5, Ring{18.2, 12}, []finding.Code{WasherAssumed}},
		{"washer smaller than the head", Stated{Washer: NormalWasher, WasherFace: 30, Hole: 10}, "", 20 - 0.52, 10.5, Ring{20 - 0.52, 10.5}, []finding.Code{WasherAssumed}},
	} {
		got, err := Complete(m10, class, c.stated)
		if c.code != "" {
			if f, ok := err.(finding.Finding); !ok || f.Code != c.code {
				t.Errorf("%s: %v, want %q", c.name, err, c.code)
			}
			continue
		}
		if err != nil || abs(got.Face-c.face) > 1e-9 || got.Hole != c.hole || abs(got.Part.Face-c.part.Face) > 1e-9 || got.Part.Hole != c.part.Hole {
			t.Errorf("%s: %v on %v, %v; want %v and %v on %v", c.name, got.Ring, got.Part, err, c.face, c.hole, c.part)
		}
		var notes []finding.Code
		for _, f := range got.Assumed {
			notes = append(notes, f.Code)
		}
		if !slices.Equal(notes, c.notes) || (got.Washer != nil) != (c.stated.Washer == NormalWasher) {
			t.Errorf("%s: assumes %v, want %v; washer %v", c.name, notes, c.notes, got.Washer)
		}
		if want := (got.Face + got.Hole) / 2; got.Effective() != want || want == 0 { // ISO 16047
			t.Errorf("%s: friction acts at %v, want %v", c.name, got.Effective(), want)
		}
	}
	if _, err := Complete(threadNamed(t, "M11"), class, Stated{}); err == nil {
		t.Error("M11 has a standard head")
	}
	if _, err := Complete(threadNamed(t, "M11"), class, Stated{WasherFace: 17, Washer: NormalWasher}); err == nil {
		t.Error("M11 has a standard washer")
	}
}

// The name of a standard head includes its size, fine pitch has a separate
// standard, and the error for a size without a head lists those that exist.
func TestNamesOfStandardHeads(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		thread   string
		form     Form
		standard string
	}{
		{"M10", Hexagon, "ISO 4014 M10"}, {"M10x1.25", Hexagon, "ISO 8765 M10"}, {"M10", Socket, "ISO 4762 M10"},
		{"M10", Flange, "ISO 4162 M10"}, {"3/8-16 UNC", Hexagon, "ASME B18.2.1 3/8 in"},
	} {
		if _, got, err := Face(threadNamed(t, c.thread), c.form); got != c.standard || err != nil {
			t.Errorf("%s %s: %q, %v; want %q", c.thread, c.form, got, err, c.standard)
		}
	}
	for _, c := range []struct {
		thread string
		form   Form
		first  string
	}{{"M11", Socket, "M3"}, {"M11", Flange, "M5"}, {"3/8-16 UNC", Socket, "M3"}} {
		_, _, err := Face(threadNamed(t, c.thread), c.form)
		f, ok := err.(finding.Finding)
		if !ok || f.Code != NoHeadOfForm || f.Values["allowed"].([]string)[0] != c.first || f.Values["form"] != finding.Term(c.form) {
			t.Errorf("%s %s: %v", c.thread, c.form, err)
		}
	}
	if got := Names(Forms); !slices.Equal(got, []string{"hexagon", "socket", "flange"}) {
		t.Errorf("forms %q", got)
	}
	if _, _, err := Face(threadNamed(t, "M10"), "round"); err == nil {
		t.Error("a round head has a face")
	}
}
