package dxf_test

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/patterns/dxf"
)

// covers lists the drawings of the folder, which an outside library made from
// the part in testdata/make.py.
var covers = []string{"R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018", "R12-binary", "R2010-binary", "inches"}

func readCover(t *testing.T, name string, ask dxf.Options) (dxf.Drawing, string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "cover-"+name+".dxf"))
	if err != nil {
		t.Fatal(err)
	}
	drawing, problems := dxf.Read("cover.dxf", data, ask)
	if problems.Stops() {
		t.Fatalf("%s: %v", name, problems)
	}
	return drawing, said(problems).Error()
}

// The places follow from make.py by first principles: a block turned by 90° at
// (40, 40) has its circle, 4.5 mm to the right of its base, at (40, 44.5); a
// mirrored one at (-40, 40) has it at (-44.5, 40); a circle at (40, -40) in a
// plane seen from behind is at (-40, -40).
func TestCircles(t *testing.T) {
	var want []string
	for _, p := range [][3]float64{
		{-80, -40, 9}, {-80, 40, 9}, {80, -40, 9}, {80, 40, 9}, {0, 40, 9}, {0, 40, 15}, {0, -40, 9}, {0, -40, 15},
		{40, 44.5, 9}, {-44.5, 40, 9}, {-40, -40, 9}, {80, 0, 9}, {-80, 0, 9}, {0, 0, 60},
	} {
		want = append(want, fmt.Sprintf("%.6f %.6f %.6f", p[0], p[1], p[2]))
	}
	spline := fmt.Sprintf("%.6f %.6f %.6f", 40.0, -10.0, 9.0) // release 12 has none
	slices.Sort(want)
	for _, name := range covers {
		drawing, _ := readCover(t, name, dxf.Options{})
		want := want
		if !strings.HasPrefix(name, "R12") {
			want = append(slices.Clone(want), spline)
			slices.Sort(want)
		}
		var got []string
		for _, c := range drawing.Circles {
			got = append(got, fmt.Sprintf("%.6f %.6f %.6f", c.Centre.X+0, c.Centre.Y+0, c.DiameterMm))
		}
		for i := range got {
			got[i] = strings.ReplaceAll(got[i], "-0.000000", "0.000000")
		}
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s: circles\n%s\nwant\n%s", name, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
		if len(drawing.Points) != 1 || drawing.Points[0].At.Distance(geometry.Point{Y: 52}) > 1e-6 {
			t.Errorf("%s: points %v, want one at 0, 52", name, drawing.Points)
		}
	}
}

// The areas follow from make.py: 200 × 120 with corners of radius 20; a slot of
// two semicircles of radius 5 with 10 mm between them; an ellipse of 10 and 5.
// A flattened curve is smaller by at most its length times 0.05 mm.
func TestPaths(t *testing.T) {
	areas := []float64{200*120 - (4-math.Pi)*400, 100 + math.Pi*25, math.Pi * 50}
	for _, name := range covers {
		drawing, _ := readCover(t, name, dxf.Options{})
		slices.SortFunc(drawing.Paths, func(a, b dxf.Path) int { return cmp.Compare(area(b.Points), area(a.Points)) })
		want := areas
		if strings.HasPrefix(name, "R12") {
			want = areas[:2] // release 12 has no ellipse
		}
		if len(drawing.Paths) != len(want) {
			t.Fatalf("%s: %d closed lines, want %d", name, len(drawing.Paths), len(want))
		}
		for i, path := range drawing.Paths {
			curved := []float64{2 * math.Pi * 20, 2 * math.Pi * 5, 2 * math.Pi * 10}[i]
			if got := area(path.Points); got > want[i]+1e-6 || got < want[i]-curved*dxf.FlatMm {
				t.Errorf("%s: closed line %d holds %.3f mm², want %.3f", name, i, got, want[i])
			}
		}
	}
}

func area(path []geometry.Point) float64 {
	twice := 0.0
	for i, p := range path {
		q := path[(i+1)%len(path)]
		twice += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(twice) / 2
}

// Everything that make.py puts where it must not be read is counted.
func TestLeftOut(t *testing.T) {
	for _, name := range covers {
		_, said := readCover(t, name, dxf.Options{})
		want := []string{"1 CIRCLE on a frozen layer", "1 CIRCLE on a layer that is off", "1 CIRCLE in paper space", "1 DIMENSION", "1 line that does not close"}
		if strings.HasPrefix(name, "R12") {
			want = append(want, "states no unit and is read in mm")
		} else {
			want = append(want, "1 MTEXT on a layer that is off", "1 SPLINE with no control points")
		}
		for _, words := range want {
			if !strings.Contains(said, words) {
				t.Errorf("%s: %q is not said in\n%s", name, words, said)
			}
		}
		if n := strings.Count(said, "\n") + 1; n != len(want) {
			t.Errorf("%s: %d warnings, want %d:\n%s", name, n, len(want), said)
		}
	}
}

// Texts are in the code page in release 2000, and in UTF-8 from 2007 on.
func TestLayersByName(t *testing.T) {
	for _, name := range covers {
		drawing, _ := readCover(t, name, dxf.Options{Layers: []string{"höhe", "old"}})
		if len(drawing.Circles) != 1 || len(drawing.Paths) != 0 || len(drawing.Texts) != 1 || drawing.Texts[0].Text != "Höhe 12" {
			t.Errorf("%s: circles %v, paths %d, texts %v; want the circle of OLD and the text of Höhe", name, drawing.Circles, len(drawing.Paths), drawing.Texts)
		}
	}
	data, _ := os.ReadFile("testdata/cover-R2000.dxf")
	_, problems := dxf.Read("cover.dxf", data, dxf.Options{Layers: []string{"HOLE"}})
	if words := said(problems).Error(); !problems.Stops() || !strings.Contains(words, `no layer "HOLE" (did you mean HOLES?)`) || !strings.Contains(words, "EDGE") {
		t.Error(words)
	}
}

// The drawing or the user sets the unit (first principles).
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		insunits string
		asked    dxf.Unit
		want     float64 // of a circle of diameter 2
		said     string
	}{
		{"4", "", 2, ""}, {"5", "", 20, ""}, {"6", "", 2000, ""}, {"1", "", 50.8, ""},
		{"0", "", 2, "no unit and is read in mm"}, {"0", dxf.Inch, 50.8, ""}, {"1", dxf.Millimetre, 2, "states in; it is read in mm"},
		{"2", "", 0, "$INSUNITS (group code 70): 2 is not a unit"}, {"x", "", 0, `group code 70: "x" is not a whole number`},
	} {
		text := groups("0 SECTION", "2 HEADER", "9 $INSUNITS", "70 "+c.insunits, "0 ENDSEC", "0 SECTION", "2 ENTITIES",
			"0 CIRCLE", "10 0", "20 0", "40 1", "0 ENDSEC", "0 EOF")
		drawing, problems := dxf.Read("d.dxf", text, dxf.Options{Unit: c.asked})
		got := 0.0
		if len(drawing.Circles) > 0 {
			got = drawing.Circles[0].DiameterMm
		}
		if got != c.want || !strings.Contains(said(problems).Error(), c.said) || c.said == "" && len(problems) > 0 {
			t.Errorf("$INSUNITS %s, asked %q: %g mm, want %g; %v", c.insunits, c.asked, got, c.want, problems)
		}
	}
}

// groups writes "code value" as the two lines of a group.
func groups(all ...string) []byte {
	var b strings.Builder
	for _, g := range all {
		code, value, _ := strings.Cut(g, " ")
		b.WriteString(code + "\n" + value + "\n")
	}
	return []byte(b.String())
}

func entities(all ...string) []byte {
	return groups(append(append([]string{"0 SECTION", "2 ENTITIES"}, all...), "0 ENDSEC", "0 EOF")...)
}

// No piece of a flattened curve is further from it than allowed, and none is
// much shorter than that requires (first principles: sagitta).
func TestFlat(t *testing.T) {
	for _, radius := range []float64{0.3, 1, 4.5, 30, 500} {
		points := dxf.Flat(geometry.Point{}, 2*radius)
		for i, p := range points {
			middle := p.Add(points[(i+1)%len(points)]).Scale(0.5)
			if off := radius - math.Hypot(middle.X, middle.Y); off > dxf.FlatMm+1e-9 {
				t.Errorf("radius %g: %g mm off", radius, off)
			}
		}
		if fewest := math.Pi / math.Acos(1-dxf.FlatMm/radius); radius > 1 && float64(len(points)) > 2*fewest {
			t.Errorf("radius %g: %d points, %g would do", radius, len(points), fewest)
		}
	}
}

// A cubic curve with its control points on the corners of 100 × 60 mm encloses,
// with its chord, ∫ 18·100·60·t²(1−t)² dt = 3600 mm²; flattened, it is smaller
// by no more than its length times 0.05 mm.
func TestSplineAndLineJoin(t *testing.T) {
	data := entities("0 SPLINE", "71 3", "40 0", "40 0", "40 0", "40 0", "40 1", "40 1", "40 1", "40 1",
		"10 0", "20 0", "10 0", "20 60", "10 100", "20 60", "10 100", "20 0",
		"0 LINE", "10 0", "20 0", "11 100", "21 0")
	drawing, _ := dxf.Read("d.dxf", data, dxf.Options{})
	if len(drawing.Paths) != 1 {
		t.Fatalf("%d closed lines", len(drawing.Paths))
	}
	const length = 150 // approximately
	if got := area(drawing.Paths[0].Points); got > 3600 || got < 3600-length*dxf.FlatMm {
		t.Errorf("%.3f mm², want 3600", got)
	}
	for _, broken := range [][]string{
		{"40 0", "40 1"}, {"40 0", "40 0", "40 1", "40 0", "40 0", "40 0", "40 0", "40 0"},
	} {
		all := append([]string{"0 SPLINE", "71 3"}, broken...)
		all = append(all, "10 0", "20 0", "10 0", "20 60", "10 100", "20 60", "10 100", "20 0")
		if _, problems := dxf.Read("d.dxf", entities(all...), dxf.Options{}); !strings.Contains(said(problems).Error(), "1 SPLINE whose knots do not fit") {
			t.Errorf("%v: %v", broken, problems)
		}
	}
}

// Centre lines that end on an outline and lines drawn twice do not prevent it
// from closing; a rib inside it is left out.
func TestJoining(t *testing.T) {
	line := func(x1, y1, x2, y2 int) []string {
		return []string{"0 LINE", fmt.Sprintf("10 %d", x1), fmt.Sprintf("20 %d", y1), fmt.Sprintf("11 %d", x2), fmt.Sprintf("21 %d", y2)}
	}
	square := slices.Concat(line(0, 0, 100, 0), line(100, 80, 100, 0), line(100, 80, 0, 80), line(0, 0, 0, 80))
	for name, c := range map[string]struct {
		more []string
		said string
	}{
		"plain": {nil, ""}, "twice": {slices.Concat(line(100, 0, 0, 0), line(0, 0, 0, 80)), ""},
		"line from a corner": {slices.Concat(line(0, 0, -50, 0), line(-50, 0, -50, -50)), "2 line that does not close"},
	} {
		drawing, problems := dxf.Read("d.dxf", entities(slices.Concat(c.more, square)...), dxf.Options{Unit: dxf.Millimetre})
		if len(drawing.Paths) != 1 || len(drawing.Paths[0].Points) != 4 || area(drawing.Paths[0].Points) != 8000 {
			t.Errorf("%s: %v", name, drawing.Paths)
		}
		if !strings.Contains(said(problems).Error(), c.said) || c.said == "" && len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
	}
	open := square[:len(square)-5]
	if drawing, problems := dxf.Read("d.dxf", entities(open...), dxf.Options{Unit: dxf.Millimetre}); len(drawing.Paths) > 0 || !strings.Contains(said(problems).Error(), "3 line that does not close") {
		t.Errorf("open: %v %v", drawing.Paths, problems)
	}
	rib := slices.Concat(line(0, 0, 100, 80), square) // listed first, as a wrong start
	drawing, problems := dxf.Read("d.dxf", entities(rib...), dxf.Options{Unit: dxf.Millimetre})
	if len(drawing.Paths) != 1 || area(drawing.Paths[0].Points) != 8000 || !strings.Contains(said(problems).Error(), "left out: 1 line") {
		t.Errorf("rib: %v %v", drawing.Paths, problems)
	}
}
