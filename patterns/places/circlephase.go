package places

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// circlePhase warns of the bolt circle of a pipe flange that is turned: its holes straddle
// the centre lines, or lie on them (ASME B16.5 and EN 1092-1, from memory).
func (c check) circlePhase() {
	const fewest, toleranceDegrees = 8, 1.
	at := c.Joint.Points()
	if len(at) < fewest || len(at)%4 != 0 || !c.throughBolts() {
		return
	}
	middle := geometry.Centroid(at)
	radius, half := at[0].Distance(middle), 180/float64(len(at))
	phase := func(p geometry.Point) float64 { // from a centre line, less whole half pitches
		return math.Remainder(math.Atan2(p.Y-middle.Y, p.X-middle.X)*180/math.Pi, half)
	}
	off := phase(at[0])
	for _, p := range at {
		if math.Abs(p.Distance(middle)-radius) > toleranceMm || math.Abs(math.Remainder(phase(p)-off, half)) > toleranceDegrees/2 {
			return // no even circle
		}
	}
	if math.Abs(off) > toleranceDegrees {
		c.Warn(c.Fasteners[0], CircleTurned, finding.Values{"off": unit.Angle(math.Round(math.Abs(off)*10) / 10), "count": len(at)})
	}
}

// throughBolts reports whether all fasteners go through two flanges: each has a nut and
// no tapped hole.
func (c check) throughBolts() bool {
	for _, k := range c.Kinds {
		if k.NutAcross == 0 || k.Into != "" {
			return false
		}
	}
	return len(c.Kinds) > 0
}
