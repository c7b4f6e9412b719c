package contact

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/sequence/interaction/compliance"
)

// Deed is the action of a step on a fastener.
type Deed uint8

const (
	ToForce  Deed = iota // tighten to a force, as by torque
	ByTravel             // turn by a travel of the nut, as by angle; negative turns back
	Out                  // remove
)

// Action is one action on one fastener.
type Action struct {
	Fastener int
	Do       Deed
	ForceN   float64 // for ToForce
	TravelMm float64 // for ByTravel
	// Together is how many torques of the pass, from this one on, work at once; 0
	// for those that another one carries out, and for one alone.
	Together int
}

// Pass is the steps of one round.
type Pass []Action

// ToForces is a pass that tightens each fastener of the order to a share of its
// target.
func ToForces(order []int, targets []float64, share float64) Pass {
	pass := make(Pass, len(order))
	for s, i := range order {
		pass[s] = Action{Fastener: i, ForceN: share * targets[i]}
	}
	return pass
}

// AfterPass is the state of a joint after a pass, and what happened during it.
type AfterPass struct {
	ForcesN         []float64
	StepForcesN     [][]float64 // after each step
	StepLies        []Lie       // after each step; nil if the places are unknown
	LargestForceN   float64     // at any step, in any bolt
	LargestTiltMm   float64     // at any step
	LargestWarpMm   float64     // at any step
	LargestUnevenMm float64     // at any step
}

// Lie is the position of the part over its bolts, as measured by a Plane.
type Lie struct{ TiltMm, WarpMm, UnevenMm float64 }

// Work performs passes and returns the result of each. The places of the
// fasteners are needed for warp and unevenness; nil if unknown.
func (s *Nuts) Work(passes []Pass, at []geometry.Point) ([]AfterPass, error) {
	plane := PlaneThrough(at)
	list := make([]AfterPass, len(passes))
	for p, pass := range passes {
		after := &list[p]
		for k, step := range pass {
			if err := s.together(pass[k:min(k+step.Together, len(pass))]); err != nil {
				return nil, err
			}
			if err := s.Do(step); err != nil {
				return nil, err
			}
			after.add(s, at, plane)
		}
		after.ForcesN = s.Forces()
	}
	return list, nil
}

// ramps is the number of steps in which wrenches that work at once reach their
// torque. Bolts far apart gain a little from each other: it stays under a
// twentieth of that.
const ramps = 20

// together tightens several bolts in small steps, each in turn.
func (s *Nuts) together(group Pass) error {
	for ramp := 1; len(group) > 1 && ramp <= ramps; ramp++ {
		for _, step := range group {
			if err := s.Tighten(step.Fastener, step.ForceN*float64(ramp)/ramps); err != nil {
				return err
			}
		}
	}
	return nil
}

func (a *AfterPass) add(s *Nuts, at []geometry.Point, plane Plane) {
	a.StepForcesN = append(a.StepForcesN, s.Forces())
	a.LargestForceN = math.Max(a.LargestForceN, largest(s.force))
	if at != nil {
		closure := s.closureMm()
		lie := Lie{plane.Tilt(closure), plane.Warp(closure), Unevenness(closure)}
		a.StepLies = append(a.StepLies, lie)
		a.LargestTiltMm = math.Max(a.LargestTiltMm, lie.TiltMm)
		a.LargestWarpMm = math.Max(a.LargestWarpMm, lie.WarpMm)
		a.LargestUnevenMm = math.Max(a.LargestUnevenMm, lie.UnevenMm)
	}
}

// Do performs one step.
func (s *Nuts) Do(step Action) error {
	switch step.Do {
	case ToForce:
		return s.Tighten(step.Fastener, step.ForceN)
	case ByTravel:
		return s.Advance(step.Fastener, step.TravelMm)
	case Out:
		return s.Remove(step.Fastener)
	}
	return compliance.Misuse("action", int(step.Do), int(Out))
}

func SameBolts(a, b Pass) bool { return slices.Equal(boltsOf(a), boltsOf(b)) }

func boltsOf(p Pass) []int {
	list := make([]int, len(p))
	for k, step := range p {
		list[k] = step.Fastener
	}
	slices.Sort(list)
	return list
}

// SameFigures reports whether two passes tighten the same bolts to the same
// forces.
func SameFigures(a, b Pass) bool {
	return SameBolts(a, b) && IsTorque(a) == IsTorque(b) && math.Abs(a[0].ForceN-b[0].ForceN) <= 1e-9*b[0].ForceN
}

func IsTorque(p Pass) bool {
	return !slices.ContainsFunc(p, func(s Action) bool { return s.Do != ToForce })
}
