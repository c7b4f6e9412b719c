package geometry

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// joint has an example of everything, off centre.
func joint() Joint {
	return Joint{
		Fasteners: []Fastener{{ID: "M1", Kind: "main", At: Point{-95, 45}, Cast: 7}, {ID: "M2", Kind: "side", At: Point{0, -30}}},
		Clusters:  []Cluster{{Name: "cap 1", Of: []string{"M1", "M2"}, Unloaded: true}},
		Outline:   [][]Point{{{-120, 60}, {40, 60}, {40, -50}}, {{1, 2}, {3, 4}, {5, 0}}},
		Bores:     []Bore{{Centre: Point{-47, 3}, Diameter: 76, Label: "cyl 1"}},
		Dowels:    []Dowel{{Centre: Point{30, 50}, Diameter: 8}},
		Labels:    []Label{{Text: "EXHAUST SIDE", At: Point{0, -98}}},
		Stations:  []Station{{ID: "T1", At: Point{-160, 20}, Label: "in 1"}},
		Front:     FrontLeft,
	}
}

// The contract: mirror x swaps left and right. Every id, label and cast number
// stays with its part.
func TestMirrorLeftRight(t *testing.T) {
	want := Joint{
		Fasteners: []Fastener{{ID: "M1", Kind: "main", At: Point{95, 45}, Cast: 7}, {ID: "M2", Kind: "side", At: Point{0, -30}}},
		Clusters:  []Cluster{{Name: "cap 1", Of: []string{"M1", "M2"}, Unloaded: true}},
		Outline:   [][]Point{{{120, 60}, {-40, 60}, {-40, -50}}, {{-1, 2}, {-3, 4}, {-5, 0}}},
		Bores:     []Bore{{Centre: Point{47, 3}, Diameter: 76, Label: "cyl 1"}},
		Dowels:    []Dowel{{Centre: Point{-30, 50}, Diameter: 8}},
		Labels:    []Label{{Text: "EXHAUST SIDE", At: Point{0, -98}}},
		Stations:  []Station{{ID: "T1", At: Point{160, 20}, Label: "in 1"}},
		Front:     FrontRight,
	}
	given := joint()
	if diff := cmp.Diff(want, given.Mirrored(AxisX)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(joint(), given); diff != "" {
		t.Errorf("the given joint changed:\n%s", diff)
	}
}

func TestMirrorTopBottom(t *testing.T) {
	got := joint().Mirrored(AxisY)
	want := []Point{{-95, -45}, {0, 30}}
	if diff := cmp.Diff(want, got.Points()); diff != "" {
		t.Error(diff)
	}
	if got.Labels[0].At != (Point{0, 98}) || got.Outline[0][2] != (Point{40, 50}) {
		t.Errorf("label at %v, outline %v", got.Labels[0].At, got.Outline[0])
	}
}

func TestMirroredFront(t *testing.T) {
	tests := []struct{ front, x, y Front }{
		{FrontLeft, FrontRight, FrontLeft},
		{FrontRight, FrontLeft, FrontRight},
		{FrontTop, FrontTop, FrontBottom},
		{FrontBottom, FrontBottom, FrontTop},
		{FrontUnknown, FrontUnknown, FrontUnknown},
	}
	for _, tt := range tests {
		j := Joint{Front: tt.front}
		if x, y := j.Mirrored(AxisX).Front, j.Mirrored(AxisY).Front; x != tt.x || y != tt.y {
			t.Errorf("front %q: %q in x, %q in y; want %q, %q", tt.front, x, y, tt.x, tt.y)
		}
	}
}

// A mirror on no axis, or on an unknown one, changes nothing.
func TestNoMirror(t *testing.T) {
	for _, axis := range []Axis{NoAxis, "z"} {
		if diff := cmp.Diff(joint(), joint().Mirrored(axis)); diff != "" {
			t.Errorf("axis %q:\n%s", axis, diff)
		}
	}
}

// First principles: mirroring twice restores the original, and x and y together
// are half a turn.
func TestMirrorTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := joint()
		for _, p := range anyPoints(t, 0, 12) {
			j.Fasteners = append(j.Fasteners, Fastener{At: p})
		}
		j.Front = rapid.SampledFrom([]Front{FrontLeft, FrontRight, FrontTop, FrontBottom}).Draw(t, "front")
		for _, axis := range []Axis{AxisX, AxisY} {
			if diff := cmp.Diff(j, j.Mirrored(axis).Mirrored(axis)); diff != "" {
				t.Fatalf("twice in %s:\n%s", axis, diff)
			}
		}
		half := Mapped(j.Points(), func(p Point) Point { return p.Scale(-1) })
		if diff := cmp.Diff(half, j.Mirrored(AxisX).Mirrored(AxisY).Points()); diff != "" {
			t.Fatalf("x and y:\n%s", diff)
		}
	})
}

// A place on the axis keeps its zero: −0 prints as -0 and reverses directions.
func TestMirrorMakesNoMinusZero(t *testing.T) {
	j := Joint{Fasteners: []Fastener{{At: Point{0, 0}}}}
	for _, axis := range []Axis{AxisX, AxisY} {
		if p := j.Mirrored(axis).Fasteners[0].At; math.Signbit(p.X) || math.Signbit(p.Y) {
			t.Errorf("mirror %s: %v", axis, p)
		}
	}
}
