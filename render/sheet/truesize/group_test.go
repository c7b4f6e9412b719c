package truesize_test

import (
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/render/scene"
	"drawdown/render/sheet/tile"
	"drawdown/render/sheet/truesize"
	"drawdown/render/words"
)

// A cap is drawn as a line at one distance from the segment between its two
// bolts. Its name is inside, with an arrowhead whose tip is nearest to the
// front.
func TestGroup(t *testing.T) {
	members := []geometry.Point{{X: 0, Y: 30}, {X: 0, Y: -30}}
	for side, way := range map[geometry.Front]scene.Point{
		geometry.FrontLeft: {X: -1}, geometry.FrontRight: {X: 1}, geometry.FrontTop: {Y: -1}, geometry.FrontBottom: {Y: 1},
	} {
		p := truesize.New(geometry.Joint{Front: side, Outline: [][]geometry.Point{{{X: -60, Y: -60}, {X: 60, Y: -60}, {X: 60, Y: 60}, {X: -60, Y: 60}}}}, 1, words.English(), tile.Seams{})
		g := truesize.Group{Name: "cap 1", Members: members, Reach: 12}
		before := len(p.Drawing.Lines)
		p.Outline(g)
		for _, run := range p.Drawing.Lines[before].Path.Flatten() {
			for _, q := range run {
				if far := distance(p.At(members[0]), p.At(members[1]), q); math.Abs(far-12) > 0.02 {
					t.Fatalf("%s: the line is %.3f mm from the bolts, want 12", side, far)
				}
			}
		}
		p.Name(g)
		word := p.Drawing.Words[len(p.Drawing.Words)-1]
		if !(scene.Box{Left: -12, Top: -30, Right: 12, Bottom: 30}).Holds(word.Bounds()) {
			t.Errorf("%s: the name lies at %.1f", side, word.Bounds())
		}
		for _, it := range word.Items {
			arrow, ok := it.(scene.Shape)
			if !ok {
				continue
			}
			b := arrow.Path.Bounds()
			// The tip of an arrowhead is one corner, the base two.
			tips := 0
			for _, s := range arrow.Path[:3] {
				if along := (s.P[0].X-b.Centre().X)*way.X + (s.P[0].Y-b.Centre().Y)*way.Y; along > 0.5 {
					tips++
				}
			}
			if tips != 1 {
				t.Errorf("%s: %d corners of the arrow head lie to the front", side, tips)
			}
		}
		if len(word.Items) != 2 {
			t.Errorf("%s: the name has no arrow", side)
		}
	}
}

// A view without a front has its top marked, above the part.
func TestTopMark(t *testing.T) {
	p := truesize.New(geometry.Joint{Outline: [][]geometry.Point{{{X: -50, Y: -20}, {X: 50, Y: -20}, {X: 50, Y: 20}, {X: -50, Y: 20}}}}, 1, words.English(), tile.Seams{})
	p.Words()
	if len(p.Drawing.Words) != 1 || p.Drawing.Words[0].Name != "TOP of the view" || p.Drawing.Words[0].Bounds().Bottom > -20 {
		t.Errorf("words %v", p.Drawing.Words)
	}
}

// No word is set across a seam: in a spot, beside it, on the part (first
// principles: what is on both sides of a cut is cut).
func TestWordsBesideSeams(t *testing.T) {
	points := []geometry.Point{{X: 0, Y: 0}, {X: 80, Y: 0}}
	for x := -14.0; x <= 14; x++ {
		seams := tile.Seams{X: []float64{x}}
		p := truesize.New(geometry.Joint{Labels: []geometry.Label{{Text: "EXHAUST", At: geometry.Point{X: 2, Y: 40}}}}, 1, words.English(), seams)
		p.Spots(spotsAt(p, 8, points))
		p.Words()
		for _, piece := range append(p.Drawing.Pieces, p.Drawing.Words[1:]...) { // the first is the mark of the top
			for _, it := range piece.Items {
				if text, ok := it.(scene.Text); ok && text.Box().Left < x && x < text.Box().Right {
					t.Errorf("a seam at %g cuts %q", x, text.Content)
				}
			}
		}
		if len(p.Drawing.NoRoom) > 0 {
			t.Errorf("a seam at %g: no room for %q", x, p.Drawing.NoRoom)
		}
	}
}
