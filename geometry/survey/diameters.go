package survey

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// WrongDiameter is a stated diameter that does not fit the readings over the
// edges of its hole: they are all off alike.
type WrongDiameter struct {
	Hole   int
	FitsMm float64 // the diameter that fits
	// OrReading is set if one wrong reading would explain the others about as
	// well. Then the stated diameter is used.
	OrReading bool
}

const (
	// edgeReadings is the least number of readings over the edges of a hole
	// that can show that its diameter is wrong.
	edgeReadings  = 3
	triedHoles    = 4
	mostDiameters = 3 // wrong ones; with more, nothing is certain
)

// edge is how a reading changes with the diameter of one of its holes.
func (n Network) edge(reading, hole int) float64 {
	r := n.Readings[reading]
	if n.Ways == nil || r.From != hole && r.To != hole {
		return 0
	}
	return n.Ways[reading].OverCentre(1, 0)
}

// withDiameter returns the readings for a diameter that is larger than stated.
func (n Network) withDiameter(hole int, largerMm float64) []Reading {
	readings := slices.Clone(n.Readings)
	for i := range readings {
		readings[i].Distance -= n.edge(i, hole) * largerMm
	}
	return readings
}

// correctDiameters finds the stated diameters that do not fit, and returns the
// network with readings that do. A diameter is wrong if that explains the
// readings much better than one wrong reading; the last one may be in doubt.
func (n Network) correctDiameters(start []geometry.Point, accuracy float64) (Network, []WrongDiameter) {
	var wrong []WrongDiameter
	if n.Diameters == nil || n.Ways == nil {
		return n, nil
	}
	for len(wrong) < mostDiameters {
		w, ok := n.wrongDiameter(start, accuracy)
		if !ok {
			break
		}
		wrong = append(wrong, w)
		if w.OrReading {
			break
		}
		n.Readings = n.withDiameter(w.Hole, w.FitsMm-n.Diameters[w.Hole])
		start = robust(start, n.Readings, accuracy)
	}
	return n, wrong
}

func (n Network) wrongDiameter(start []geometry.Point, accuracy float64) (w WrongDiameter, ok bool) {
	at := adjust(start, n.Readings, nil, fully)
	stiff := newStiffness(at, n.Readings, false)
	spare := len(n.Readings) - stiff.rank - 1
	before := squares(at, n.Readings, accuracy)
	if spare < 2 || before < float64(spare) {
		return w, false
	}
	after := math.Inf(1)
	holes := n.holesOffAlike(at)
	for _, h := range holes[:min(len(holes), triedHoles)] {
		larger, cost := n.fitDiameter(at, h, accuracy)
		if cost < after && n.Diameters[h]+larger > 0 {
			w, after = WrongDiameter{Hole: h, FitsMm: n.Diameters[h] + larger}, cost
		}
	}
	scale := math.Max(1, (trust+after)/float64(trust+spare))
	if math.IsInf(after, 1) || math.Sqrt((before-after)/scale) < critical(len(holes), spare) {
		return w, false
	}
	for _, i := range candidates(at, n.Readings, stiff) {
		switch without := leftOut(start, at, n.Readings, i, accuracy); {
		case without < after-rivalSquares*scale:
			return w, false
		case without < after+rivalSquares*scale:
			w.OrReading = true
		}
	}
	return w, true
}

// holesOffAlike returns the holes with readings over their edges, those whose
// residuals are most alike first.
func (n Network) holesOffAlike(at []geometry.Point) []int {
	type alike struct {
		hole int
		by   float64
	}
	var all []alike
	for h := range n.Holes {
		sum, count := 0.0, 0.0
		for i, r := range n.Readings {
			if e := n.edge(i, h); e != 0 {
				sum, count = sum+math.Copysign(1, e)*r.residual(at), count+1
			}
		}
		if count >= edgeReadings {
			all = append(all, alike{h, math.Abs(sum) / math.Sqrt(count)})
		}
	}
	slices.SortStableFunc(all, func(a, b alike) int { return cmp.Compare(b.by, a.by) })
	var holes []int
	for _, a := range all {
		holes = append(holes, a.hole)
	}
	return holes
}

// fitDiameter returns how much larger than stated the diameter of a hole is
// that fits best, and the squares of that fit. The squares are nearly a
// parabola, whose vertex is found in two rounds.
func (n Network) fitDiameter(at []geometry.Point, hole int, accuracy float64) (largerMm, cost float64) {
	fit := func(larger float64) float64 {
		readings := n.withDiameter(hole, larger)
		return squares(adjust(at, readings, nil, fully), readings, accuracy)
	}
	for _, step := range []float64{1, 0.1} {
		low, middle, high := fit(largerMm-step), fit(largerMm), fit(largerMm+step)
		if bend := low - 2*middle + high; bend > 0 {
			largerMm += step * (low - high) / 2 / bend
		}
	}
	return largerMm, fit(largerMm)
}
