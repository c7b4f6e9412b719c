package screw

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// waistOfCore is the diameter of a waisted shank in minor diameters of the
// thread: VDI 2230-1, table A2, dT = 0.9 d3 (value from memory).
const waistOfCore = 0.9

// Shanks outside these diameters of the thread are mistyped (common practice,
// no source: waists of 0.65 to 0.75 d, fitted shanks slightly above d).
const leastShank, mostShank = 0.5, 2

// CheckShank reports a shank that cannot be one of a bolt with the thread.
func CheckShank(t thread.Thread, shank unit.Length) error {
	least, most := unit.Length(leastShank*t.MajorMm), unit.Length(mostShank*t.MajorMm)
	if !(shank >= least && shank <= most) {
		return finding.Failed(ShankRange, finding.Values{"diameter": shank, "thread": t.Name, "least": least, "most": most})
	}
	return nil
}

func (s *Completed) settleShank(b Bolt) error {
	s.Shank = b.Shank
	if b.Shank == 0 {
		return nil
	}
	return CheckShank(b.Thread, b.Shank)
}

// LeastDiameter returns the diameter of the smallest section of a bolt: that of
// the stress area of the thread, or of the shank if it is slimmer.
func LeastDiameter(t thread.Thread, shank unit.Length) unit.Length {
	ofThread := unit.Length(t.StressDiameterMm())
	if shank > 0 {
		return min(shank, ofThread)
	}
	return ofThread
}

// Least returns the diameter of the smallest section.
func (s Completed) Least() unit.Length { return LeastDiameter(s.Thread, s.Shank) }

// Waist returns the usual diameter of a waisted shank for the thread.
func Waist(t thread.Thread) unit.Length {
	return unit.Length(math.Round(waistOfCore*t.MinorDiameterMm()*10) / 10)
}

// preloadAt returns the preload at which the smallest section uses the share of
// a stress.
func (s Completed) preloadAt(share float64, stress unit.Stress, threadFriction float64) unit.Force {
	return PreloadAtYieldShare(share, stress, s.Thread, s.Least(), threadFriction, s.Equation)
}

func areaMm2(diameter unit.Length) float64 { return math.Pi / 4 * float64(diameter*diameter) }
