package stiffness

import (
	"math"

	"drawdown/geometry/unit"
)

// turning is a bolt turned by an angle, also beyond yield.
type turning struct {
	pitchMm    float64
	resilience float64 // of bolt and members, mm/N
	plastic    plasticBolt
}

// shortening returns the total deformation of bolt and members, in mm.
func (t turning) shortening(force unit.Force) float64 {
	return float64(force)*t.resilience + t.plastic.stretch(force)
}

// angle returns the angle from one preload to another.
func (t turning) angle(from, to unit.Force) unit.Angle {
	return unit.Angle((t.shortening(to) - t.shortening(from)) / t.pitchMm * 360)
}

// reached is the state after a turn.
type reached struct {
	force     unit.Force
	neckingMm float64 // stretch of the place that necks
	breaks    bool    // force is then the greatest that the bolt bore
}

// fallWhileNecking is the share of its greatest load that a bolt has lost when
// it breaks (common practice, no source: EN 14399-3 counts the rotation until
// the load is back at 0.7 fub As, which is about that much).
const fallWhileNecking = 0.15

// turn returns the state after a turn from a preload.
func (t turning) turn(from unit.Force, by unit.Angle) reached {
	greatest := t.plastic.reaches(t.plastic.tensile)
	if from > greatest {
		return reached{greatest, t.plastic.neckingMm, true}
	}
	if by == 0 {
		return reached{force: from}
	}
	if beyond := by - t.angle(from, greatest); beyond > 0 {
		return t.neck(greatest, float64(beyond)/360*t.pitchMm)
	}
	low, high := from, greatest
	for range 200 { // bisection to the last bit; the angle increases with the force
		middle := (low + high) / 2
		if t.angle(from, middle) < by {
			low = middle
		} else {
			high = middle
		}
	}
	return reached{force: (low + high) / 2}
}

// neck follows the bolt beyond its greatest load: as the load falls, the
// elastic stretch of bolt and members goes into the place that necks.
func (t turning) neck(greatest unit.Force, shorteningMm float64) reached {
	left := 1 - t.springBack(greatest)
	if left <= 0 || shorteningMm/left >= t.plastic.neckingMm {
		return reached{greatest, t.plastic.neckingMm, true}
	}
	necking := shorteningMm / left
	return reached{greatest * unit.Force(1-fallWhileNecking*necking/t.plastic.neckingMm), necking, false}
}

// springBack returns the share of the necking caused by the elastic stretch of
// bolt and members alone; from 1 on the bolt snaps at its greatest load.
func (t turning) springBack(greatest unit.Force) float64 {
	return fallWhileNecking * float64(greatest) * t.resilience / t.plastic.neckingMm
}

// angleToBreak returns the angle at which the bolt breaks.
func (t turning) angleToBreak(from unit.Force) unit.Angle {
	greatest := t.plastic.reaches(t.plastic.tensile)
	necking := max(1-t.springBack(greatest), 0) * t.plastic.neckingMm
	return t.angle(from, greatest) + unit.Angle(necking/t.pitchMm*360)
}

// atLeast limits an angle to zero and above, against rounding.
func atLeast(a unit.Angle) unit.Angle { return unit.Angle(math.Max(float64(a), 0)) }
