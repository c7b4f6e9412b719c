package compliance

import (
	"errors"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/tension/strength"
)

// The stiffness of gaskets, in MPa/mm (engineering estimates; of fibre sheet and
// cork-rubber from the usual spans of data sheets, ASTM F36).
func TestStiffnessOfGaskets(t *testing.T) {
	t.Parallel()
	for gasket, want := range map[Gasket]bounds.Band{
		NoGasket: {}, "liquid sealant": {}, "O-ring": {}, MultiLayerSteel: {Low: 100, Nominal: 300, High: 1000}, Composite: {Low: 50, Nominal: 120, High: 250}, FibreSheet: {Low: 150, Nominal: 300, High: 600},
		ThickFibreSheet: {Low: 100, Nominal: 170, High: 330}, CorkRubber: {Low: 3, Nominal: 8, High: 15}, SpiralWound: {Low: 30, Nominal: 80, High: 200},
	} {
		if got, err := gasket.StiffnessMPaPerMm(); err != nil || got != want {
			t.Errorf("%s: %v, %v", gasket, got, err)
		}
	}
	if got, err := Gasket("felt").StiffnessMPaPerMm(); err == nil || got != (bounds.Band{}) {
		t.Errorf("felt: %v", got)
	}
	if got, err := ParseGasket("Paper"); err != nil || got != FibreSheet {
		t.Errorf("paper: %s, %v", got, err)
	}
	// In series: 1/k = 1/a + 1/b; bare faces are known within a factor of two,
	// in both directions.
	if got := FoundationMPaPerMm(bounds.Band{Low: 100, Nominal: 300, High: 600}, 300); got != (bounds.Band{Low: 75, Nominal: 150, High: 200}) {
		t.Errorf("on a block: %v", got)
	}
	if got := FoundationMPaPerMm(bounds.Band{}, 300); got != (bounds.Band{Low: 150, Nominal: 300, High: 600}) {
		t.Errorf("bare: %v", got)
	}
}

// Poisson's ratios (Shigley 9th ed., table A-5, rounded).
func TestPoissonsRatios(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]float64{
		"grey cast iron": 0.26, "ductile iron": 0.28, "Cast Aluminium": 0.33, "magnesium": 0.35, "titanium": 0.34, "brass": 0.32, "bronze": 0.35, "copper": 0.33, "steel": 0.30, "210 GPa": 0.30,
	} {
		if got := PartOf(strength.Material{Name: name, Elastic: 5}, 7); got.Poisson != want || got.Elastic != 5 || got.Thickness != 7 {
			t.Errorf("%s: %+v", name, got)
		}
	}
	p := Part{Elastic: 1200, Poisson: 0.5, Thickness: 2}
	if got := p.RigidityNmm(); math.Abs(got-1200*8/(12*0.75)) > 1e-9 {
		t.Errorf("rigidity %g", got)
	}
	if got := p.BendingNmm2(3); got != 1200*3*8/12 {
		t.Errorf("bending %g", got)
	}
	if got := CharacteristicLengthMm(16*81, 1); math.Abs(got-6) > 1e-9 {
		t.Errorf("reach %g", got)
	}
	if got := Facing(6, 3); got != 2 {
		t.Errorf("facing %g", got)
	}
}

// The ends of a row, in any listing order; in line within a tenth of the
// spacing.
func TestRowsAndCircles(t *testing.T) {
	t.Parallel()
	for _, deg := range []float64{0, 30, 90, 200, 270} {
		row := geometry.Row(4, 50, geometry.Point{X: 3, Y: 4}, deg)
		want := [2]geometry.Point{row[0], row[3]}
		if deg == 200 || deg == 270 {
			want = [2]geometry.Point{row[3], row[0]}
		}
		for range row {
			row = append(row[1:], row[0])
			if first, last := RowEnds(row); first.Distance(want[0]) > 1e-9 || last.Distance(want[1]) > 1e-9 {
				t.Errorf("at %g°: from %v to %v, want %v", deg, first, last, want)
			}
		}
	}
	if first, last := RowEnds([]geometry.Point{{X: 4, Y: 4}}); first != last || first.X != 4 {
		t.Errorf("one: %v to %v", first, last)
	}
	for off, want := range map[float64]bool{0: true, 4.9: true, 5.2: false} {
		if got := InLine([]geometry.Point{{}, {X: 50, Y: off}, {X: 100}, {X: 150}}); got != want {
			t.Errorf("%g mm off: in line %v", off, got)
		}
	}
	if InLine([]geometry.Point{{}}) || !InLine([]geometry.Point{{}, {X: 4}}) {
		t.Error("one place is no line, two are")
	}
	if !OnCircle(geometry.Circle(6, 100, geometry.Point{}, 0, true)) || OnCircle(geometry.Grid(3, 2, 50, 50, geometry.Point{})) {
		t.Error("round a circle")
	}
}

// Islands are connected by sides and corners; those without gasket are removed.
func TestIslands(t *testing.T) {
	t.Parallel()
	read := func(rows ...string) (cells [][]float64) {
		for _, row := range rows {
			var line []float64
			for _, r := range row {
				line = append(line, map[rune]float64{'.': 0, 'x': 1}[r])
			}
			cells = append(cells, line)
		}
		return cells
	}
	c := cellCover{part: read("xx..x", "..x..", ".....", "x..xx", ".x.xx"), gasket: read(".....", "..x..", ".....", ".....", "....x")}
	c.dropLoose()
	want := read("xx..x", "..x..", ".....", "...xx", "...xx")
	// The first two are connected to the third by a corner. The fifth in the
	// top row is not: it is two columns away.
	want[0][4] = 0
	for i := range want {
		if !slices.Equal(c.part[i], want[i]) {
			t.Errorf("row %d: %v, want %v", i, c.part[i], want[i])
		}
	}
	for _, from := range [][2]int{{0, 0}, {0, 1}, {1, 2}} {
		if got := c.island(from, map[[2]int]bool{}); len(got) != 3 {
			t.Errorf("from %v: %v", from, got)
		}
	}
}

// First principles: inside slanted paths, holes and bores, near an edge.
func TestRegions(t *testing.T) {
	t.Parallel()
	diamond := []geometry.Point{{X: 0, Y: -10}, {X: 10, Y: 0}, {X: 0, Y: 10}, {X: -10, Y: 0}}
	hole := []geometry.Point{{X: -2, Y: -2}, {X: 2, Y: -2}, {X: 2, Y: 2}, {X: -2, Y: 2}}
	in := Inside([][]geometry.Point{diamond, hole})
	for p, want := range map[geometry.Point]bool{{X: 4, Y: 5}: true, {X: -4, Y: 5}: true, {X: 4, Y: -5}: true, {X: -4, Y: -5}: true, {X: 6, Y: 6}: false, {X: -6, Y: 6}: false, {X: 6, Y: -6}: false, {X: -6, Y: -6}: false, {X: 1, Y: 1}: false, {X: 3, Y: 0}: true} {
		if got := in(p); got != want {
			t.Errorf("%v: inside %v", p, got)
		}
	}
	if got := FromEdge([][]geometry.Point{diamond, hole}, geometry.Point{X: 14, Y: 3}); math.Abs(got-5) > 1e-12 {
		t.Errorf("from the edge: %g", got)
	}
	if got := FromEdge([][]geometry.Point{diamond, hole}, geometry.Point{}); got != 2 {
		t.Errorf("from the hole: %g", got)
	}
	if got := distanceToEdge(geometry.Point{}, geometry.Point{}, geometry.Point{X: 3, Y: 4}); got != 5 {
		t.Errorf("from a point: %g", got)
	}
	bores := Bores([]geometry.Bore{{Centre: geometry.Point{X: 50}, Diameter: 10}})
	left := Region(nil).Without(bores).And(func(p geometry.Point) bool { return p.X < 60 })
	for p, want := range map[geometry.Point]bool{{X: 54.9}: false, {X: 55.1}: true, {X: 61}: false, {X: 50, Y: 5.1}: true} {
		if got := left(p); got != want {
			t.Errorf("%v: left %v", p, got)
		}
	}
	if part, gasket := cover(geometry.Box{Min: geometry.Point{X: 2, Y: 4}, Max: geometry.Point{X: 6, Y: 8}}, func(p geometry.Point) bool { return p.X < 4 }, func(p geometry.Point) bool { return p.Y > 7 }); part != 0.5 || gasket != 0.125 {
		t.Errorf("covered %g and %g", part, gasket)
	}
}

// A fastener outside the part is named, on each side of its box.
func TestOffThePart(t *testing.T) {
	t.Parallel()
	p := Plate{RigidityNmm: 1e6, Poisson: 0.3, Box: geometry.Box{Min: geometry.Point{X: 10, Y: 20}, Max: geometry.Point{X: 110, Y: 70}}}
	for at, want := range map[geometry.Point]bool{{X: 10, Y: 20}: true, {X: 110, Y: 70}: true, {X: 50, Y: 50}: true, {X: 9.9, Y: 50}: false, {X: 110.1, Y: 50}: false, {X: 50, Y: 19.9}: false, {X: 50, Y: 70.1}: false} {
		if err := p.check([]geometry.Point{{X: 50, Y: 50}, at}, 10); (err == nil) != want || err != nil && !errors.Is(err, OffThePart) {
			t.Errorf("%v: %v", at, err)
		}
	}
	for name, err := range map[string]error{"none": p.check(nil, 10), "no foundation": p.check([]geometry.Point{{X: 50, Y: 50}}, 0)} {
		if err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

// The automatic mesh: a third of the reach and of the narrowest place, a sixth
// of the pitch.
func TestUsualMesh(t *testing.T) {
	t.Parallel()
	box := geometry.Box{Max: geometry.Point{X: 60, Y: 40}}
	two := []geometry.Point{{}, {X: 24}}
	for _, c := range []struct {
		name  string
		p     Plate
		at    []geometry.Point
		reach float64 // of a load
		want  float64
	}{
		{"reach", Plate{Box: box}, two[:1], 9, 3}, {"pitch", Plate{Box: box}, two, 90, 4}, {"narrowest", Plate{Box: box, NarrowestMm: 7.5}, two, 90, 2.5},
		{"on each other", Plate{Box: box}, []geometry.Point{{}, {}}, 9, 3},
		{"too many cells", Plate{Box: geometry.Box{Max: geometry.Point{X: 6000, Y: 4000}}}, two, 9, math.Sqrt(6000 * 4000. / mostCells)},
	} {
		c.p.RigidityNmm = math.Pow(c.reach, 4)
		if got := c.p.usualMeshMm(c.at, 1); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// A load goes to the nearest node; of two equally near, to the first.
func TestNearestNode(t *testing.T) {
	t.Parallel()
	nodes := []float64{0, 10, 20, 40}
	for x, want := range map[float64]int{-3: 0, 0: 0, 4.9: 0, 5.1: 1, 10: 1, 14: 1, 29: 2, 31: 3, 40: 3, 77: 3} {
		if got := nearestNode(nodes, x); got != want {
			t.Errorf("%g: node %d, want %d", x, got, want)
		}
	}
}

// The harmonics of a ring, by solving the two equations of its energy instead
// of the closed form of their inverse.
func TestRingHarmonics(t *testing.T) {
	t.Parallel()
	r := Ring{RadiusMm: 120, BendingNmm2: 3e9, TorsionNmm2: 2e9, GasketOffsetMm: -11, BoltOffsetMm: 17, TwistN: 4e5}
	for _, n := range []float64{0, 1, 2, 5} {
		const k = 900.
		s := mat.NewSymDense(2, nil)
		add := func(stiffness, w, phi float64) {
			s.SetSym(0, 0, s.At(0, 0)+stiffness*w*w)
			s.SetSym(0, 1, s.At(0, 1)+stiffness*w*phi)
			s.SetSym(1, 1, s.At(1, 1)+stiffness*phi*phi)
		}
		add(3e9, -n*n/(120*120), 1./120)
		add(2e9, -n/(120*120), n/120)
		add(k, 1, -11)
		add(4e5, 0, 1)
		bolt := mat.NewVecDense(2, []float64{1, 17})
		var moved mat.VecDense
		if err := moved.SolveVec(s, bolt); err != nil {
			t.Fatal(err)
		}
		round := math.Pi * 120
		if n == 0 {
			round *= 2
		}
		if got, want := r.coefficient(n, k), mat.Dot(bolt, &moved)/round; math.Abs(got/want-1) > 1e-9 {
			t.Errorf("harmonic %g: %g, want %g", n, got, want)
		}
	}
	for i, want := range []float64{0, math.Pi / 2, math.Pi, -math.Pi / 2} {
		if got := anglesOf(geometry.Circle(4, 10, geometry.Point{X: 3, Y: 4}, 0, false), geometry.Point{X: 3, Y: 4})[i]; math.Abs(math.Remainder(got-want, 2*math.Pi)) > 1e-9 {
			t.Errorf("bolt %d: %g", i, got)
		}
	}
}

// Dimensions of a flange that do not fit, from both sides.
func TestFlangeMeasures(t *testing.T) {
	t.Parallel()
	good := Flange{Part: Part{Elastic: 2e5, Poisson: 0.3, Thickness: 20}, Outer: 200, Bore: 100, BoltCircle: 160}
	for _, c := range []struct {
		name  string
		spoil func(*Flange)
		want  error
	}{
		{"good", func(*Flange) {}, nil}, {"bore", func(f *Flange) { f.Bore = 0 }, NoFlange}, {"as large as the bore", func(f *Flange) { f.Outer = 100 }, NoFlange}, {"endless", func(f *Flange) { f.Outer = unit.Length(math.Inf(1)) }, NoFlange},
		{"circle at the bore", func(f *Flange) { f.BoltCircle = 100 }, CircleOff}, {"circle at the edge", func(f *Flange) { f.BoltCircle = 200 }, CircleOff}, {"circle inside", func(f *Flange) { f.BoltCircle = 101 }, nil},
		{"gasket", func(f *Flange) { f.GasketInner, f.GasketOuter = 110, 140 }, nil}, {"gasket to the edge", func(f *Flange) { f.GasketInner, f.GasketOuter = 110, 200 }, nil}, {"gasket beyond", func(f *Flange) { f.GasketInner, f.GasketOuter = 110, 201 }, GasketOff},
		{"gasket of no width", func(f *Flange) { f.GasketInner, f.GasketOuter = 110, 110 }, GasketOff}, {"gasket inside out", func(f *Flange) { f.GasketInner, f.GasketOuter = 140, 110 }, GasketOff},
	} {
		f := good
		c.spoil(&f)
		if err := f.check(); !errors.Is(err, c.want) && (c.want != nil || err != nil) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}
