package head

import (
	"maps"
	"slices"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

// sizesOf lists the metric sizes of a table, smallest first.
func sizesOf[T any](table map[float64]T) []float64 { return slices.Sorted(maps.Keys(table)) }

// rises checks that a face increases with the thread, and clears the usual
// hole.
func rises(t *testing.T, what string, faces map[float64]unit.Length) {
	t.Helper()
	var last unit.Length
	for _, d := range sizesOf(faces) {
		face := faces[d]
		if hole := mediumHoles[d]; face <= last || hole == 0 || face <= hole {
			t.Errorf("%s M%g: face %v after %v, hole %v", what, d, face, last, hole)
		}
		last = face
	}
}

// ISO 4762, table 1 (values from memory): the face is smaller than the least
// head diameter dk, by h13 of ISO 286-1, by an edge that increases with the
// head.
func TestSocketFacesFitTheirHeads(t *testing.T) {
	head := map[float64]unit.Length{3: 5.5, 4: 7, 5: 8.5, 6: 10, 8: 13, 10: 16, 12: 18, 14: 21, 16: 24, 20: 30, 24: 36, 30: 45, 36: 54, 42: 63, 48: 72, 56: 84, 64: 96}
	h13 := func(dk unit.Length) unit.Length {
		for _, step := range [][2]unit.Length{{6, 0.18}, {10, 0.22}, {18, 0.27}, {30, 0.33}, {50, 0.39}, {80, 0.46}} {
			if dk <= step[0] {
				return step[1]
			}
		}
		return 0.54
	}
	if len(head) != len(socketFace) {
		t.Fatalf("%d heads, %d faces", len(head), len(socketFace))
	}
	const dust = 1e-9
	edge := unit.Length(0.25)
	for _, d := range sizesOf(head) {
		least := head[d] - h13(head[d])
		if got := least - socketFace[d]; got < edge-dust || got > 1.2+dust {
			t.Errorf("M%g: face %v on a head of at least %v: edge %v after %v", d, socketFace[d], least, got, edge)
		} else {
			edge = got
		}
	}
	rises(t, "socket", socketFace)
}

// ISO 4162, table 1 (values from memory): the face is 2.0 to 2.2 mm smaller
// than the greatest flange diameter dc; it is wider than that of the plain
// hexagon, so that a flange needs no washer.
func TestFlangeFacesFitTheirFlanges(t *testing.T) {
	flange := map[float64]unit.Length{5: 11.4, 6: 13.6, 8: 17, 10: 20.8, 12: 24.7, 14: 28.6, 16: 32.8}
	if len(flange) != len(flangeFace) {
		t.Fatalf("%d flanges, %d faces", len(flange), len(flangeFace))
	}
	for d, dc := range flange {
		face := flangeFace[d]
		if edge := dc - face; edge < 2-1e-9 || edge > 2.2+1e-9 {
			t.Errorf("M%g: face %v on a flange of %v", d, face, dc)
		}
		if hexagon := BearingFace(metricAcross[d], false); face <= hexagon*1.2 {
			t.Errorf("M%g: a flange of %v after a hexagon of %v", d, face, hexagon)
		}
	}
	rises(t, "flange", flangeFace)
}

// ISO 7089: washers increase with the thread, fit over it, and extend beyond
// the bearing face of a hexagon head. The least outer diameters are values from
// memory of its tables 1 and 2.
func TestWashersFitTheirBolts(t *testing.T) {
	var last WasherSize
	for _, d := range sizesOf(normalWashers) {
		w := normalWashers[d]
		if w.Hole <= last.Hole || w.Outer <= last.Outer || w.Thickness < last.Thickness {
			t.Errorf("M%g: %v after %v", d, w, last)
		}
		if float64(w.Hole) <= d || w.Hole > mediumHoles[d] || w.leastOuter() >= w.Outer {
			t.Errorf("M%g: %v, least outer %v, part's hole %v", d, w, w.leastOuter(), mediumHoles[d])
		}
		face := BearingFace(metricAcross[d], false)
		if spread := w.spread(face); face >= w.leastOuter() || face <= w.Hole || spread <= face || spread > w.leastOuter() {
			t.Errorf("M%g: a head of %v on %v, spread to %v", d, face, w, spread)
		}
		last = w
	}
	if len(normalWashers) != len(metricAcross) {
		t.Errorf("%d washers for %d heads", len(normalWashers), len(metricAcross))
	}
	for d, want := range map[float64]unit.Length{3: 6.64, 5: 9.64, 8: 15.57, 10: 19.48, 12: 23.48, 20: 36.38, 30: 55.26, 36: 64.8, 42: 76.8, 48: 90.6, 56: 103.6} {
		tensiontest.Near(t, "least outer", float64(normalWashers[d].leastOuter()), float64(want), 1e-9)
	}
}

// Values from memory of the named standards.
func TestHeadFaces(t *testing.T) {
	for _, c := range []struct {
		thread   string
		form     Form
		face     unit.Length
		standard string
	}{
		{"M10", Hexagon, 14.63, "ISO 4014 M10"},
		{"M10", Socket, 15.33, "ISO 4762 M10"},
		{"M10x1.25", Socket, 15.33, "ISO 4762 M10"}, // fine pitch, the same head
		{"M10", Flange, 18.7, "ISO 4162 M10"},
		{"3/8-16", Hexagon, 0.9 * 9 * 25.4 / 16, "ASME B18.2.1 3/8 in"},
	} {
		face, standard, err := Face(tensiontest.Thread(t, c.thread), c.form)
		if err != nil || standard != c.standard {
			t.Errorf("%s %s: %q, %v", c.thread, c.form, standard, err)
		}
		tensiontest.Near(t, c.thread, float64(face), float64(c.face), 1e-9)
	}
}
