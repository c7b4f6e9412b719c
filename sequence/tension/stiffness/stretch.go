package stiffness

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
)

// Stretching is a bolt in its grip, for the preload of a measured stretch and
// the stretch of a preload. A stretch is between the ends of the bolt, elastic
// and permanent, from the untightened bolt on.
type Stretching struct {
	Joint Joint
	Aim   unit.Force // of the bolt, at nominal friction

	bolt            screw.Completed
	grip            completedGrip
	stiff, yielding Resilience // ends of the range
}

// The range of what a stretch depends on.
const (
	modulusRange = 0.025 // 200 to 210 GPa (common practice, no source: steels of bolts)
	endsRange    = 0.3   // of what head and engaged thread add: common practice, no source; the rules of the trade are half the head and half the nut, VDI 2230 has 0.5 d each
)

// Stretch prepares a bolt for stretches. The error says what is missing or does
// not fit, and what is allowed.
func Stretch(b screw.Bolt, g Grip) (Stretching, error) {
	s, err := screw.Complete(b)
	if err != nil {
		return Stretching{}, err
	}
	held, err := completeGrip(s, g)
	if err != nil {
		return Stretching{}, err
	}
	r := Stretching{Joint: held.stiffness(s), Aim: s.AimAt(s.Friction.Thread.Nominal), bolt: s, grip: held}
	ends, between := held.ends(s.Thread, s.HeadForm), held.between(s.Thread)
	r.stiff = (ends*(1-endsRange) + between) / (1 + modulusRange)
	r.yielding = (ends*(1+endsRange) + between) / (1 - modulusRange)
	if g.shapeOpen(s) { // thread over the whole grip stretches more than a plain shank
		threaded := held
		threaded.shank, threaded.freeThread = nil, held.thickness
		r.yielding = (ends*(1+endsRange) + threaded.between(s.Thread)) / (1 - modulusRange)
	}
	return r, nil
}

// shapeOpen reports that neither the length of the thread nor the shank is
// stated.
func (g Grip) shapeOpen(s screw.Completed) bool {
	return !g.FullThread && g.Thread == 0 && len(g.Shank) == 0 && s.Shank == 0
}

// OfPreload returns the stretch at a preload that the bolt was turned to, over
// the range of lengths and modulus.
func (r Stretching) OfPreload(force unit.Force, threadFriction float64) (least, nominal, most unit.Length) {
	lasting := unit.Length(r.grip.plastic(r.bolt, threadFriction).stretch(force))
	of := func(by Resilience) unit.Length { return unit.Length(float64(force)*float64(by)) + lasting }
	return of(r.stiff), of(r.Joint.Elongation), of(r.yielding)
}

// Preload returns the preload at a stretch, over the same range.
func (r Stretching) Preload(stretch unit.Length) (least, nominal, most unit.Force, err error) {
	longest := r.Longest()
	if !(stretch > 0 && stretch <= longest) {
		return 0, 0, 0, finding.Failed(StretchRange, finding.Values{"stretch": stretch, "most": longest})
	}
	return r.preloadAt(stretch, r.yielding), r.preloadAt(stretch, r.Joint.Elongation), r.preloadAt(stretch, r.stiff), nil
}

// Longest returns the stretch at the greatest preload.
func (r Stretching) Longest() unit.Length {
	_, longest, _ := r.OfPreload(r.greatest(), r.friction())
	return unit.Length(math.Floor(float64(longest)*100) / 100)
}

// Yields returns the preload at which the bolt begins to yield.
func (r Stretching) Yields() unit.Force {
	p := r.grip.plastic(r.bolt, r.friction())
	return p.reaches(p.yield)
}

// AtYield returns the stretch at which the bolt begins to yield.
func (r Stretching) AtYield() unit.Length {
	_, stretch, _ := r.OfPreload(r.Yields(), r.friction())
	return stretch
}

// YieldUsed returns the share of the yield stress at a preload that the bolt was
// turned to.
func (r Stretching) YieldUsed(force unit.Force) float64 {
	return r.bolt.YieldShare(force, r.friction())
}

// Grown returns how much the bolt between its ends grows when it is so much
// warmer than at its first measurement, in kelvin.
func (r Stretching) Grown(kelvin float64) unit.Length {
	d := unit.Length(r.bolt.Thread.MajorMm)
	return unit.Length(r.bolt.Strength.Expansion()*kelvin) * (r.grip.thickness + 2*d)
}

func (r Stretching) friction() float64 { return r.bolt.Friction.Thread.Nominal }

func (r Stretching) greatest() unit.Force {
	p := r.grip.plastic(r.bolt, r.friction())
	return p.reaches(p.tensile)
}

// preloadAt finds the preload by bisection to the last bit: the stretch grows
// with it.
func (r Stretching) preloadAt(stretch unit.Length, by Resilience) unit.Force {
	plastic := r.grip.plastic(r.bolt, r.friction())
	low, high := unit.Force(0), r.greatest()
	for range 200 {
		middle := (low + high) / 2
		if float64(middle)*float64(by)+plastic.stretch(middle) < float64(stretch) {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
