package truesize_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/render/scene"
	"drawdown/render/sheet/tile"
	"drawdown/render/sheet/truesize"
	"drawdown/render/words"
)

// spotsAt makes a round spot at each place, with a number and an id.
func spotsAt(p *truesize.Plate, radius float64, points []geometry.Point) []truesize.Spot {
	var spots []truesize.Spot
	for k, at := range points {
		c := p.At(at)
		spots = append(spots, truesize.Spot{
			Name: fmt.Sprintf("S%d", k), At: c, Inner: radius,
			Edge:  scene.Shape{Path: scene.Circle(c.X, c.Y, radius), Stroke: scene.Black, Width: 0.4},
			Large: fmt.Sprint(k + 1), Small: fmt.Sprintf("S%d (%d)", k, k+1),
		})
	}
	return spots
}

// numbers returns the large words and their positions.
func numbers(p *truesize.Plate) map[string]scene.Text {
	found := map[string]scene.Text{}
	for _, piece := range p.Drawing.Pieces {
		for _, it := range piece.Items {
			if t, ok := it.(scene.Text); ok && t.Tag.Role == scene.Number {
				found[piece.Name] = t
			}
		}
	}
	return found
}

// A large word is in the middle of a spot that can hold it 3 mm high, and
// beside a smaller one.
func TestLargeWordInsideOrBeside(t *testing.T) {
	points := []geometry.Point{{X: 0, Y: 0}, {X: 80, Y: 0}}
	for _, c := range []struct {
		radius float64
		inside bool
	}{{8, true}, {4, true}, {2.5, false}, {1, false}} {
		p := truesize.New(geometry.Joint{}, 1, words.English(), tile.Seams{})
		p.Spots(spotsAt(p, c.radius, points))
		for name, text := range numbers(p) {
			at := p.At(points[0])
			if name == "S1" {
				at = p.At(points[1])
			}
			far := math.Hypot(text.Box().Centre().X-at.X, text.Box().Centre().Y-at.Y)
			if inside := far < 0.6; inside != c.inside {
				t.Errorf("radius %g: the number of %s stands %.1f mm from the middle", c.radius, name, far)
			}
		}
		if len(numbers(p)) != 2 || len(p.Drawing.NoRoom) > 0 {
			t.Errorf("radius %g: %d numbers, no room for %q", c.radius, len(numbers(p)), p.Drawing.NoRoom)
		}
	}
}

// Where spots are too crowded for words, some of the words are listed, and none
// overlaps another.
func TestNoRoom(t *testing.T) {
	var points []geometry.Point
	for k := range 400 {
		points = append(points, geometry.Point{X: float64(k%20) * 5, Y: float64(k/20) * 5})
	}
	p := truesize.New(geometry.Joint{}, 1, words.English(), tile.Seams{})
	p.Spots(spotsAt(p, 2.4, points))
	var boxes []scene.Box
	for _, piece := range p.Drawing.Pieces {
		for _, it := range piece.Items {
			if text, ok := it.(scene.Text); ok {
				for _, b := range boxes {
					if b.Meets(text.Box().Grown(-0.02)) {
						t.Fatalf("%q covers another word", text.Content)
					}
				}
				boxes = append(boxes, text.Box())
			}
		}
	}
	notes := truesize.Notes(p.Drawing.NoRoom, words.English())
	if len(notes) != 1 || !strings.Contains(notes[0], "words do not fit: ") || !strings.HasSuffix(notes[0], " more") || len(notes[0]) > 150 {
		t.Errorf("notes %q", notes)
	}
}

// A part without an outline gets a line around its fasteners, at one distance
// from all at the edge (first principles).
func TestOwnEdge(t *testing.T) {
	joint := geometry.Joint{Fasteners: []geometry.Fastener{{At: geometry.Point{X: 0, Y: 0}}, {At: geometry.Point{X: 100, Y: 0}}, {At: geometry.Point{X: 30, Y: 60}}}}
	p := truesize.New(joint, 2, words.English(), tile.Seams{})
	if n := len(p.Drawing.Lines); n != 1 || p.Drawing.Lines[0].Dash == 0 {
		t.Fatalf("%d lines; the edge is dashed: %v", n, p.Drawing.Lines)
	}
	for _, run := range p.Drawing.Lines[0].Path.Flatten() {
		for _, q := range run {
			nearest := math.Inf(1)
			for i := range joint.Fasteners {
				nearest = math.Min(nearest, distance(p.At(joint.Fasteners[i].At), p.At(joint.Fasteners[(i+1)%3].At), q))
			}
			if math.Abs(nearest-10) > 0.02 { // 20 mm of the part, reduced to half
				t.Fatalf("the edge is %.3f mm from the hull at %.2f", nearest, q)
			}
		}
	}
}

// distance is that of q from the segment between a and b.
func distance(a, b, q scene.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	f := ((q.X-a.X)*dx + (q.Y-a.Y)*dy) / (dx*dx + dy*dy)
	f = math.Max(0, math.Min(1, f))
	return math.Hypot(q.X-a.X-f*dx, q.Y-a.Y-f*dy)
}

// The word FRONT and its arrow are beside the part, on the stated side.
func TestFront(t *testing.T) {
	for side, out := range map[geometry.Front]scene.Point{
		geometry.FrontLeft: {X: -1}, geometry.FrontRight: {X: 1}, geometry.FrontTop: {Y: -1}, geometry.FrontBottom: {Y: 1},
	} {
		p := truesize.New(geometry.Joint{Outline: [][]geometry.Point{{{X: -50, Y: -20}, {X: 50, Y: -20}, {X: 50, Y: 20}, {X: -50, Y: 20}}}, Front: side}, 1, words.English(), tile.Seams{})
		p.Words()
		if len(p.Drawing.Words) != 1 {
			t.Fatalf("%s: %d words", side, len(p.Drawing.Words))
		}
		b := p.Drawing.Words[0].Bounds()
		c := b.Centre()
		if along := c.X*out.X + c.Y*out.Y; along < 20 || math.Abs(c.X*out.Y)+math.Abs(c.Y*out.X) > 1 {
			t.Errorf("%s: the arrow stands at %.1f", side, c)
		}
		if b.Meets(scene.Box{Left: -50, Top: -20, Right: 50, Bottom: 20}) {
			t.Errorf("%s: the arrow lies on the part", side)
		}
	}
}
