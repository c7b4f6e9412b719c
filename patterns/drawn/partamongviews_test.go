package drawn_test

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
)

func box(x1, y1, x2, y2 float64) dxf.Path {
	return dxf.Path{Points: []geometry.Point{{X: x1, Y: y1}, {X: x2, Y: y1}, {X: x2, Y: y2}, {X: x1, Y: y2}}, Layer: "0"}
}

func holesAt(diameterMm float64, at ...float64) (all []dxf.Circle) {
	for i := 0; i < len(at); i += 2 {
		all = append(all, dxf.Circle{Centre: geometry.Point{X: at[i], Y: at[i+1]}, DiameterMm: diameterMm, Layer: "0"})
	}
	return all
}

func stadium(x, y, straight, width float64) dxf.Path {
	p := dxf.Path{Layer: "0"}
	for i := range 21 {
		sin, cos := math.Sincos(math.Pi * (float64(i)/20 - 0.5))
		p.Points = append(p.Points, geometry.Point{X: x + straight/2 + width/2*cos, Y: y + width/2*sin})
	}
	for i := range 21 {
		sin, cos := math.Sincos(math.Pi * (float64(i)/20 + 0.5))
		p.Points = append(p.Points, geometry.Point{X: x - straight/2 + width/2*cos, Y: y + width/2*sin})
	}
	return p
}

// The truth of each drawing is the plate of 120 × 80 mm with its four bolts, or
// what is said.
func TestPartAmongViews(t *testing.T) {
	t.Parallel()
	plate, bolts := box(40, 80, 160, 160), holesAt(9, 50, 90, 150, 90, 150, 150, 50, 150)
	frame, title := box(10, 10, 287, 200), box(187, 10, 287, 40)
	side, opening := box(190, 80, 210, 160), box(80, 100, 120, 140)
	round := append(holesAt(120, 100, 120), holesAt(9, 60, 120, 140, 120, 100, 160, 100, 80)...)
	for _, c := range []struct {
		name               string
		paths              []dxf.Path
		circles            []dxf.Circle
		texts              []dxf.Text
		outlines, fastener int
		width              float64
		said               []string
	}{
		{name: "alone", paths: []dxf.Path{plate, opening}, circles: bolts, outlines: 2, fastener: 4, width: 120},
		{name: "frame, title block, side view", paths: []dxf.Path{frame, title, side, plate, opening}, circles: bolts, outlines: 2, fastener: 4, width: 120,
			said: []string{"the rectangle of 277 × 190 mm is taken for the frame", "2 closed lines"}},
		{name: "two frames", paths: []dxf.Path{box(0, 0, 297, 210), frame, title, plate}, circles: bolts, outlines: 1, fastener: 4, width: 120,
			said: []string{"277 × 190", "1 closed line"}},
		{name: "side view beside it", paths: []dxf.Path{side, plate}, circles: bolts, outlines: 1, fastener: 4, width: 120, said: []string{"1 closed line"}},
		{name: "signs in the title block", paths: []dxf.Path{frame, title, plate}, circles: append(holesAt(6, 200, 20, 215, 20), bolts...), outlines: 1, fastener: 4, width: 120,
			said: []string{"1 closed line", "2 circles"}},
		{name: "frame with a text alone", paths: []dxf.Path{box(0, 40, 200, 200), plate}, circles: bolts, texts: []dxf.Text{{At: geometry.Point{X: 180, Y: 45}, Text: "Scale 1:1", Layer: "0"}}, outlines: 1, fastener: 4, width: 120,
			said: []string{"200 × 160"}},
		{name: "a step on a plate", paths: []dxf.Path{plate, box(44, 84, 156, 156)}, circles: bolts, outlines: 2, fastener: 4, width: 120},
		{name: "round part in a frame", paths: []dxf.Path{frame, title}, circles: round, outlines: 1, fastener: 4, width: 120, said: []string{"277 × 190", "1 closed line"}},
		{name: "two plates", paths: []dxf.Path{plate, box(170, 80, 280, 160)}, circles: append(holesAt(9, 180, 90, 270, 150), bolts...), outlines: 2, fastener: 6, width: 120,
			said: []string{"2 closed lines side by side"}},
		{name: "a lug outside", paths: []dxf.Path{plate}, circles: append(holesAt(9, 170, 120), bolts...), outlines: 1, fastener: 5, width: 120, said: []string{"1 fastener is outside the edge"}},
		{name: "a slot", paths: []dxf.Path{plate, stadium(100, 90, 11, 9)}, circles: bolts, outlines: 2, fastener: 4, width: 120, said: []string{"slot of 9.0 × 20.0 mm at x 100.0, y 90.0 mm"}},
	} {
		data := dxf.Write(dxf.Drawing{Paths: c.paths, Circles: c.circles, Texts: c.texts})
		draft, problems := drawn.Read(patterns.FromBytes("part.dxf", data), drawn.Options{})
		j, text := draft.Joint, said(problems).Error()
		if len(j.Outline) != c.outlines || len(j.Fasteners) != c.fastener || math.Abs(geometry.Bounds(j.Outline[0]).Width()-c.width) > 2*dxf.FlatMm { // curves are followed to that
			t.Errorf("%s: %d fasteners, outlines %v\n%s", c.name, len(j.Fasteners), j.Outline, text)
		}
		for _, want := range c.said {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not said in %s", c.name, want, text)
			}
		}
		if len(c.said) == 0 && len(problems) > 0 {
			t.Errorf("%s: %s", c.name, text)
		}
	}
}

// A hexagon, a rectangle and an ellipse are no slots.
func TestNoSlots(t *testing.T) {
	t.Parallel()
	curve := func(n int, a, b float64) (p dxf.Path) {
		p.Layer = "0"
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			p.Points = append(p.Points, geometry.Point{X: 100 + a*cos, Y: 120 + b*sin})
		}
		return p
	}
	for name, path := range map[string]dxf.Path{"hexagon": curve(6, 10, 10), "rectangle": box(90, 115, 110, 125), "ellipse": curve(40, 12, 6)} {
		data := dxf.Write(dxf.Drawing{Paths: []dxf.Path{box(40, 80, 160, 160), path}, Circles: holesAt(9, 50, 90, 150, 90, 150, 150, 50, 150)})
		if _, problems := drawn.Read(patterns.FromBytes("part.dxf", data), drawn.Options{}); len(problems) > 0 {
			t.Errorf("%s: %s", name, said(problems).Error())
		}
	}
}
