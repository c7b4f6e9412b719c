package dxf_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/patterns/dxf"
)

// drawingOf wraps entities, as groups separated by blanks, in a drawing in mm.
func drawingOf(blocks, entities string) []byte {
	groups := "0 SECTION 2 HEADER 9 $INSUNITS 70 4 0 ENDSEC 0 SECTION 2 BLOCKS " + blocks + " 0 ENDSEC 0 SECTION 2 ENTITIES " + entities + " 0 ENDSEC 0 EOF"
	return []byte(strings.Join(strings.Fields(groups), "\n") + "\n")
}

func line(x1, y1, x2, y2 float64) string {
	return fmt.Sprintf(" 0 LINE 8 EDGE 10 %g 20 %g 11 %g 21 %g", x1, y1, x2, y2)
}

// The truth of each is drawn: a square of 100 mm whose lines end short of one
// another by the gaps.
func TestGaps(t *testing.T) {
	t.Parallel()
	square := func(gap float64) string {
		return line(0, 0, 100, 0) + line(100, 0, 100, 100) + line(100, 100, 0, 100) + line(0, 100, 0, gap)
	}
	for _, c := range []struct {
		name           string
		drawn          string
		gapMm          float64
		paths, circles int
		said           string
	}{
		{"no gap", square(0), 0.5, 1, 0, ""},
		{"closed", square(0.4), 0.5, 1, 0, "a gap of 0.40 mm at x 0.0, y 0.2 mm in a closed line: closed"},
		{"at the limit", square(0.5), 0.5, 1, 0, "a gap of 0.50 mm"},
		{"above the limit", square(0.6), 0.5, 0, 0, "that does not close to an outline"},
		{"as asked", square(0.6), 1, 1, 0, "a gap of 0.60 mm"},
		{"none closed", square(0.3), 0, 0, 0, "that does not close to an outline"},
		{"a centre line beside the gap", square(0.3) + line(-10, 50, 110, 50), 0.5, 1, 0, "a gap of 0.30 mm"},
		{"a short stroke", line(0, 0, 0.4, 0), 0.5, 0, 0, "left out: 1 line"},
		{"an arc that is a circle but for its gap", " 0 ARC 8 EDGE 10 0 20 0 40 10 50 1 51 359", 0.5, 0, 1, "a gap of 0.35 mm at x 10.0, y 0.0 mm"},
	} {
		drawing, problems := dxf.Read("gap.dxf", drawingOf("", c.drawn), dxf.Options{GapMm: c.gapMm})
		if text := said(problems).Error(); len(drawing.Paths) != c.paths || len(drawing.Circles) != c.circles || !strings.Contains(text, c.said) || c.said == "" && len(problems) > 0 {
			t.Errorf("%s: %d paths, %d circles, %s", c.name, len(drawing.Paths), len(drawing.Circles), text)
		}
	}
}

func TestManyGaps(t *testing.T) {
	t.Parallel()
	drawn := ""
	for i := range 15 {
		x := float64(i) * 20
		drawn += line(x, 0, x+10, 0) + line(x+10, 0, x, 10) + line(x, 10, x, 0.2)
	}
	drawing, problems := dxf.Read("gaps.dxf", drawingOf("", drawn), dxf.Options{GapMm: 0.5})
	if text := said(problems).Error(); len(drawing.Paths) != 15 || len(problems) != 13 || !strings.Contains(text, "3 more gaps closed") {
		t.Errorf("%d paths, %d problems: %s", len(drawing.Paths), len(problems), text)
	}
}

// By first principles. HOLE has its circle of radius 1 at (10, 0) from its base
// (1, 0). PAIR holds it once at (5, 5), turned by 90° and twice as large: the
// circle is at (5, 5) + 2·(0, 10-1) = (5, 23), radius 2. The drawing has PAIR at
// (100, 50), three times as large, turned by -90°: (5, 23) becomes (69, -15),
// radius 6. The mirrored one (-1, 1) has it at (-5, 23), radius 2. The grid of
// two columns, 40 apart and turned by 90°, has it at (305, 23) and (305, 63):
// (5, 23) turned is (-23, 5), so (300-23, 0+5) and 40 further up.
func TestScaledAndNestedInserts(t *testing.T) {
	t.Parallel()
	blocks := ` 0 BLOCK 2 HOLE 10 1 20 0 0 CIRCLE 8 0 10 10 20 0 40 1 0 ENDBLK
		0 BLOCK 2 PAIR 10 0 20 0 0 INSERT 8 0 2 HOLE 10 5 20 5 41 2 42 2 50 90 0 ENDBLK`
	entities := ` 0 INSERT 8 A 2 PAIR 10 100 20 50 41 3 42 3 50 -90
		0 INSERT 8 A 2 PAIR 10 0 20 0 41 -1 42 1
		0 INSERT 8 A 2 PAIR 10 300 20 0 50 90 70 2 44 40`
	drawing, problems := dxf.Read("inserts.dxf", drawingOf(blocks, entities), dxf.Options{})
	want := []dxf.Circle{
		{Centre: geometry.Point{X: 169, Y: 35}, DiameterMm: 12},
		{Centre: geometry.Point{X: -5, Y: 23}, DiameterMm: 4},
		{Centre: geometry.Point{X: 277, Y: 5}, DiameterMm: 4},
		{Centre: geometry.Point{X: 277, Y: 45}, DiameterMm: 4},
	}
	if len(drawing.Circles) != len(want) {
		t.Fatalf("%v, %s", drawing.Circles, said(problems).Error())
	}
	for i, c := range drawing.Circles {
		if c.Centre.Distance(want[i].Centre) > 1e-9 || math.Abs(c.DiameterMm-want[i].DiameterMm) > 1e-9 || c.Layer != "A" {
			t.Errorf("circle %d is %v, want %v on A", i, c, want[i])
		}
	}
}

func TestLayerCounts(t *testing.T) {
	t.Parallel()
	drawn := line(0, 0, 1, 0) + line(1, 0, 1, 1) + " 0 CIRCLE 8 HOLES 10 0 20 0 40 4"
	for asked, unread := range map[string]string{"": "", "HOLES": "EDGE"} {
		ask := dxf.Options{}
		if asked != "" {
			ask.Layers = []string{asked}
		}
		drawing, _ := dxf.Read("layers.dxf", drawingOf("", drawn), ask)
		want := fmt.Sprint([]dxf.LayerCount{{Name: "\"EDGE\"", Count: 2, Unread: unread == "EDGE"}, {Name: "\"HOLES\"", Count: 1}})
		if got := fmt.Sprint(drawing.Layers); got != want {
			t.Errorf("%q: %s, want %s", asked, got, want)
		}
	}
}
