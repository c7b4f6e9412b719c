package survey

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// A free hole is measured to the two fixed holes furthest from each other, and
// to the one furthest off their line. Holes with a reading to it count tenfold.
func TestWide(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 0, 50, 30, 40, -20, 300, 300, 20, 0)
	core := []bool{true, true, true, true, false, true}
	p := planner{at: places, core: core, measured: map[[2]int]bool{}}
	if got := p.wide(4, nil); !slices.Equal(got, []int{0, 1, 2}) {
		t.Errorf("three: %v", got)
	}
	if got := p.wide(4, map[int]*Loose{1: {}}); !slices.Equal(got, []int{0, 2, 3}) {
		t.Errorf("hole 1 is loose: %v", got)
	}
	p.measured[pair(4, 5)] = true
	if got := p.wide(4, nil); !slices.Equal(got, []int{5, 1, 2}) {
		t.Errorf("it was measured to hole 5: %v", got)
	}
	p.core = []bool{true, true, false, false, false, true}
	p.measured = nil
	if got := p.wide(4, nil); !slices.Equal(got, []int{0, 1}) {
		t.Errorf("all fixed holes in one line: %v", got)
	}
	p.core = []bool{false, true, false, false, false, false}
	if got := p.wide(4, nil); !slices.Equal(got, []int{1}) {
		t.Errorf("one fixed hole: %v", got)
	}
}

// The distance that best distinguishes two positions: to a fixed hole, not yet
// measured.
func TestTelling(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 0, 50, 30, 50, 10, 50, 35)
	f := fold{holes: []int{3}, at: at(0, 0, 100, 0, 50, 30, 50, -10, 50, 35)}
	p := planner{at: places, core: inAll(5), measured: map[[2]int]bool{}}
	// 20 and 40 mm to hole 2, 25 and 45 mm to hole 4: a tie, so the first is
	// taken.
	if got := p.telling(f); !slices.Equal(got, [][2]int{{3, 2}}) {
		t.Errorf("%v", got)
	}
	p.measured[pair(2, 3)] = true
	if got := p.telling(f); !slices.Equal(got, [][2]int{{3, 4}}) {
		t.Errorf("hole 2 is measured: %v", got)
	}
	p.core = []bool{true, true, true, true, false}
	if got := p.telling(f); got != nil {
		t.Errorf("nothing tells them apart: %v", got)
	}
	f.at[3].X, p.measured = 60, map[[2]int]bool{}
	f.at[3].Y = 10
	// From hole 0 they are 50.99 and 60.83 mm off, from hole 1 50.99 and 41.23, from
	// hole 2 20 and 22.4.
	if got := p.telling(f); !slices.Equal(got, [][2]int{{3, 0}}) {
		t.Errorf("%v", got)
	}
	p.at, f = at(50, 10, 0, 0, 100, 0, 50, 30), fold{holes: []int{0}, at: at(50, -10, 0, 0, 100, 0, 50, 30)}
	if got := p.telling(f); !slices.Equal(got, [][2]int{{0, 3}}) {
		t.Errorf("the first hole: %v", got)
	}
}

// A free hole with fewer than two readings is planned to the fixed part. One
// with two is treated as weak; in a row all are.
func TestFix(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 0, 60, 80, 40, -50)
	triangle := between([2]int{0, 1}, [2]int{1, 2}, [2]int{0, 2})
	plan := func(readings []Reading, straight bool, loose map[int]*Loose) map[int]*Loose {
		p := planner{at: places, used: readings, core: []bool{true, true, true, false}, measured: map[[2]int]bool{}, straight: straight}
		for _, r := range readings {
			p.measured[pair(r.From, r.To)] = true
		}
		p.fix(loose)
		return loose
	}
	free := func() map[int]*Loose { return map[int]*Loose{3: {Hole: 3, Why: Free}} }
	if got := plan(triangle, false, free())[3].Next; !slices.Equal(got, [][2]int{{3, 0}, {3, 1}, {3, 2}}) {
		t.Errorf("no reading: %v", got)
	}
	for _, one := range []Reading{{3, 1, 1}, {1, 3, 1}} {
		if got := plan(append(slices.Clone(triangle), one), false, free())[3].Next; !slices.Equal(got, [][2]int{{3, 0}, {3, 2}}) && !slices.Equal(got, [][2]int{{3, 2}, {3, 0}}) {
			t.Errorf("one reading: %v", got)
		}
	}
	p := planner{at: at(40, -50, 0, 0, 100, 0, 60, 80), used: between([2]int{1, 2}, [2]int{2, 3}, [2]int{1, 3}, [2]int{0, 2}, [2]int{0, 2}), core: []bool{false, true, true, true}}
	first := map[int]*Loose{0: {Hole: 0, Why: Free}}
	if p.fix(first); len(first[0].Next) != 1 || first[0].Next[0][0] != 0 {
		t.Errorf("the first hole: %v", first[0].Next)
	}
	two := append(slices.Clone(triangle), Reading{3, 1, 1}, Reading{0, 3, 1})
	if got := plan(two, false, map[int]*Loose{3: {Hole: 3, Why: TwoPlaces}})[3].Next; got != nil {
		t.Errorf("two places: %v", got)
	}
	// A double reading of one distance leaves it free to turn: it needs one
	// that holds it.
	double := append(slices.Clone(triangle), Reading{3, 1, 1}, Reading{1, 3, 1})
	if got := plan(double, false, free())[3].Next; len(got) != 1 || got[0][0] != 3 || got[0][1] == 1 {
		t.Errorf("one distance twice: %v", got)
	}
	places = at(0, 0, 100, 0, 60, 0, 40, 0)
	if got := plan(triangle, true, free())[3].Next; len(got) != 1 {
		t.Errorf("along a row one reading holds it: %v", got)
	}
}

// One more reading of a distance with variance v leaves v / (1 + v) of it.
func TestKnown(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 30, 40, 60, 0)
	cofactor := mat.NewSymDense(6, nil)
	for i := range 6 {
		cofactor.SetSym(i, i, float64(i+1))
	}
	cofactor.SetSym(0, 3, 0.5)
	r := Reading{From: 0, To: 1}
	s := stiffness{at: places, cofactor: cofactor}
	before := s.variance(r)
	known(cofactor, r, places)
	same(t, "variance", s.variance(r), before/(1+before))
	if cofactor.At(4, 4) != 5 {
		t.Error("the third hole is not part of it")
	}
}
