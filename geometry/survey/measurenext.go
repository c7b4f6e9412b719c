package survey

import (
	"maps"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// loose lists the holes that are not fixed, and what to measure next for each.
func loose(s Solution, used []Reading, core []bool, folded []fold) []Loose {
	measured := map[[2]int]bool{}
	for _, r := range used {
		measured[pair(r.From, r.To)] = true
	}
	plan := planner{at: s.Points, used: used, core: core, measured: measured, straight: s.Straight}
	byHole := map[int]*Loose{}
	for i := range s.Points {
		switch {
		case !core[i]:
			byHole[i] = &Loose{Hole: i, Why: Free}
		case s.Disputed[i] != nil:
			byHole[i] = &Loose{Hole: i, Why: Disputed}
		case s.ErrorsMm[i] > weakShare*s.ScatterMm:
			byHole[i] = &Loose{Hole: i, Why: Weak}
		}
	}
	for _, f := range folded {
		next := plan.telling(f)
		for _, h := range f.holes {
			if byHole[h] == nil {
				byHole[h] = &Loose{Hole: h, Why: TwoPlaces, Other: f.at[h], Next: next}
			}
		}
	}
	plan.fix(byHole)
	var all []Loose
	for _, hole := range slices.Sorted(maps.Keys(byHole)) {
		all = append(all, *byHole[hole])
	}
	return all
}

func pair(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }

type planner struct {
	at       []geometry.Point
	used     []Reading
	core     []bool
	measured map[[2]int]bool
	straight bool
}

// fix plans readings for the holes that are free or weak. A hole with fewer
// than two readings is measured to three fixed holes that are far apart, the
// third to decide between its two positions. All others get the readings that
// fix them best.
func (p planner) fix(loose map[int]*Loose) {
	degree := make([]int, len(p.at))
	for _, r := range p.used {
		degree[r.From]++
		degree[r.To]++
	}
	var hard []int
	for h := range p.at {
		l := loose[h]
		if l == nil || l.Why == TwoPlaces {
			continue
		}
		if degree[h] < 2 && l.Why == Free && !p.straight {
			for _, partner := range p.wide(h, loose) {
				if !p.measured[pair(h, partner)] {
					l.Next = append(l.Next, [2]int{h, partner})
				}
			}
		} else {
			hard = append(hard, h)
		}
	}
	if len(hard) > 0 {
		p.hold(hard, loose)
	}
}

// wide returns up to three fixed holes: the two furthest from each other, and
// the one furthest off their line. Holes that already have a reading to this
// one come first.
func (p planner) wide(hole int, loose map[int]*Loose) []int {
	var fixed []int
	for i := range p.at {
		if loose[i] == nil && p.core[i] {
			fixed = append(fixed, i)
		}
	}
	var a, b int
	longest := -1.0
	for _, u := range fixed {
		for _, v := range fixed {
			apart := p.at[u].Distance(p.at[v])
			if p.measured[pair(hole, u)] {
				apart *= 10
			}
			if u != v && apart > longest {
				a, b, longest = u, v, apart
			}
		}
	}
	if longest < 0 {
		return fixed
	}
	var third []int
	off := 0.0
	for _, c := range fixed {
		if d := p.at[c].Distance(reflected(p.at[c], p.at[a], p.at[b])); c != a && c != b && d > off+1e-6 {
			third, off = []int{c}, d
		}
	}
	return append([]int{a, b}, third...)
}

// hold adds readings one by one, each for the distance that is least certain so
// far, until the holes are fixed. A free motion counts as an uncertainty of one
// metre.
func (p planner) hold(hard []int, loose map[int]*Loose) {
	const doubt, held = 1e6, 4 * weakShare // mm² per squared accuracy; see cofactor
	stiff := newStiffness(p.at, p.used, p.straight)
	size := 2 * len(p.at)
	cofactor := mat.NewSymDense(size, nil)
	cofactor.CopySym(stiff.cofactor)
	if stiff.free != nil {
		var wide mat.SymDense
		wide.SymOuterK(doubt, stiff.free)
		cofactor.AddSym(cofactor, &wide)
	}
	taken := map[[2]int]bool{}
	for range 2 * len(hard) {
		best, worst := [2]int{-1, -1}, float64(held)
		for _, h := range hard {
			for i := range p.at {
				pr := pair(h, i)
				if i == h || p.measured[pr] || taken[pr] || loose[i] != nil && loose[i].Why == Free && !slices.Contains(hard, i) {
					continue
				}
				v := stiffness{at: p.at, cofactor: cofactor}.variance(Reading{From: h, To: i})
				// Of two that fix it equally well, prefer a hole that is fixed.
				if loose[i] != nil {
					v *= 0.5
				}
				if v > worst*(1+1e-9) {
					best, worst = [2]int{h, i}, v
				}
			}
		}
		if best[0] < 0 {
			return
		}
		taken[pair(best[0], best[1])] = true
		loose[best[0]].Next = append(loose[best[0]].Next, best)
		known(cofactor, Reading{From: best[0], To: best[1]}, p.at)
	}
}

// known reduces the cofactors for one more reading.
func known(cofactor *mat.SymDense, r Reading, at []geometry.Point) {
	size := cofactor.SymmetricDim()
	bar := mat.NewVecDense(size, nil)
	column, entry := row(r, at)
	for j, c := range column {
		bar.SetVec(c, entry[j])
	}
	var through mat.VecDense
	through.MulVec(cofactor, bar)
	cofactor.SymRankOne(cofactor, -1/(1+mat.Dot(bar, &through)), &through)
}

// telling returns the distance that differs most between two positions.
func (p planner) telling(f fold) [][2]int {
	best, most := [2]int{-1, -1}, 0.0
	for _, h := range f.holes {
		for i := range p.at {
			if slices.Contains(f.holes, i) || !p.core[i] || p.measured[pair(h, i)] {
				continue
			}
			if d := math.Abs(p.at[h].Distance(p.at[i]) - f.at[h].Distance(f.at[i])); d > most+1e-6 {
				best, most = [2]int{h, i}, d
			}
		}
	}
	if best[0] < 0 {
		return nil
	}
	return [][2]int{best}
}
