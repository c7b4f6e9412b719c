package diagram_test

import (
	"testing"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/scene"
)

// Relook changes the named mark and its number. It leaves everything else, and
// the original drawing, as they are.
func TestRelook(t *testing.T) {
	t.Parallel()
	p := planned(t, geometry.Grid(5, 2, 95, 90, geometry.Point{}), nil)
	first, last := p.Joint.Fasteners[p.Tighten.Order[0]].ID, p.Joint.Fasteners[p.Tighten.Order[9]].ID
	before := draw(p).Items
	after := diagram.Relook(before, map[string]diagram.Look{
		first: {Fill: scene.White, Ink: scene.Black}, last: {Fill: scene.Black, Ink: scene.White},
	})
	for k := range before {
		switch was := before[k].(type) {
		case scene.Shape:
			now := after[k].(scene.Shape)
			switch {
			case was.Tag.Role == scene.Mark && was.Tag.Name == first && (was.Fill != scene.Black || now.Fill != scene.White):
				t.Errorf("the first mark is %v and becomes %v", was.Fill, now.Fill)
			case was.Fill != now.Fill && was.Tag.Name != first && was.Tag.Name != last:
				t.Errorf("the shape of %q changes", was.Tag.Name)
			}
		case scene.Text:
			now := after[k].(scene.Text)
			if want := map[string]scene.Ink{first: scene.Black, last: scene.White}[was.Tag.Name]; want != scene.None && now.Ink != want {
				t.Errorf("the number of %s is in ink %v, want %v", was.Tag.Name, now.Ink, want)
			}
		}
	}
	blacks := 0
	for _, it := range after {
		if s, ok := it.(scene.Shape); ok && s.Tag.Name == last && s.Fill == scene.Black {
			blacks++
		}
	}
	if blacks != 1 {
		t.Errorf("%d shapes of the last mark are black: its second ring stays white", blacks)
	}
}
