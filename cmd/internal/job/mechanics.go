package job

import (
	"fmt"
	"io"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/patterns/problem"
	"drawdown/patterns/wrenches"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/wrench"
)

// TorqueRequest is one fastener and what is asked of it. Zero values are not
// stated.
type TorqueRequest struct {
	Kind   string         // name of the kind in its pattern
	Bolt   screw.Bolt     // with its aim
	Torque unit.Torque    // that is set, to work backwards from; goes in place of the aim
	Grip   stiffness.Grip // no layers: the joint is not known
	Insert *strength.Insert
	Snug   unit.Torque
	Angle  unit.Angle // on from Snug
}

// TorqueAnswer is all that is worked out about a fastener.
type TorqueAnswer struct {
	TorqueRequest
	Result     screw.Result
	ProofUsed  float64               // nominal preload over proof load
	Least      unit.Force            // that may be left where the friction was stated without a span
	Alpha      float64               // tightening factor of Least
	Turned     *stiffness.Turned     // nil without a snug torque
	Joint      *stiffness.Joint      // nil without a grip
	Settlement *stiffness.Settlement // the same, and where the bolt breaks
	Stripping  *strength.Stripping   // nil where the tapped part is not known
	Engaged    unit.Length           // of Stripping; 0: only the length needed is told
	Greatest   unit.Force            // preload that threads and bearing face are judged by
	Pressure   head.Pressure         // Limit 0: the material under the head is not stated
	Under      string                // the material under the head, as written

	Notes, Assumptions, Sources []string // of all of it, each once
}

// ByAngle says that the bolt is tightened by an angle in the end.
func (a TorqueAnswer) ByAngle() bool { return a.Turned != nil && a.Angle > 0 }

// WorkOutTorque answers a request. The error says what is missing or does not
// fit, and what is allowed.
func WorkOutTorque(ask TorqueRequest) (TorqueAnswer, error) {
	a := TorqueAnswer{TorqueRequest: ask}
	for _, step := range []func() error{a.torque, a.turn, a.joint, a.threads, a.pressure} {
		if err := step(); err != nil {
			return TorqueAnswer{}, err
		}
	}
	a.Notes, a.Assumptions, a.Sources = onceEach(a.Notes), onceEach(a.Assumptions), onceEach(a.Sources)
	return a, nil
}

func (a *TorqueAnswer) add(notes, assumptions, sources []string) {
	a.Notes = append(a.Notes, notes...)
	a.Assumptions = append(a.Assumptions, assumptions...)
	a.Sources = append(a.Sources, sources...)
}

func onceEach(lines []string) []string {
	var kept []string
	for _, line := range lines {
		if !slices.Contains(kept, line) {
			kept = append(kept, line)
		}
	}
	return kept
}

func (a *TorqueAnswer) torque() error {
	var err error
	if a.Torque != 0 {
		a.Result, err = screw.AtTorque(a.Bolt, a.Torque)
		a.Bolt.ProofShare, a.Bolt.Preload, a.Bolt.YieldShare = 0, 0, screw.UsualYieldShare
	} else {
		a.Result, err = screw.Target(a.Bolt)
	}
	if err != nil {
		return err
	}
	r := a.Result
	if r.Nominal.Breaks() {
		return a.tooMuch()
	}
	a.ProofUsed = float64(r.Nominal.Borne / r.ProofLoad)
	a.add(nil, r.Assumptions, r.Sources)
	if a.Snug == 0 { // else nobody sets this torque
		a.add(r.Notes, nil, nil)
	}
	a.Greatest = max(r.Low.Borne, r.Nominal.Borne, r.High.Borne)
	return a.leastLeft()
}

// tooMuch refuses a torque that breaks the bolt.
func (a *TorqueAnswer) tooMuch() error {
	at := a.Result.Nominal
	return fmt.Errorf("a torque of %.5g N·m breaks %s of %s: it yields at about %.1f N·m, breaks at about %.1f N·m (at nominal friction); allowed: less than what it yields at",
		float64(a.Result.Torque), a.Bolt.Thread.Name, a.Result.Strength.Name, float64(at.YieldTorque), float64(at.BreakTorque))
}

// Single says that the friction is one figure, so that all figures are.
func (a TorqueAnswer) Single() bool {
	f := a.Result.Friction
	return f.Thread.Low == f.Thread.High && f.Head.Low == f.Head.High
}

// leastLeft tells how little a torque wrench may leave where the friction was
// stated as one figure, which no real joint keeps to.
func (a *TorqueAnswer) leastLeft() error {
	if !a.Single() || a.Result.Nominal.Yields() { // past yield the preload is no longer in proportion to the torque
		return nil
	}
	alpha, err := screw.TighteningFactor("torque")
	if err != nil {
		return err
	}
	a.Alpha, a.Least = alpha.High, screw.LeastPreload(a.Greatest, alpha.High)
	a.Sources = append(a.Sources, "VDI 2230 Part 1, table A8 (scatter of a torque wrench)")
	return nil
}

func (a *TorqueAnswer) turn() error {
	if a.Snug == 0 {
		return nil
	}
	r, err := stiffness.TurnOn(stiffness.TorqueAngle{Bolt: a.Bolt, Grip: a.Grip, Snug: a.Snug, Angle: a.Angle})
	if err != nil {
		return err
	}
	a.Turned = &r
	a.add(r.Notes, r.Assumptions, r.Sources)
	if a.ByAngle() || r.Low.Breaks || r.Nominal.Breaks || r.High.Breaks {
		a.Greatest = max(r.Low.Peak, r.Nominal.Peak, r.High.Peak)
	}
	return nil
}

func (a *TorqueAnswer) joint() error {
	if len(a.Grip.Layers) == 0 {
		return nil
	}
	s, err := stiffness.Settle(a.Bolt, a.Grip, a.final(), "", "")
	if err != nil && a.Kind != "" && a.Turned == nil {
		// Of a kind in a file the torque is asked first of all.
		a.Notes = append(a.Notes, "stiffness and settlement are left out: "+err.Error())
		return nil
	}
	if err != nil {
		return err
	}
	a.Joint, a.Settlement = &s.Joint, &s
	if a.Broken() {
		a.Settlement = nil // nothing is left to be lost
		a.add(nil, s.Joint.Assumptions, s.Joint.Sources)
		return nil
	}
	a.add(s.Notes, s.Assumptions, s.Sources)
	return nil
}

// final gives the nominal preload that the bolt is left with.
func (a *TorqueAnswer) final() unit.Force {
	if a.ByAngle() {
		return a.Turned.Nominal.Preload
	}
	return a.Result.Nominal.Borne
}

// Broken says that the bolt breaks at nominal friction while it is turned on.
func (a TorqueAnswer) Broken() bool { return a.Turned != nil && a.Turned.Nominal.Breaks }

func (a *TorqueAnswer) threads() error {
	if a.Grip.TappedIn == "" {
		return nil
	}
	a.Engaged = a.Grip.Engagement
	length := a.Engaged
	if length == 0 {
		length = unit.Length(a.Bolt.Thread.MajorMm) // the lengths needed do not depend on it
	}
	s, err := strength.Strip(strength.Engagement{Thread: a.Bolt.Thread, Class: a.Result.Strength, Length: length, Material: a.Grip.TappedIn, Insert: a.Insert, Preload: a.Greatest})
	if err != nil {
		return err
	}
	if a.Engaged == 0 {
		s.Notes = []string{fmt.Sprintf("the engagement in %s is not stated, so the threads are not judged", a.Grip.TappedIn)}
	}
	a.Stripping = &s
	a.add(s.Notes, s.Assumptions, s.Sources)
	return nil
}

// pressure works out the pressure under the head, against its limit where the
// part under it is known.
func (a *TorqueAnswer) pressure() error {
	if len(a.Grip.Layers) > 0 {
		a.Under = a.Grip.Layers[0].Material
	}
	if m, err := strength.ParseMaterial(a.Under); err != nil || m.LimitingPressure == 0 {
		a.Pressure.Pressure = head.BearingPressure(a.Greatest, a.Result.PartFace, a.Result.PartHole)
		return nil
	}
	bolt, err := screw.Complete(a.Bolt)
	if err != nil {
		return err
	}
	p, err := head.UnderHead(bolt.Bearing, a.Greatest, a.Under)
	if err != nil {
		return err
	}
	a.Pressure = p
	a.add(p.Notes, p.Assumptions, p.Sources)
	return nil
}

// Span is a figure over the span of friction, least first.
type Span struct{ Low, Nominal, High float64 }

// SpanOf puts the figures at the two ends of the friction in order.
func SpanOf[T ~float64](atLow, nominal, atHigh T) Span {
	return Span{float64(min(atLow, nominal, atHigh)), float64(nominal), float64(max(atLow, nominal, atHigh))}
}

// PoundsForce gives a force in lbf.
func PoundsForce(f unit.Force) float64 {
	pound, err := unit.ParseForce("1 lbf")
	if err != nil {
		panic(err) // the unit is known
	}
	return float64(f / pound)
}

// Kinds reads the fastener kinds of a pattern as requests, in the order of the
// file.
func Kinds(name string, stdin io.Reader) (title string, kinds []TorqueRequest, problems problem.List, err error) {
	source, err := patterns.Open(name, stdin)
	if err != nil {
		return "", nil, nil, err
	}
	input, problems := patterns.Read(source)
	for _, k := range input.Kinds {
		kinds = append(kinds, requestOf(k))
	}
	return input.Title, kinds, problems, nil
}

func requestOf(k plan.Kind) TorqueRequest {
	ask := TorqueRequest{Kind: k.Name, Bolt: k.Bolt()}
	ask.Grip = stiffness.Grip{TappedIn: k.Into, Engagement: k.Engagement, BoltLength: k.Length}
	if k.Grip > 0 {
		ask.Grip.Layers = stiffness.Simple(k.Grip).Layers
	}
	return ask
}

// Wrenches reads the shop's list of wrenches.
func Wrenches(path string, stdin io.Reader) ([]wrench.Wrench, problem.List, error) {
	source, err := wrenches.Open(path, stdin)
	if err != nil {
		return nil, nil, err
	}
	list, problems := wrenches.Read(source)
	return list, problems, nil
}

// WrenchAnswer is what to set, and the range in which it may be set.
type WrenchAnswer struct {
	wrench.Result
	Least, Most unit.Torque // usable of the wrench; without one: where the scale of one may end
}

// WorkOutWrench works out the setting and the wrench to take.
func WorkOutWrench(work wrench.Work) (WrenchAnswer, error) {
	r, err := wrench.Set(work)
	if err != nil {
		return WrenchAnswer{}, err
	}
	a := WrenchAnswer{Result: r, Least: r.Setting, Most: r.Setting / wrench.LeastUsable}
	if r.Wrench != nil {
		a.Least, a.Most = r.Wrench.UsableNm()
	}
	return a, nil
}
