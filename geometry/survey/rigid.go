package survey

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// stiffness describes which motions near the given places are held by the
// readings, taken as bars, and which are free.
type stiffness struct {
	at []geometry.Point
	// cofactor is the pseudo-inverse of the normal equations: the covariance of
	// the places for readings of accuracy 1, with the frame spread over all
	// holes.
	cofactor *mat.SymDense
	// free are the motions that change no reading, including those of the whole
	// part.
	free *mat.Dense
	rank int
}

// freeShare is the stiffness, relative to the stiffest motion, below which a
// motion is free.
const freeShare = 1e-10

// newStiffness decomposes the equations of the readings. If all holes are on a
// line along x, straight leaves out the motions across it.
func newStiffness(at []geometry.Point, readings []Reading, straight bool) stiffness {
	normal, _ := normalEquations(at, readings, nil)
	size := 2 * len(at)
	if straight {
		for i := 1; i < size; i += 2 {
			normal.SetSym(i, i, normal.At(i, i)+1)
		}
	}
	var eigen mat.EigenSym
	s := stiffness{at: at, cofactor: mat.NewSymDense(size, nil)}
	if !eigen.Factorize(normal, true) {
		return s
	}
	values := eigen.Values(nil) // ascending
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	free := 0
	for free < size && values[free] < freeShare*math.Max(1, values[size-1]) {
		free++
	}
	s.rank = size - free
	if straight {
		s.rank -= len(at)
	}
	if free > 0 {
		s.free = mat.DenseCopyOf(vectors.Slice(0, size, 0, free))
	}
	if free == size {
		return s
	}
	scaled := mat.DenseCopyOf(vectors.Slice(0, size, free, size))
	for j := free; j < size; j++ {
		f := 1 / math.Sqrt(values[j])
		for i := range size {
			scaled.Set(i, j-free, scaled.At(i, j-free)*f)
		}
	}
	s.cofactor.SymOuterK(1, scaled)
	return s
}

// variance is the variance of a distance, for readings of accuracy 1.
func (s stiffness) variance(r Reading) float64 {
	column, entry := row(r, s.at)
	sum := 0.0
	for j, c := range column {
		for k, d := range column {
			sum += entry[j] * entry[k] * s.cofactor.At(c, d)
		}
	}
	return sum
}

// checked is the share of an error of a reading that shows in its residual: 0
// if no other reading checks it, 1 if the others fix its distance (the
// redundancy number of Baarda, 1968).
func (s stiffness) checked(r Reading) float64 {
	return math.Min(1, math.Max(0, 1-s.variance(r)))
}

// linked reports whether the readings fix the distance between two holes: the
// free motions hardly change it.
func (s stiffness) linked(a, b int) bool {
	const slack = 1e-4
	if s.free == nil {
		return true
	}
	column, entry := row(Reading{From: a, To: b}, s.at)
	_, motions := s.free.Dims()
	sum := 0.0
	for m := range motions {
		v := 0.0
		for j, c := range column {
			v += entry[j] * s.free.At(c, m)
		}
		sum += v * v
	}
	return math.Sqrt(sum) < slack
}

// core returns the holes of the largest part that the readings hold together.
// Of equally large parts it prefers one with both level holes.
func (s stiffness) core(readings []Reading, level [2]int, straight bool) []bool {
	var core []bool
	largest := 0
	done := map[[2]int]bool{}
	for _, r := range readings {
		if done[[2]int{r.From, r.To}] {
			continue
		}
		body := s.body(r, straight)
		size := len(those(s.at, body))
		for _, o := range readings {
			if body[o.From] && body[o.To] {
				done[[2]int{o.From, o.To}] = true
			}
		}
		if size > largest || size == largest && body[level[0]] && body[level[1]] && !(core[level[0]] && core[level[1]]) {
			core, largest = body, size
		}
	}
	return core
}

// body grows the rigid part that contains a reading. A hole belongs to it if
// its distances from two of its holes, not on one line with it, are fixed.
func (s stiffness) body(base Reading, straight bool) []bool {
	in := make([]bool, len(s.at))
	in[base.From], in[base.To] = true, true
	members := []int{base.From, base.To}
	for before := 0; before < len(members); {
		before = len(members)
		for h := range s.at {
			if !in[h] && s.holds(members, h, straight) {
				in[h], members = true, append(members, h)
			}
		}
	}
	return in
}

func (s stiffness) holds(members []int, hole int, straight bool) bool {
	var held []int
	for _, m := range members {
		if !s.linked(m, hole) {
			continue
		}
		if straight {
			return true
		}
		for _, other := range held {
			u := Reading{From: hole, To: m}.direction(s.at)
			v := Reading{From: hole, To: other}.direction(s.at)
			if math.Abs(u.X*v.Y-u.Y*v.X) > 1e-3 {
				return true
			}
		}
		held = append(held, m)
	}
	return false
}

// errorsMm returns the standard error of each hole of the core: the root of the
// sum of the variances along x and y, with the frame spread over the core.
func errorsMm(at []geometry.Point, readings []Reading, core []bool, straight bool, accuracy float64) []float64 {
	number := make([]int, len(at))
	var places []geometry.Point
	for i, in := range core {
		number[i] = len(places)
		if in {
			places = append(places, at[i])
		}
	}
	var inside []Reading
	for _, r := range readings {
		if core[r.From] && core[r.To] {
			inside = append(inside, Reading{number[r.From], number[r.To], r.Distance})
		}
	}
	s := newStiffness(places, inside, straight)
	errors := make([]float64, len(at))
	for i, in := range core {
		if !in {
			errors[i] = math.Inf(1)
			continue
		}
		k := 2 * number[i]
		sum := math.Max(0, s.cofactor.At(k, k))
		if !straight {
			sum += math.Max(0, s.cofactor.At(k+1, k+1))
		}
		errors[i] = accuracy * math.Sqrt(sum)
	}
	return errors
}
