package drawn_test

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/holes"
	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
	"drawdown/patterns/source"
	"drawdown/patterns/writing"
	"drawdown/render/words"
)

func cover(t *testing.T, release string) source.Source {
	t.Helper()
	path := filepath.Join("..", "dxf", "testdata", "cover-"+release+".dxf")
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return patterns.FromBytes(path, data)
}

// The part of dxf/testdata/make.py: eleven holes of 9 mm and a point; a bore of
// 60 mm; the edge and the slot; from release 2000 on, one more hole, drawn as a
// spline, and the ellipse.
func TestDrawingBecomesPattern(t *testing.T) {
	for _, release := range []string{"R12", "R2000", "R2018", "R12-binary", "inches"} {
		draft, problems := drawn.Read(cover(t, release), drawn.Options{})
		j := draft.Joint
		outlines, fasteners := 3, 13
		if strings.HasPrefix(release, "R12") {
			outlines, fasteners = 2, 12
		}
		if len(j.Fasteners) != fasteners || len(j.Bores) != 1 || len(j.Outline) != outlines || math.Abs(draft.HolesMm["hole 9"]-9) > 1e-9 {
			t.Errorf("%s: %d fasteners, %d bores, %d closed lines, holes %v\n%v", release, len(j.Fasteners), len(j.Bores), len(j.Outline), draft.HolesMm, problems)
			continue
		}
		if box := geometry.Bounds(j.Outline[0]); math.Abs(box.Width()-200) > 1e-6 {
			t.Errorf("%s: the first closed line is %.1f mm wide, want the edge of 200 mm", release, box.Width())
		}
		for _, words := range []string{"2 circles round a smaller one", "1 TEXT"} {
			if !strings.Contains(said(problems).Error(), words) {
				t.Errorf("%s: %q is not said in\n%v", release, words, problems)
			}
		}
		input, problems := patterns.Read(patterns.FromBytes("made.yaml", writing.Pattern(draft, words.English().Say)))
		if len(problems) != 1 || !strings.Contains(said(problems)[0].What, "tighten is missing") || len(input.Joint.Fasteners) != fasteners {
			t.Errorf("%s: the pattern file is not sound: %v", release, problems)
		}
	}
}

// drawing writes circles as a drawing: x, y, diameter.
func drawing(circles ...[3]float64) source.Source {
	var d dxf.Drawing
	for _, c := range circles {
		d.Circles = append(d.Circles, dxf.Circle{Centre: geometry.Point{X: c[0], Y: c[1]}, DiameterMm: c[2], Layer: "0"})
	}
	return patterns.FromBytes("round.dxf", dxf.Write(d))
}

// A round flange: its edge, its bore and its bolt circle are distinguished by
// what they contain (first principles).
func TestRoundFlange(t *testing.T) {
	circles := [][3]float64{{0, 0, 300}, {0, 0, 100}, {0, 0, 240}}
	for i := range 8 {
		a := math.Pi * float64(i) / 4
		circles = append(circles, [3]float64{120 * math.Cos(a), 120 * math.Sin(a), 18})
	}
	for name, all := range map[string][][3]float64{"with a bore": circles, "without": append([][3]float64{circles[0]}, circles[2:]...)} {
		draft, problems := drawn.Read(drawing(all...), drawn.Options{})
		j := draft.Joint
		if len(j.Fasteners) != 8 || len(j.Outline) != 1 || len(j.Bores) != len(all)-10 {
			t.Errorf("%s: %d fasteners, %d outlines, bores %v; want 8, 1, %d\n%v", name, len(j.Fasteners), len(j.Outline), j.Bores, len(all)-10, problems)
		}
		if len(problems) != 1 { // of the 240 mm circle
			t.Errorf("%s: %v", name, problems)
		}
	}
}

func TestHolesByRange(t *testing.T) {
	source := drawing([3]float64{0, 0, 9}, [3]float64{50, 0, 9}, [3]float64{100, 0, 8}, [3]float64{0, 50, 5}, [3]float64{50, 50, 25})
	ask := drawn.Options{Holes: holes.Rule{Fasteners: holes.Ranges{holes.Range{FromMm: 8.5, ToMm: 14}}, Dowels: holes.Range{FromMm: 7.9, ToMm: 8.1}}}
	draft, problems := drawn.Read(source, ask)
	j := draft.Joint
	if len(j.Fasteners) != 2 || len(j.Dowels) != 1 || len(j.Bores) != 1 || !strings.Contains(said(problems).Error(), "left out: 1 hole of 5 mm") {
		t.Errorf("%d fasteners, %d dowels, %d bores; %v", len(j.Fasteners), len(j.Dowels), len(j.Bores), problems)
	}
	ask.Holes = holes.Rule{Fasteners: holes.Ranges{holes.Range{FromMm: 1, ToMm: 2}}}
	if _, problems := drawn.Read(source, ask); !problems.Stops() || !strings.Contains(said(problems).Error(), "no circle or point that can be a fastener") {
		t.Error(problems)
	}
}

// What a drawing cannot be is an error and gives no pattern.
func TestDrawingsRefused(t *testing.T) {
	many := make([][3]float64, 10_001)
	for i := range many {
		many[i] = [3]float64{float64(i%100) * 10, float64(i/100) * 10, 5}
	}
	for want, source := range map[string]source.Source{
		"has 10001 places for fasteners": drawing(many...),
		"is up to 150 m from":            drawing([3]float64{150_000, 0, 9}),
		"no circle or point":             drawing(),
	} {
		draft, problems := drawn.Read(source, drawn.Options{})
		if !problems.Stops() || !strings.Contains(said(problems).Error(), want) || len(draft.Joint.Fasteners) > 0 {
			t.Errorf("%v, want %q", problems, want)
		}
	}
}

// drawable removes from a joint what a drawing cannot contain.
func drawable(j geometry.Joint) geometry.Joint {
	kept := geometry.Joint{Outline: j.Outline, Bores: j.Bores, Dowels: j.Dowels, Labels: j.Labels}
	for _, f := range j.Fasteners {
		f.Cast = 0
		kept.Fasteners = append(kept.Fasteners, f)
	}
	for _, s := range j.Stations {
		s.Label = ""
		kept.Stations = append(kept.Stations, s)
	}
	return kept
}

// A pattern written as a drawing is read back unchanged, to the last digit.
func TestPatternThroughDrawing(t *testing.T) {
	for _, name := range patterns.Builtin() {
		text, _ := patterns.BuiltinText(name)
		input, _ := patterns.Read(patterns.FromBytes(name, text))
		wide := map[string]float64{}
		for _, k := range input.Kinds {
			if k.Hole > 0 {
				wide[k.Name] = float64(k.Hole)
			}
		}
		again(t, name, drawable(input.Joint), wide)
	}
	for _, release := range []string{"R12", "R2010", "inches"} {
		draft, _ := drawn.Read(cover(t, release), drawn.Options{})
		again(t, release, draft.Joint, draft.HolesMm)
	}
}

func again(t interface {
	Errorf(string, ...any)
}, name string, joint geometry.Joint, wide map[string]float64) {
	data := drawn.Write(joint, wide)
	draft, problems := drawn.Read(patterns.FromBytes("again.dxf", data), drawn.Options{})
	byID := func(j geometry.Joint) map[string]geometry.Fastener { // kinds with and without a hole are swapped
		all := map[string]geometry.Fastener{}
		for _, f := range j.Fasteners {
			all[f.ID] = f
		}
		return all
	}
	near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
	if diff := cmp.Diff(byID(joint), byID(draft.Joint), near); diff != "" || len(problems) > 0 {
		t.Errorf("%s (- written, + read):\n%s%s", name, diff, said(problems).Detail())
	}
	joint.Fasteners, draft.Joint.Fasteners = nil, nil
	if diff := cmp.Diff(joint, draft.Joint, near); diff != "" {
		t.Errorf("%s (- written, + read):\n%s", name, diff)
	}
	if diff := cmp.Diff(wide, draft.HolesMm, near); diff != "" {
		t.Errorf("%s: holes (- written, + read):\n%s", name, diff)
	}
}

// Random places with all digits, ids in any letters, and kinds.
func TestRandomJointThroughDrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var j geometry.Joint
		wide := map[string]float64{"main": 8.4}
		for i := range rapid.IntRange(2, 30).Draw(t, "count") {
			at := geometry.Point{X: float64(i)*20 + rapid.Float64Range(-5, 5).Draw(t, "x"), Y: rapid.Float64Range(-500, 500).Draw(t, "y")}
			id := fmt.Sprintf("%s%d", rapid.SampledFrom([]string{"M", "Ř", "Ω", "Ж"}).Draw(t, "letter"), i)
			j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: id, Kind: rapid.SampledFrom([]string{"main", "side"}).Draw(t, "kind"), At: at})
		}
		used := map[string]float64{}
		for _, f := range j.Fasteners {
			if wide[f.Kind] > 0 {
				used[f.Kind] = wide[f.Kind]
			}
		}
		again(t, "random", j, used)
	})
}

// An independent library opens our drawing without errors and finds what was
// written.
func TestDrawingReadByOthers(t *testing.T) {
	python := testkit.Python(t, "ezdxf")
	joint := geometry.Joint{
		Fasteners: []geometry.Fastener{{ID: "M1", Kind: "main", At: geometry.Point{X: -47.5, Y: 1e-7}}, {ID: "Ř2", Kind: "side", At: geometry.Point{X: 1.0 / 3, Y: 12}}},
		Outline:   [][]geometry.Point{{{X: -60, Y: -30}, {X: 60, Y: -30}, {X: 60, Y: 30}}},
		Bores:     []geometry.Bore{{Centre: geometry.Point{X: 5}, Diameter: 76, Label: "cyl 1"}},
		Dowels:    []geometry.Dowel{{Centre: geometry.Point{X: 20}, Diameter: 8}},
	}
	path := filepath.Join(t.TempDir(), "ours.dxf")
	if err := os.WriteFile(path, drawn.Write(joint, map[string]float64{"main": 11}), 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(python, filepath.Join("..", "dxf", "testdata", "tell.py"), path).CombinedOutput()
	want := strings.Join([]string{
		"AC1009 unit 4 complaints 0",
		"CIRCLE FASTENERS-main -47.5 1e-07 11.0",
		"CIRCLE BORES 5.0 0.0 76.0",
		"CIRCLE DOWELS 20.0 0.0 8.0",
		"POINT FASTENERS-side 0.3333333333333333 12.0",
		"POLYLINE OUTLINE closed (-60.0, -30.0) (60.0, -30.0) (60.0, 30.0)",
		"TEXT IDS M1 -47.5 1e-07",
		"TEXT IDS Ř2 0.3333333333333333 12.0",
		"TEXT BORE-LABELS cyl 1 5.0 0.0",
	}, "\n")
	if diff := cmp.Diff(want, strings.TrimSpace(strings.ReplaceAll(string(out), "\r", ""))); err != nil || diff != "" {
		t.Errorf("%v (- wanted, + read):\n%s", err, diff)
	}
}

// partOf is a drawing of four holes of 9 mm, and one closed line.
func partOf(path ...geometry.Point) []byte {
	d := dxf.Drawing{Paths: []dxf.Path{{Points: path, Layer: "0"}}}
	for _, at := range []geometry.Point{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 60}, {X: 0, Y: 60}} {
		d.Circles = append(d.Circles, dxf.Circle{Centre: at, DiameterMm: 9, Layer: "0"})
	}
	return dxf.Write(d)
}

// An opening between the holes is not the edge of the part, and a hole outside
// the edge is reported (first principles).
func TestEdgeAndFasteners(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name     string
		path     []geometry.Point
		outlines int
		said     string
	}{
		{"edge", []geometry.Point{{X: -10, Y: -10}, {X: 110, Y: -10}, {X: 110, Y: 70}, {X: -10, Y: 70}}, 1, ""},
		{"opening", []geometry.Point{{X: 20, Y: 15}, {X: 80, Y: 15}, {X: 80, Y: 45}, {X: 20, Y: 45}}, 0, "no closed line is around the fasteners"},
		{"one outside", []geometry.Point{{X: -10, Y: -10}, {X: 110, Y: -10}, {X: 110, Y: 70}, {X: 20, Y: 70}}, 1, "1 fastener is outside the edge of the part: A1"},
	} {
		draft, problems := drawn.Read(patterns.FromBytes("part.dxf", partOf(c.path...)), drawn.Options{})
		if len(draft.Joint.Outline) != c.outlines || (c.said == "") != (len(problems) == 0) || !strings.Contains(said(problems).Error(), c.said) {
			t.Errorf("%s: %d outlines, %v", c.name, len(draft.Joint.Outline), said(problems))
		}
	}
}

// A drawing with decimal commas has the same places as one with points.
func TestDecimalCommas(t *testing.T) {
	t.Parallel()
	points := partOf(geometry.Point{X: -10.5, Y: -10.25}, geometry.Point{X: 110.5, Y: -10.25}, geometry.Point{X: 110.5, Y: 70}, geometry.Point{X: -10.5, Y: 70})
	lines := strings.Split(string(points), "\n")
	for i, line := range lines {
		if i%2 == 1 && i > 20 && strings.Trim(line, "0123456789.-\r") == "" {
			lines[i] = strings.Replace(line, ".", ",", 1)
		}
	}
	commas := strings.Join(lines, "\n")
	if !strings.Contains(commas, ",") {
		t.Fatal("the drawing has no decimal comma")
	}
	want, _ := drawn.Read(patterns.FromBytes("part.dxf", points), drawn.Options{})
	got, problems := drawn.Read(patterns.FromBytes("part.dxf", []byte(commas)), drawn.Options{})
	if diff := cmp.Diff(want.Joint, got.Joint); diff != "" {
		t.Errorf("%v\n%s", said(problems), diff)
	}
}
