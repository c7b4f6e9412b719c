package diagram_test

import (
	"testing"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
)

// texts returns the words of a drawing's numbers by fastener id, and its marks.
func texts(d diagram.Drawing) (words map[string]string, marks map[string][]scene.Shape, trails int) {
	words, marks = map[string]string{}, map[string][]scene.Shape{}
	for _, it := range d.Items {
		switch it := it.(type) {
		case scene.Text:
			if it.Tag.Role == scene.Number {
				words[it.Tag.Name] += it.Content
			}
		case scene.Shape:
			switch it.Tag.Role {
			case scene.Mark:
				marks[it.Tag.Name] = append(marks[it.Tag.Name], it)
			case scene.Trail:
				trails++
			}
		}
	}
	return words, marks, trails
}

// A blank drawing has no number, no path and no mark that shows where the order
// begins or ends. Its marks are large enough for a handwritten number.
func TestBlankMarks(t *testing.T) {
	t.Parallel()
	for name, points := range layouts() {
		p := planned(t, points, nil)
		d := diagram.Draw(diagram.Part{Plan: p, Show: diagram.Blank, Box: box})
		words, marks, trails := texts(d)
		if len(words) > 0 || trails > 0 || d.Path {
			t.Errorf("%s: %d numbers, %d trails, path %v", name, len(words), trails, d.Path)
		}
		if len(marks) != len(points) {
			t.Errorf("%s: %d marks for %d fasteners", name, len(marks), len(points))
		}
		for id, shapes := range marks {
			if len(shapes) != 1 || shapes[0].Fill != scene.White {
				t.Errorf("%s: mark %s has %d rings, filled %v", name, id, len(shapes), shapes[0].Fill)
			}
			// A digit written by hand needs about 8 mm: common practice, no source.
			if width := shapes[0].Path.Bounds().Width(); len(points) <= 10 && width < 8 {
				t.Errorf("%s: mark %s is %.1f mm wide", name, id, width)
			}
		}
	}
}

// Words replace the numbers, each at its own fastener, and nothing shows the
// order.
func TestWordsInsteadOfNumbers(t *testing.T) {
	t.Parallel()
	for name, points := range layouts() {
		if name == "hopeless" {
			continue
		}
		p := planned(t, points, nil)
		ids := diagram.IDs(p.Joint)
		d := diagram.Draw(diagram.Part{Plan: p, Show: diagram.Words, Words: ids, Box: box})
		words, marks, _ := texts(d)
		if d.Path {
			t.Errorf("%s: there are arrows", name)
		}
		left := map[int]bool{}
		for _, i := range d.Unplaced {
			left[i] = true
		}
		for i, id := range ids {
			if want := map[bool]string{false: id}[left[i]]; words[id] != want {
				t.Errorf("%s: %q stands at %s", name, words[id], id)
			}
			if len(marks[id]) != 1 || marks[id][0].Fill != scene.White {
				t.Errorf("%s: mark %s tells the order", name, id)
			}
		}
	}
}

// Long words do not shrink below the least height; they go outside their marks.
func TestLongWordsLeaveTheirMarks(t *testing.T) {
	t.Parallel()
	p := planned(t, geometry.Grid(12, 2, 60, 60, geometry.Point{}), nil)
	words := make([]string, 24)
	for i := range words {
		words[i] = "83 % of 120"
	}
	words[4] = "" // left out
	d := diagram.Draw(diagram.Part{Plan: p, Show: diagram.Words, Words: words, Box: box})
	if !d.Led {
		t.Error("a word of eleven letters stands in its mark")
	}
	got, _, _ := texts(d)
	if len(got)+len(d.Unplaced) != 23 {
		t.Errorf("%d words stand and %d are left out, of 23", len(got), len(d.Unplaced))
	}
	for _, it := range d.Items {
		if text, ok := it.(scene.Text); ok && text.Size*font.CapHeight < 2 {
			t.Errorf("%q is %.2f mm high", text.Content, text.Size*font.CapHeight)
		}
	}
}

// Unlike numbers, words have descenders. Outside their marks they must also
// clear what is below them.
func TestWordsOutsideTheirMarks(t *testing.T) {
	t.Parallel()
	led := 0
	for pitch := 11.0; pitch < 40; pitch += 1.3 {
		var points []geometry.Point
		for n := range 90 {
			points = append(points, geometry.Point{X: float64(n%10) * 45, Y: float64(n/10)*pitch + float64(n%3)*4})
		}
		p := planned(t, points, nil)
		d := diagram.Draw(diagram.Part{Plan: p, Show: diagram.Words, Words: diagram.IDs(p.Joint), Box: box})
		if d.Led {
			led++
		}
		page := scene.Page{Name: "words", Width: 210, Height: 297, Items: d.Items}
		for _, fault := range scenetest.CheckLayout(page) {
			t.Errorf("pitch %.1f: %s", pitch, fault)
		}
	}
	if led < 5 {
		t.Errorf("words stand outside their marks in %d drawings only", led)
	}
}

// First principles: a part whose edge is hidden by its marks cannot be
// recognized. Modest marks leave more of the edge visible than others.
func TestModestMarksLeaveThePart(t *testing.T) {
	t.Parallel()
	var frame []geometry.Point
	for k := range 7 {
		frame = append(frame, geometry.Point{X: float64(k) * 74, Y: 0}, geometry.Point{X: float64(k) * 74, Y: 200})
	}
	edge := func(j *geometry.Joint) {
		j.Outline = [][]geometry.Point{{{X: -15, Y: -15}, {X: 459, Y: -15}, {X: 459, Y: 215}, {X: -15, Y: 215}}}
	}
	p := planned(t, frame, edge)
	better := 0
	for wide := 60.0; wide <= 180; wide += 10 {
		ask := diagram.Part{Plan: p, Order: p.Loosen.Order, NoArrows: true, Box: scene.Box{Left: 12, Top: 40, Right: 12 + wide, Bottom: 40 + wide/2}}
		plain := diagram.Draw(ask)
		ask.Modest = true
		modest := diagram.Draw(ask)
		if modest.Hidden && !plain.Hidden {
			t.Errorf("%g mm wide: small marks hide the part, large ones do not", wide)
		}
		if plain.Hidden && !modest.Hidden {
			better++
		}
	}
	if better == 0 {
		t.Error("small marks never leave more of the part")
	}
}
