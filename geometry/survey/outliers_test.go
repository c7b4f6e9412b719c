package survey

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// Quantiles of Student's distribution, two-sided, with ten degrees of freedom for the
// stated accuracy: published tables (values from memory).
func TestCritical(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		readings, spare int
		want            float64
	}{{10, 5, 4.073}, {1, 10, 2.845}, {2, 2, 3.428}, {5, 20, 3.385}} {
		if got := critical(c.readings, c.spare); math.Abs(got-c.want) > 6e-4 {
			t.Errorf("%d readings, %d spare: %.4f, want %.3f", c.readings, c.spare, got, c.want)
		}
	}
}

// One length read n times: each reading is checked by 1 - 1/n of its error. The
// scatter pools the stated accuracy, which counts for ten readings, with the
// median (0.6745 standard deviations of a normal distribution).
func TestScatter(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 0)
	readings := func(residuals ...float64) []Reading {
		var all []Reading
		for _, v := range residuals {
			all = append(all, Reading{0, 1, 100 + v})
		}
		return all
	}
	typical := 0.5 / math.Sqrt(0.9) / 0.6745
	want := math.Sqrt((10*0.0025 + 9*typical*typical) / 19)
	same(t, "ten", scatter(places, readings(0, 0.9, -0.8, 0.1, 0.2, -0.3, 0.5, -0.4, 0.6, -0.7), 0.05), want)
	same(t, "none is under what is stated", scatter(places, readings(0.01, 0, 0.02), 0.05), 0.05)
	same(t, "one reading", scatter(places, readings(7), 0.05), 0.05)
	typical = 0.3 / math.Sqrt(0.5) / 0.6745
	same(t, "two", scatter(places, readings(0.3, 0.1), 0.05), math.Sqrt((10*0.0025+typical*typical)/11))
	// In a row of k steps with one reading from end to end, each is checked by
	// a share of 1/(k+1). Readings checked by 5 % or less are left out.
	for k, counts := range map[int]bool{18: true, 20: false} {
		row, along := []geometry.Point{{}}, []Reading{{0, k, float64(10*k) + 1}}
		for i := range k {
			row, along = append(row, geometry.Point{X: float64(10 * (i + 1))}), append(along, Reading{i, i + 1, 10.5})
		}
		if got := scatter(row, along, 0.05); (got > 0.05) != counts {
			t.Errorf("a row of %d steps: %g", k, got)
		}
	}
}

// The largest standardized residuals come first: six of them, and more if the
// next are nearly as large as the first. Readings checked by 1 % or less are
// not tried.
func TestCandidates(t *testing.T) {
	t.Parallel()
	// Places on a line, with a given variance for the distance from hole 0 to
	// hole i.
	checked := func(share ...float64) stiffness {
		s := stiffness{at: make([]geometry.Point, len(share)+1), cofactor: mat.NewSymDense(2*len(share)+2, nil)}
		for i, v := range share {
			s.at[i+1].X = 10
			s.cofactor.SetSym(2*i+2, 2*i+2, 1-v)
		}
		return s
	}
	read := func(residual ...float64) []Reading {
		var all []Reading
		for i, v := range residual {
			all = append(all, Reading{0, i + 1, 10 + v})
		}
		return all
	}
	s := checked(1, 1, 1, 1, 1, 1, 1, 1)
	if got := candidates(s.at, read(1, -8, 3, 7, -2, 6, 5, 4), s); !slices.Equal(got, []int{1, 3, 5, 6, 7, 2}) {
		t.Errorf("by size: %v", got)
	}
	if got := candidates(s.at, read(0.955, 1, 1, 1, 0.94, 1, 1, 1), s); !slices.Equal(got, []int{1, 2, 3, 5, 6, 7, 0}) {
		t.Errorf("seven nearly alike: %v", got)
	}
	s = checked(0.25, 1, 0.0095, 0.0105, 0)
	if got := candidates(s.at, read(1, 1.9, 1, 0.001, 5), s); !slices.Equal(got, []int{0, 1, 3}) {
		t.Errorf("by how far they are checked: %v", got)
	}
	if got := candidates(s.at, nil, s); len(got) != 0 {
		t.Errorf("none: %v", got)
	}
}

// The fit without one reading is the better of those from both starts.
func TestLeftOut(t *testing.T) {
	t.Parallel()
	readings := []Reading{{0, 1, 100}, {0, 1, 100.1}, {0, 1, 105}}
	// Without the last reading the mean is 100.05, and both are off by half the
	// accuracy of 0.1.
	same(t, "left out", leftOut(at(0, 0, 99, 0), at(0, 0, 102, 0), readings, 2, 0.1), 0.5)
	used, number := Solution{Out: []bool{false, true, false}}.used(readings)
	if !slices.Equal(used, []Reading{readings[0], readings[2]}) || !slices.Equal(number, []int{0, 2}) {
		t.Errorf("used %v, %v", used, number)
	}
}

// One length, read six times to 0.02 mm and once 1 mm off: only that one is
// left out. Two readings 1 mm apart do not show which is wrong, nor does a
// single one.
func TestSnoop(t *testing.T) {
	t.Parallel()
	read := func(distances ...float64) []Reading {
		var all []Reading
		for _, d := range distances {
			all = append(all, Reading{0, 1, d})
		}
		return all
	}
	for _, c := range []struct {
		name     string
		readings []Reading
		suspect  []int
	}{
		{"one out", read(100, 100.02, 99.98, 101, 100.01, 99.99, 100), []int{3}},
		{"two out", read(100, 100.02, 99.98, 101, 100.01, 99.99, 97, 100), []int{6, 3}},
		{"two against each other", read(100, 101), nil}, // the scatter is as large
		{"none", read(100, 100.05, 99.95), nil},
		{"nothing to check it", read(100), nil},
	} {
		s := snoop(at(0, 0, 100, 0), c.readings, 0.05)
		if !slices.Equal(slices.Sorted(slices.Values(s.Suspect)), slices.Sorted(slices.Values(c.suspect))) || s.Rivals {
			t.Errorf("%s: suspect %v, rivals %v", c.name, s.Suspect, s.Rivals)
		}
		for i, out := range s.Out {
			if out != slices.Contains(c.suspect, i) {
				t.Errorf("%s: reading %d out: %v", c.name, i, out)
			}
		}
		if !slices.Equal(s.Suspect, c.suspect) {
			t.Errorf("%s: the worst comes first, not %v", c.name, s.Suspect)
		}
	}
	// Two holes apart from the others, read twice with a difference of 1 mm:
	// either reading may be wrong.
	two := append(read(100, 100.02, 99.98, 100.01, 99.99, 100), Reading{2, 3, 50}, Reading{2, 3, 51})
	s := snoop(at(0, 0, 100, 0, 0, 50, 50.5, 50), two, 0.05)
	if !s.Rivals || !slices.Equal(slices.Sorted(slices.Values(s.Suspect)), []int{6, 7}) || slices.Contains(s.Out, true) {
		t.Errorf("two rivals: suspect %v, out %v", s.Suspect, s.Out)
	}
}
