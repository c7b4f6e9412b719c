package diagram_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

var box = scene.Box{Left: 12, Top: 40, Right: 198, Bottom: 140}

// planned returns the plan of a joint of one kind.
func planned(t testing.TB, points []geometry.Point, change func(j *geometry.Joint)) plan.Plan {
	t.Helper()
	var j geometry.Joint
	for i, p := range points {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: fmt.Sprintf("M%d", i+1), Kind: "main", At: p})
	}
	if change != nil {
		change(&j)
	}
	p, err := plan.Build(plan.Input{Heading: plan.Heading{Title: "Part"}, Joint: j, Kinds: []plan.Kind{{Name: "main"}},
		Groups: []sequence.Group{{Way: sequence.Auto}}})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func draw(p plan.Plan) diagram.Drawing {
	return diagram.Draw(diagram.Part{Plan: p, Order: p.Tighten.Order, Box: box})
}

func scattered(n int, seed uint64) []geometry.Point {
	r := rand.New(rand.NewPCG(seed, 1))
	var points []geometry.Point
	for len(points) < n {
		p := geometry.Point{X: 700 * r.Float64(), Y: 400 * r.Float64()}
		free := true
		for _, q := range points {
			free = free && p.Distance(q) > 25
		}
		if free {
			points = append(points, p)
		}
	}
	return points
}

func layouts() map[string][]geometry.Point {
	return map[string][]geometry.Point{
		"one":       {{X: 3, Y: 4}},
		"two":       {{X: 3, Y: 4}, {X: 90, Y: 30}},
		"grid":      geometry.Grid(5, 2, 95, 90, geometry.Point{X: 31, Y: -9}),
		"row":       geometry.Row(7, 60, geometry.Point{}, 20),
		"upright":   geometry.Row(9, 60, geometry.Point{}, 90),
		"circle":    geometry.Circle(16, 240, geometry.Point{X: 10}, 90, true),
		"perimeter": geometry.Rectangle(7, 3, 396, 180, geometry.Point{}),
		"scattered": scattered(30, 4),
		"crowded":   scattered(110, 5),
		"hopeless":  geometry.Circle(400, 2000, geometry.Point{}, 90, true),
	}
}

// Nothing is drawn outside the box.
func TestDrawingStaysInItsBox(t *testing.T) {
	t.Parallel()
	room := box.Grown(0.5) // half a line width, and rounding
	all := layouts()
	for n, name := range slices.Sorted(maps.Keys(all)) {
		points := all[name]
		for k, front := range []geometry.Front{geometry.FrontUnknown, geometry.FrontLeft, geometry.FrontRight, geometry.FrontTop, geometry.FrontBottom} {
			if !testkit.Full() && (n+k)%5 > 0 {
				continue // one front each, in turn
			}
			p := planned(t, points, func(j *geometry.Joint) {
				j.Front = front
				// The outline runs through the outermost fasteners.
				b := geometry.Bounds(points)
				j.Outline = [][]geometry.Point{{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}}
			})
			for _, it := range draw(p).Items {
				var covered scene.Box
				switch it := it.(type) {
				case scene.Shape:
					covered = it.Path.Bounds()
				case scene.Text:
					covered = it.Box()
				}
				if !room.Holds(covered) {
					t.Errorf("%s, front %q: %+v leaves the box: %+v", name, front, it, covered)
				}
			}
		}
	}
}

// Every number is drawn once or listed as unplaced.
func TestEveryNumberStandsOnce(t *testing.T) {
	t.Parallel()
	for name, points := range layouts() {
		p := planned(t, points, nil)
		d := draw(p)
		seen := map[string]int{}
		for _, it := range d.Items {
			if text, ok := it.(scene.Text); ok && text.Tag.Role == scene.Number {
				seen[text.Content]++
			}
		}
		for _, i := range d.Unplaced {
			seen[strconv.Itoa(p.Tighten.Numbers()[i])]++
		}
		for n := 1; n <= len(points); n++ {
			if seen[strconv.Itoa(n)] != 1 {
				t.Errorf("%s: number %d stands %d times", name, n, seen[strconv.Itoa(n)])
			}
		}
	}
}

// An arrow runs from each number to the next, starts and ends clear of their
// marks, and crosses no other mark.
func TestArrowsJoinSuccessiveNumbers(t *testing.T) {
	t.Parallel()
	for name, points := range layouts() {
		p := planned(t, points, nil)
		d := draw(p)
		if !d.Path {
			continue
		}
		marks := map[string]scene.Box{}
		var lines []scene.Shape
		for _, it := range d.Items {
			s, ok := it.(scene.Shape)
			switch {
			case ok && s.Tag.Role == scene.Mark:
				marks[s.Tag.Name] = s.Path.Bounds()
			case ok && s.Tag.Role == scene.Trail && s.Stroke == scene.Accent:
				lines = append(lines, s)
			}
		}
		if len(lines) != len(points)-1 {
			t.Errorf("%s: %d arrows for %d numbers", name, len(lines), len(points))
			continue
		}
		for k, line := range lines {
			run := line.Path.Flatten()[0]
			from, to := p.Joint.Fasteners[p.Tighten.Order[k]].ID, p.Joint.Fasteners[p.Tighten.Order[k+1]].ID
			if gap := run[0].Distance(marks[from].Centre()) - marks[from].Width()/2; gap < 0.3 || gap > 2.5 {
				t.Errorf("%s: arrow %d starts %.1f mm from its mark", name, k+1, gap)
			}
			if gap := run[len(run)-1].Distance(marks[to].Centre()) - marks[to].Width()/2; gap < 2 || gap > 6 {
				t.Errorf("%s: arrow %d ends its line %.1f mm from its mark", name, k+1, gap)
			}
			for id, mark := range marks {
				for _, q := range run {
					if q.Distance(mark.Centre()) < mark.Width()/2 {
						t.Errorf("%s: arrow %d passes through %s", name, k+1, id)
					}
				}
			}
		}
	}
}

// Distances on the page are those of the part at one scale.
func TestTrueProportions(t *testing.T) {
	t.Parallel()
	points := geometry.Grid(5, 2, 95, 90, geometry.Point{})
	p := planned(t, points, nil)
	at := map[string]scene.Point{}
	for _, it := range draw(p).Items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
			at[s.Tag.Name] = s.Path.Bounds().Centre()
		}
	}
	across, down := at["M1"].Distance(at["M2"])/95, at["M1"].Distance(at["M6"])/90
	if math.Abs(across-down) > 1e-3 {
		t.Errorf("the scale is %.4f across and %.4f down", across, down)
	}
	if at["M1"].Y >= at["M6"].Y || at["M1"].X >= at["M2"].X {
		t.Error("the drawing is turned over")
	}
}

// The first number is filled, the last has two rings.
func TestFirstAndLast(t *testing.T) {
	t.Parallel()
	p := planned(t, layouts()["grid"], nil)
	first, last := p.Joint.Fasteners[p.Tighten.Order[0]].ID, p.Joint.Fasteners[p.Tighten.Order[9]].ID
	rings := map[string]int{}
	for _, it := range draw(p).Items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
			rings[s.Tag.Name]++
			if (s.Fill == scene.Black) != (s.Tag.Name == first) {
				t.Errorf("%s is filled %s", s.Tag.Name, s.Fill)
			}
		}
	}
	for id, n := range rings {
		if (n == 2) != (id == last) {
			t.Errorf("%s has %d rings", id, n)
		}
	}
}

// Above the limit there are no arrows, and no shading replaces them.
func TestManyNumbersHaveNoArrows(t *testing.T) {
	t.Parallel()
	d := draw(planned(t, geometry.Grid(8, 4, 60, 55, geometry.Point{}), nil))
	if d.Path {
		t.Error("32 numbers have arrows")
	}
	for _, it := range d.Items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark && s.Fill == scene.Shade {
			t.Fatal("a mark is shaded")
		}
	}
}

// Arrows join all numbers or none. They cross no number and stay on the part:
// inside its edge, and clear of bores and dowels.
func TestArrowsStayOnThePart(t *testing.T) {
	t.Parallel()
	row := []geometry.Point{{X: -120}, {X: -40}, {X: 40}, {X: 120}}
	square := geometry.Grid(2, 2, 120, 120, geometry.Point{})
	edge := func(x, y float64) [][]geometry.Point {
		return [][]geometry.Point{{{X: -x, Y: y}, {X: x, Y: y}, {X: x, Y: -y}, {X: -x, Y: -y}}}
	}
	for _, c := range []struct {
		name   string
		points []geometry.Point
		with   func(*geometry.Joint)
		arrows bool
	}{
		{"a row on a wide part", row, func(j *geometry.Joint) { j.Outline = edge(150, 80) }, true},
		{"a row on a strip, which arrows would leave", row, func(j *geometry.Joint) { j.Outline = edge(150, 15) }, false},
		{"a row with a bore on either side", row, func(j *geometry.Joint) {
			j.Outline = edge(150, 80)
			j.Bores = []geometry.Bore{{Centre: geometry.Point{Y: 42}, Diameter: 70}, {Centre: geometry.Point{Y: -42}, Diameter: 70}}
		}, false},
		{"a row with dowels between the bolts", row, func(j *geometry.Joint) {
			j.Outline = edge(150, 80)
			for _, x := range []float64{-80, 0, 80} {
				j.Dowels = append(j.Dowels, geometry.Dowel{Centre: geometry.Point{X: x}, Diameter: 70})
			}
		}, false},
		{"a square, on which they cross", square, func(j *geometry.Joint) { j.Outline = edge(110, 110) }, false},
	} {
		if d := draw(planned(t, c.points, c.with)); d.Path != c.arrows {
			t.Errorf("%s: arrows %v, want %v", c.name, d.Path, c.arrows)
		}
	}
}

// A word that does not fit is reported, not lost.
func TestDroppedLabelsAreNamed(t *testing.T) {
	t.Parallel()
	p := planned(t, layouts()["grid"], func(j *geometry.Joint) {
		j.Labels = []geometry.Label{{Text: "SIDE", At: geometry.Point{X: 0, Y: 0}}}
		for range 80 {
			j.Labels = append(j.Labels, geometry.Label{Text: strings.Repeat("a label that is far too long to find any room in this drawing at all ", 3), At: geometry.Point{}})
		}
	})
	if d := draw(p); len(d.Dropped) != 80 {
		t.Errorf("%d labels are named as dropped", len(d.Dropped))
	}
}

// caps is a row of bearing caps with two bolts each, with names in the bores.
func caps(t testing.TB, name string) plan.Plan {
	var points []geometry.Point
	for _, y := range []float64{55, -55} {
		for k := range 5 {
			points = append(points, geometry.Point{X: float64(k-2) * 96, Y: y})
		}
	}
	return planned(t, points, func(j *geometry.Joint) {
		for k := range 5 {
			j.Bores = append(j.Bores, geometry.Bore{Centre: geometry.Point{X: float64(k-2) * 96}, Diameter: 56, Label: fmt.Sprint(name, k+1)})
		}
	})
}

// A word is closer to what it names than to anything else with a name, however
// tight the space. A word without such a position is left out and reported.
func TestWordsStandByTheirOwn(t *testing.T) {
	t.Parallel()
	p := caps(t, "cap ")
	for _, b := range []scene.Box{box, {Left: 12, Top: 40, Right: 100, Bottom: 80}, {Left: 12, Top: 40, Right: 80, Bottom: 110}} {
		d := diagram.Draw(diagram.Part{Plan: p, Order: p.Tighten.Order, Box: b})
		marks := map[int]float64{} // middle of each column, by the numbers of its fasteners
		for _, it := range d.Items {
			if text, ok := it.(scene.Text); ok && text.Tag.Role == scene.Number {
				n, _ := strconv.Atoi(text.Content)
				marks[p.Tighten.Order[n-1]] = text.At.X
			}
		}
		placed := 0
		for _, it := range d.Items {
			text, ok := it.(scene.Text)
			if !ok || !strings.HasPrefix(text.Content, "cap ") {
				continue
			}
			placed++
			own, _ := strconv.Atoi(strings.TrimPrefix(text.Content, "cap "))
			for k := range 5 {
				if k != own-1 && math.Abs(text.At.X-marks[k]) < math.Abs(text.At.X-marks[own-1]) {
					t.Errorf("%v: %s stands nearer to cap %d", b, text.Content, k+1)
				}
			}
		}
		if placed+len(d.Dropped) != 5 {
			t.Errorf("%v: %d names placed and %d told of", b, placed, len(d.Dropped))
		}
	}
}
