package figures

import (
	"cmp"
	"errors"
	"math"
	"reflect"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// Ask is one bolt and the question about it. Zero values mean not stated.
type Ask struct {
	Bolt                // with its aim
	Torque  unit.Torque // applied torque to calculate from; replaces the aim
	Snug    unit.Torque
	Angle   unit.Angle  // after Snug
	Stretch unit.Length // measured; replaces the aim
	Most    unit.Force  // greatest preload that the joint bears, which limits the aim; 0: the bolt alone limits it
}

// Answer is everything calculated about a bolt.
type Answer struct {
	Ask
	Result     screw.Result
	ProofUsed  float64               // nominal preload divided by proof load
	Least      unit.Force            // least possible preload if the friction was stated as one figure
	Alpha      float64               // tightening factor of Least
	Turned     *stiffness.Turned     // nil without a snug torque
	Stretched  *Stretched            // nil if no stretch is asked for
	Longer     [3]unit.Length        // stretch at LongerAt, least to most; 0 without a grip
	LongerAt   unit.Force            // nominal preload at the end
	EachStage  []AfterStage          // of the stages of a file
	Joint      *stiffness.Joint      // nil without a grip
	Settlement *stiffness.Settlement // the same, and where the bolt breaks
	Stripping  *strength.Stripping   // nil if the tapped part is not known
	Engaged    unit.Length           // of Stripping; 0: only the required length is given
	Greatest   unit.Force            // preload to judge threads and bearing face by
	Pressure   head.Pressure         // Limit 0: the material under the head is not stated

	Notes, Assumptions []finding.Finding // of all results, without duplicates
	Sources            []string

	given Bolt // as asked, for the judge
}

// ByAngle reports whether the last step is an angle.
func (a Answer) ByAngle() bool { return a.Turned != nil && a.Angle > 0 }

// Broken reports whether the bolt breaks at nominal friction during the angle.
func (a Answer) Broken() bool { return a.Turned != nil && a.Turned.Nominal.Breaks }

// Open reports that the torque is calculated for every possible condition of
// the thread, because none is stated: a range in which no figure is safe.
func (a Answer) Open() bool {
	b := a.Bolt.Bolt
	return b.FrictionOpen() && a.Torque == 0 && b.Preload == 0 && b.ProofShare == 0
}

// Single reports that the friction is one figure, and so are all results.
func (a Answer) Single() bool {
	f := a.Result.Friction
	return f.Thread.Low == f.Thread.High && f.Head.Low == f.Head.High
}

// WorkOut answers a question about a bolt. The error says what is missing or
// does not fit, and what is allowed.
func WorkOut(ask Ask) (Answer, error) {
	a := Answer{Ask: ask, given: ask.Bolt}
	a.standIn()
	for _, step := range []func() error{a.stretched, a.torque, a.shape, a.turn, a.joint, a.eachStage, a.threads, a.pressure} {
		if err := step(); err != nil {
			return Answer{}, err
		}
	}
	a.judge()
	a.Notes, a.Assumptions, a.Sources = onceEach(a.Notes), onceEach(a.Assumptions), onceEach(a.Sources)
	return a, nil
}

// standIn uses the judge's default bearing face for a kind of a file if neither
// the file nor a standard has one, or if that of the file does not fit.
func (a *Answer) standIn() {
	if a.Kind == "" {
		return
	}
	j := judge{Bolt: a.Bolt, asked: a.Bolt.Bolt}
	j.complete()
	was, is := a.Bolt.Bolt, j.Bolt.Bolt
	if was.WasherFace != is.WasherFace && is.WasherFace > 0 {
		a.Assumptions = append(a.Assumptions, finding.Noted(FaceUsual, finding.Values{"face": is.WasherFace, "thread": is.Thread.Name}).From(finding.CommonPractice))
	}
	a.Bolt.Bolt.HeadForm, a.Bolt.Bolt.HeadAcross, a.Bolt.Bolt.WasherFace, a.Bolt.Bolt.Hole = is.HeadForm, is.HeadAcross, is.WasherFace, is.Hole
}

func (a *Answer) rests(assumptions []finding.Finding, sources []string) {
	a.Assumptions = append(a.Assumptions, assumptions...)
	a.Sources = append(a.Sources, sources...)
}

func onceEach[T any](list []T) []T {
	var kept []T
	for _, one := range list {
		if !slices.ContainsFunc(kept, func(k T) bool { return reflect.DeepEqual(k, one) }) {
			kept = append(kept, one)
		}
	}
	return kept
}

func (a *Answer) torque() (err error) {
	bolt := &a.Bolt.Bolt
	if a.Torque != 0 {
		a.Result, err = screw.AtTorque(*bolt, a.Torque)
		bolt.ProofShare, bolt.Preload, bolt.YieldShare = 0, 0, screw.UsualYieldShare
	} else {
		a.Result, err = a.target()
	}
	if err != nil {
		return err
	}
	r := a.Result
	if at := r.Nominal; at.Breaks() {
		return finding.Failed(TorqueBreaks, finding.Values{
			"torque": written(unit.GivenTorque{Value: float64(r.Torque)}), "bolt": a.named(), "yield": at.YieldTorque, "break": at.BreakTorque,
		})
	}
	a.ProofUsed = float64(r.Nominal.Borne / r.ProofLoad)
	a.rests(r.Assumptions, r.Sources)
	a.Greatest = max(r.Low.Borne, r.Nominal.Borne, r.High.Borne)
	if a.Stretched != nil { // friction does not change it
		a.Greatest = a.Stretched.High
		return nil
	}
	return a.leastLeft()
}

// target calculates the torque to set. The joint may bear less than the bolt.
func (a *Answer) target() (screw.Result, error) {
	bolt := a.Bolt.Bolt
	r, err := screw.Target(bolt)
	most := max(r.Low.Borne, r.Nominal.Borne, r.High.Borne)
	if err != nil || a.Most == 0 || most <= a.Most {
		return r, err
	}
	bolt.ProofShare, bolt.Preload = 0, 0
	const figures = 1e4 // of a share, so that it can be printed
	bolt.YieldShare = math.Round(figures*r.YieldShare*float64(a.Most/most)) / figures
	return screw.Target(bolt)
}

func (a *Answer) named() finding.Finding {
	j := judge{Bolt: a.Bolt, class: a.Result.Strength}
	return j.named()
}

// leastLeft calculates how little preload a torque wrench may leave if the
// friction was stated as one figure, which no real joint has exactly.
func (a *Answer) leastLeft() error {
	if !a.Single() || a.Result.Nominal.Yields() { // past yield the preload is not proportional to the torque
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

func (a *Answer) turn() error {
	if a.Snug == 0 {
		return nil
	}
	r, err := stiffness.TurnOn(stiffness.TorqueAngle{Bolt: a.Bolt.Bolt, Grip: a.Grip, Snug: a.Snug, Angle: a.Angle})
	if err != nil {
		return err
	}
	a.Turned = &r
	a.rests(r.Assumptions, r.Sources)
	if a.ByAngle() || r.Low.Breaks || r.Nominal.Breaks || r.High.Breaks {
		a.Greatest = max(r.Low.Peak, r.Nominal.Peak, r.High.Peak)
	}
	return nil
}

func (a *Answer) joint() error {
	if len(a.Grip.Layers) == 0 {
		return nil
	}
	s, err := stiffness.Settle(a.Bolt.Bolt, a.Grip, a.final())
	if err != nil && a.Turned == nil && (a.Kind != "" || errors.Is(err, stiffness.BoltTooShort) || errors.Is(err, stiffness.ThreadFromTooFar)) {
		// The torque is the main question.
		a.Notes = append(a.Notes, finding.Noted(StiffnessLeftOut, finding.Values{"why": err}))
		return nil
	}
	if err != nil {
		return err
	}
	a.Joint = &s.Joint
	if err := a.longer(); err != nil {
		return err
	}
	if a.Broken() { // no preload left to lose
		a.rests(s.Joint.Assumptions, s.Joint.Sources)
		return nil
	}
	a.Settlement = &s
	a.rests(s.Assumptions, s.Sources)
	if s.LossShare > muchSettlement {
		a.Notes = append(a.Notes, finding.Noted(SettlesMuch, finding.Values{"flattens": unit.Length(s.Micrometres / 1000), "share": s.LossShare}))
	}
	return nil
}

// final returns the nominal preload at the end.
func (a *Answer) final() unit.Force {
	switch {
	case a.ByAngle():
		return a.Turned.Nominal.Preload
	case a.Stretched != nil:
		return a.Stretched.Nominal
	}
	return a.Result.Nominal.Borne
}

func (a *Answer) threads() error {
	if a.Grip.TappedIn == "" {
		return nil
	}
	a.Engaged = a.Grip.Engagement
	length := cmp.Or(a.Engaged, unit.Length(a.Bolt.Bolt.Thread.MajorMm)) // the required lengths do not depend on it
	s, err := strength.Strip(a.Bolt.engaged(a.Result.Strength, a.Grip.TappedIn, length, a.Greatest))
	if err != nil {
		return err
	}
	a.Stripping = &s
	a.rests(s.Assumptions, s.Sources)
	return nil
}

// pressure calculates the pressure under the head, and its limit if the part
// under it is known.
func (a *Answer) pressure() error {
	a.Under = a.Bolt.under()
	if m, err := strength.ParseMaterial(a.Under); err != nil || m.LimitingPressure == 0 {
		a.Pressure.Pressure = head.BearingPressure(a.Greatest, a.Result.PartFace, a.Result.PartHole)
		return nil
	}
	bolt, err := screw.Complete(a.Bolt.Bolt)
	if err != nil {
		return err
	}
	p, err := head.UnderHead(bolt.Bearing, a.Greatest, a.Under)
	if err != nil {
		return err
	}
	a.Pressure = p
	a.rests(p.Assumptions, p.Sources)
	return nil
}

// judge judges the question: the stages of the file, or what the question
// states instead. It also judges the calculated torque if the stages themselves
// do not fail.
func (a *Answer) judge() {
	asked := a.given
	if !a.OfStages() {
		asked.Stages = a.askedStages()
		a.Notes = append(Judge([]Bolt{asked}), a.Notes...)
		return
	}
	judged := Judge([]Bolt{asked})
	asked.Stages = a.askedStages()
	for _, f := range Judge([]Bolt{asked}) {
		if f.Severity == finding.Warning && !finding.Has(judged, f.Code) {
			judged = append(judged, finding.Noted(AtWorkedOut, finding.Values{"torque": written(unit.GivenTorque{Value: float64(a.Result.Torque)}), "why": f}))
		}
	}
	a.Notes = append(judged, a.Notes...)
}

// OfStages reports whether the stages of the bolt are judged, because the
// question replaces none of them.
func (a Answer) OfStages() bool {
	return len(a.Stages) > 0 && a.Ask.Torque == 0 && a.Ask.Stretch == 0 && a.Snug == 0 && a.Bolt.Bolt.YieldShare+a.Bolt.Bolt.ProofShare+float64(a.Bolt.Bolt.Preload) == 0
}

// askedStages converts the question to stages.
func (a *Answer) askedStages() []Stage {
	if a.Ask.Stretch > 0 {
		return []Stage{{Number: 1, Do: Lengthen, Stretch: a.Ask.Stretch}}
	}
	if a.Snug > 0 { // the torque of the aim is not applied
		return []Stage{{Number: 1, Do: Tighten, Torque: unit.GivenTorque{Value: float64(a.Snug)}}, {Number: 2, Do: Advance, Angle: a.Angle}}
	}
	return []Stage{{Number: 1, Do: Tighten, Torque: unit.GivenTorque{Value: float64(a.Result.Torque)}}}
}
