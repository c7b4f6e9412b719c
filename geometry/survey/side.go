package survey

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// Side says that the holes named above or below the level line decide the side
// by little: they lie near the line, and most of the others on the other side of
// it. Who named one by sight may have been wrong, and then the part is mirrored.
// Nil where they decide it well.
func (r Report) Side() []finding.Finding {
	const near = 0.2 // of how far the others lie on the other side
	side, named, way := "above", r.Above, 1.0
	if len(named) == 0 {
		side, named, way = "below", r.Below, -1
	}
	if len(named) == 0 || r.Straight {
		return nil
	}
	height := 0.0
	for _, h := range slices.Concat(r.Above, r.Below) {
		height = math.Max(height, math.Abs(r.Points[h].Y))
	}
	loose := r.WhyLoose()
	var of, against, far int
	furthest := 0.0
	for h, p := range r.Points {
		if loose[h] == Free || h == r.Level[0] || h == r.Level[1] {
			continue
		}
		of++
		if way*p.Y < 0 {
			against++
			if math.Abs(p.Y) > furthest {
				far, furthest = h, math.Abs(p.Y)
			}
		}
	}
	if 2*against <= of || height >= near*furthest {
		return nil
	}
	at := r.holes(named...)
	return []finding.Finding{finding.Warned(LopsidedSide, finding.Values{
		"side": side, "named": at.IDs, "against": against, "holes": of, "far": r.IDs[far],
	}).About(at)}
}

// WayRound says in which way the holes run round the part, in the order of
// their ids: the first ones of them that go round it one way, more than half of
// all and more than half of the turn. Nil where they do not.
func (r Report) WayRound() []finding.Finding {
	loose := r.WhyLoose()
	var at []geometry.Point
	for h, p := range r.Points {
		if loose[h] != Free {
			at = append(at, p)
		}
	}
	if len(at) < 3 || r.Straight {
		return nil
	}
	middle := geometry.Enclose(at).Centre
	total, run := 0.0, 1
	for k := 1; k < len(at); k++ {
		step := math.Remainder(at[k].AngleFrom(middle)-at[k-1].AngleFrom(middle), 360)
		if total*step < 0 || math.Abs(step) > 179 || math.Abs(total+step) > 361 {
			break
		}
		total, run = total+step, run+1
	}
	if math.Abs(total) <= 180 || 2*run <= len(at) {
		return nil
	}
	way := "anticlockwise"
	if total < 0 {
		way = "clockwise"
	}
	return []finding.Finding{finding.Noted(WayRound, finding.Values{"way": way, "first": r.IDs[0]})}
}

// WhyLoose says of the holes that are not fixed why not.
func (s Solution) WhyLoose() map[int]finding.Code {
	why := map[int]finding.Code{}
	for _, l := range s.Loose {
		why[l.Hole] = l.Why
	}
	return why
}
