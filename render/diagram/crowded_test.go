package diagram_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/sequence"
	"drawdown/sequence/plan"
	"drawdown/sequence/way"
)

// sheetOf is a paper with the box for a crowded part on a card.
type sheetOf struct {
	name          string
	width, height float64
	box           scene.Box
}

var sheets = func() []sheetOf {
	var all []sheetOf
	for _, p := range []struct {
		name                  string
		width, height, margin float64
	}{{"a3", 297, 420, 12}, {"a4", 210, 297, 12}, {"letter", 215.9, 279.4, 12}, {"a5", 148, 210, 10}} {
		const header, foot = 28, 38 // about as much as the header and footer of a card take
		all = append(all, sheetOf{p.name, p.width, p.height, scene.Box{
			Left: p.margin, Top: p.margin + header, Right: p.width - p.margin, Bottom: p.height - p.margin - foot,
		}})
	}
	return all
}()

// faults puts a drawing on its paper and returns what the layout check finds.
func (s sheetOf) faults(d diagram.Drawing) []string {
	return scenetest.CheckLayout(scene.Page{Name: s.name, Width: s.width, Height: s.height, Margin: s.box.Left, Items: d.Items})
}

func (s sheetOf) draw(p plan.Plan) diagram.Drawing {
	return diagram.Draw(diagram.Part{Plan: p, Order: p.Tighten.Order, Box: s.box})
}

// apart scatters points over a field, at least a distance from each other.
func apart(n int, seed uint64, width, height, least float64) []geometry.Point {
	r := rand.New(rand.NewPCG(seed, 9))
	var points []geometry.Point
	for tries := 0; len(points) < n && tries < 100*n; tries++ {
		p := geometry.Point{X: width * r.Float64(), Y: height * r.Float64()}
		free := true
		for _, q := range points {
			free = free && p.Distance(q) >= least
		}
		if free {
			points = append(points, p)
		}
	}
	return points
}

// crowds are crowded parts. All numbers of each must fit on A3, A4 and Letter,
// and on A5 if small is set.
var crowds = []struct {
	name   string
	points []geometry.Point
	small  bool
}{
	{"grid of 120", geometry.Grid(12, 10, 60, 55, geometry.Point{}), true},
	{"grid of 400", geometry.Grid(20, 20, 60, 55, geometry.Point{}), false},
	{"square grid of 400", geometry.Grid(20, 20, 50, 50, geometry.Point{}), false},
	{"circle of 120", geometry.Circle(120, 2000, geometry.Point{}, 90, true), true},
	{"circle of 200", geometry.Circle(200, 2000, geometry.Point{}, 90, true), true},
	{"circle of 300", geometry.Circle(300, 2000, geometry.Point{}, 90, true), false},
	{"circle of 400", geometry.Circle(400, 2000, geometry.Point{}, 90, true), false},
	{"perimeter of 120", geometry.Rectangle(40, 20, 2000, 1200, geometry.Point{}), true},
	{"perimeter of 200", geometry.Rectangle(60, 40, 2000, 1200, geometry.Point{}), false},
	{"upright perimeter of 200", geometry.Rectangle(40, 60, 1200, 2000, geometry.Point{}), false},
	{"row of 60", geometry.Row(60, 60, geometry.Point{}, 0), true},
	{"row of 120", geometry.Row(120, 60, geometry.Point{}, 0), false},
	{"scattered 120", apart(120, 1, 1000, 1000, 50), true},
	{"scattered 200", apart(200, 2, 1000, 1000, 40), true},
	{"scattered 400", apart(400, 3, 1000, 1000, 30), false},
	{"upright scattered 400", apart(400, 3, 1000, 1400, 30), false},
}

// ringwise numbers a part ring by ring. Four hundred scattered places are the
// most that Letter holds: with a few more three-digit numbers in a narrow spot,
// some do not fit.
func ringwise(t *testing.T, points []geometry.Point) plan.Plan {
	p := planned(t, points, nil)
	p.Tighten.Order = way.Places(points, way.Spiral, way.TurnDefault)
	p.Groups[0].Members = p.Tighten.Order
	return p
}

// Crowded parts hold all their numbers without layout faults. A plain run draws
// each on a third of the papers in turn.
func TestCrowdedPartsHoldTheirNumbers(t *testing.T) {
	t.Parallel()
	for n, c := range crowds {
		p := ringwise(t, c.points)
		for k, s := range sheets {
			if s.name == "a5" && !c.small || !testkit.Full() && (k+n)%3 > 0 {
				continue
			}
			d := s.draw(p)
			if n := len(d.Unplaced); n > 0 {
				t.Errorf("%s on %s: %d of %d numbers found no room", c.name, s.name, n, len(c.points))
			}
			for _, fault := range s.faults(d) {
				t.Errorf("%s on %s: %s", c.name, s.name, fault)
			}
		}
	}
}

// A mirrored part, and one whose fasteners are listed in another order, holds
// as many numbers.
func TestMirroredAndShuffled(t *testing.T) {
	t.Parallel()
	s := sheets[1]
	for _, c := range crowds {
		if len(c.points) > testkit.Samples(120, 200) {
			continue
		}
		p := planned(t, c.points, nil)
		want := len(s.draw(p).Unplaced)
		mirrored := p
		mirrored.Joint = p.Joint.Mirrored(geometry.AxisX)
		if got := len(s.draw(mirrored).Unplaced); got != want {
			t.Errorf("%s: %d numbers find no room, mirrored %d", c.name, want, got)
		}
		if got := len(s.draw(shuffled(p, 7)).Unplaced); got != want {
			t.Errorf("%s: %d numbers find no room, shuffled %d", c.name, want, got)
		}
	}
}

// shuffled lists the same fasteners, with the same numbers, in another order.
func shuffled(p plan.Plan, seed uint64) plan.Plan {
	to := rand.New(rand.NewPCG(seed, 2)).Perm(len(p.Joint.Fasteners))
	moved := func(order []int) []int {
		out := make([]int, len(order))
		for k, i := range order {
			out[k] = to[i]
		}
		return out
	}
	fasteners := make([]geometry.Fastener, len(to))
	for i, f := range p.Joint.Fasteners {
		fasteners[to[i]] = f
	}
	p.Joint.Fasteners = fasteners
	p.Tighten.Order = moved(p.Tighten.Order)
	groups := make([]plan.Group, len(p.Groups))
	for g, group := range p.Groups {
		group.Members = moved(group.Members)
		groups[g] = group
	}
	p.Groups = groups
	return p
}

// The same request gives the same drawing.
func TestDrawingIsTheSameAgain(t *testing.T) {
	t.Parallel()
	for _, c := range crowds[3:5] {
		p := planned(t, c.points, nil)
		a, b := fmt.Sprint(sheets[1].draw(p)), fmt.Sprint(sheets[1].draw(p))
		if a != b {
			t.Errorf("%s: drawn twice, it differs", c.name)
		}
	}
}

// Drawings of generated parts have no layout fault on any paper, in portrait or
// landscape. A plain run draws each on one paper in turn.
func TestGeneratedDrawings(t *testing.T) {
	t.Parallel()
	for seed := range testkit.Samples(36, 300) {
		family, p := generatedPart(t, uint64(seed))
		for k, s := range sheets {
			if !testkit.Full() && (k+int(seed)/6)%len(sheets) > 0 {
				continue // there are six families
			}
			req := diagram.Part{Plan: p, Order: p.Tighten.Order, Box: s.box}
			if seed%2 == 1 {
				req.Order, req.Beside = p.Loosen.Order, diagram.IDs(p.Joint)
			}
			for _, fault := range s.faults(diagram.Draw(req)) {
				t.Errorf("seed %d, %s of %d on %s: %s", seed, family, len(p.Joint.Fasteners), s.name, fault)
			}
		}
	}
}

// generatedPart makes a part of a family from a seed, with one to three kinds,
// bores, stations and words.
func generatedPart(t *testing.T, seed uint64) (family string, p plan.Plan) {
	r := rand.New(rand.NewPCG(seed, 11))
	families := []string{"grid", "circle", "perimeter", "row", "scattered", "rings"}
	family = families[int(seed)%len(families)]
	var points []geometry.Point
	switch family {
	case "grid":
		points = geometry.Grid(2+r.IntN(14), 1+r.IntN(9), 40+30*r.Float64(), 40+30*r.Float64(), geometry.Point{})
	case "circle":
		points = geometry.Circle(3+r.IntN(120), 800, geometry.Point{}, 360*r.Float64(), true)
	case "perimeter":
		points = geometry.Rectangle(2+r.IntN(40), 2+r.IntN(20), 900, 300+600*r.Float64(), geometry.Point{})
	case "row":
		points = geometry.Row(2+r.IntN(40), 50, geometry.Point{}, 90*float64(r.IntN(4)))
	case "scattered":
		points = apart(3+r.IntN(140), seed, 900, 600, 45)
	default:
		n := 6 + r.IntN(30)
		points = append(geometry.Circle(n, 700, geometry.Point{}, 90, true), geometry.Circle(n, 500, geometry.Point{}, 90, true)...)
	}
	kinds := []plan.Kind{{Name: "main"}, {Name: "side"}, {Name: "outer"}}[:1+r.IntN(3)]
	groups := make([]sequence.Group, 1)
	groups[0] = sequence.Group{Way: sequence.Auto}
	j := geometry.Joint{Front: []geometry.Front{geometry.FrontUnknown, geometry.FrontLeft, geometry.FrontTop}[r.IntN(3)]}
	for i, at := range points {
		kind := kinds[0]
		if r.IntN(4) == 0 {
			kind = kinds[r.IntN(len(kinds))]
		}
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: fmt.Sprintf("M%d", i+1), Kind: kind.Name, At: at})
	}
	b := geometry.Bounds(points)
	middle := b.Min.Add(b.Max).Scale(0.5)
	j.Bores = []geometry.Bore{{Centre: middle, Diameter: 60 * r.Float64(), Label: "bore"}}
	j.Labels = []geometry.Label{{Text: "EXHAUST SIDE", At: geometry.Point{X: middle.X, Y: b.Min.Y}}}
	j.Stations = []geometry.Station{{ID: "in 1", At: b.Min.Add(geometry.Point{X: 20, Y: 20})}}
	p, err := plan.Build(plan.Input{Heading: plan.Heading{Title: "Part"}, Joint: j, Kinds: kinds, Groups: groups})
	if err != nil {
		t.Fatal(err)
	}
	return family, p
}

// BenchmarkCrowded draws crowded parts and reports how many numbers did not
// fit.
func BenchmarkCrowded(b *testing.B) {
	for _, c := range append(crowds, struct {
		name   string
		points []geometry.Point
		small  bool
	}{"grid of 1000", geometry.Grid(40, 25, 60, 55, geometry.Point{}), false}) {
		p := planned(b, c.points, nil)
		b.Run(c.name, func(b *testing.B) {
			left := 0
			for b.Loop() {
				left = len(sheets[1].draw(p).Unplaced)
			}
			b.ReportMetric(float64(left), "unplaced")
		})
	}
}
