package figures

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// Bolt is one kind of fastener and how it is tightened. Zero values mean
// unknown.
type Bolt struct {
	Kind      string     // name; "": a question without a file
	Bolt      screw.Bolt // its aim is that of a turn
	Grip      stiffness.Grip
	Under     string      // material under the head if Grip has no layer for it
	NutAcross unit.Length // width of the nut across flats; 0: none
	Stud      bool        // threaded at both ends, no head
	Insert    *strength.Insert
	Boss      unit.Length // outer diameter round the tapped hole; 0: wide
	Reuse     string      // whether it may be used again: once, inspect, yes
	Stages    []Stage     // of tightening
}

// Stage is a step of tightening.
type Stage struct {
	Number  int // from 1
	Do      Action
	Torque  unit.GivenTorque // of Tighten
	Angle   unit.Angle       // of Advance
	Stretch unit.Length      // of Lengthen
}

// Action is what a stage does to a bolt.
type Action uint8

const (
	Tighten  Action = iota // to a torque
	Advance                // by an angle
	BackOff                // loosen
	Lengthen               // until the bolt is longer by a stretch
)

// Judge compares the figures of bolts with their mechanics. Warnings need
// attention before the work; notes are for information. What cannot be
// calculated is not judged.
func Judge(bolts []Bolt) []finding.Finding {
	var found []finding.Finding
	for _, b := range bolts {
		found = append(found, judgeBolt(b)...)
	}
	return append(found, mixedLubricants(bolts)...)
}

// judge is the state while one bolt is judged.
type judge struct {
	Bolt
	asked     screw.Bolt // with its aim, which a turn should reach
	class     strength.Class
	strongest bool          // the class is unknown and replaced by the strongest
	over      []unit.Torque // past yield at any friction
	breaking  []unit.Torque // those of over that break the bolt at any friction
	preload   unit.Force    // the greatest that results from the figures; 0: unknown
	found     []finding.Finding
}

func judgeBolt(b Bolt) []finding.Finding {
	j := judge{Bolt: b, asked: b.Bolt}
	j.judgeLength()
	if j.hasThread() {
		j.complete()
		j.judgeFriction()
		j.judgeHole()
		j.judgeAcross()
		j.judgeOtherHead()
		j.judgeGalling()
		j.judgeTorques()
		j.judgeUsedOnce()
	}
	j.judgeTurns()
	j.judgeStretches()
	// A torque that is far off makes other findings pointless: they follow from
	// it.
	if len(j.over) == 0 {
		j.judgeWrench()
		j.judgeEngagement()
		j.judgePressure()
	}
	return j.found
}

func (j *judge) hasThread() bool { return j.Bolt.Bolt.Thread.Name != "" }

// complete prepares the bolt for the calculations. What they cannot parse
// counts as not stated; an unknown class or lubricant has been reported by the
// reader of the file.
func (j *judge) complete() {
	b := &j.Bolt.Bolt
	b.YieldShare, b.ProofShare, b.Preload = 1, 0, 0
	class, err := strength.ParseClass(b.Class, b.Thread)
	if err != nil {
		b.Class, j.strongest = strongestClass, true
		class, _ = strength.ParseClass(strongestClass, b.Thread)
	}
	j.class = class
	if _, err := screw.FrictionOf(b.Lubricant); err != nil {
		b.Lubricant = ""
	}
	j.completeHead()
}

// warn and note record a finding about the bolt, or about one of its stages.
func (j *judge) warn(stage int, code finding.Code, values finding.Values) {
	j.found = append(j.found, finding.Warned(code, values).About(finding.Place{Kind: j.Kind, Stage: stage}))
}

func (j *judge) note(stage int, code finding.Code, values finding.Values) {
	j.found = append(j.found, finding.Noted(code, values).About(finding.Place{Kind: j.Kind, Stage: stage}))
}

// named returns thread and class for the words.
func (j *judge) named() finding.Finding {
	return finding.Noted(BoltNamed, finding.Values{"thread": j.Bolt.Bolt.Thread.Name, "class": j.class.Named(), "strongest": j.strongest})
}

// reaches records a preload that the bolt reaches, if its class is known.
func (j *judge) reaches(preload unit.Force) {
	if !j.strongest {
		j.preload = max(j.preload, preload)
	}
}

func (j *judge) hasStage(do Action) bool {
	return slices.ContainsFunc(j.Stages, func(s Stage) bool { return s.Do == do })
}

// Placed returns a finding that includes its stage and kind in its text.
func Placed(f finding.Finding) finding.Finding {
	values := finding.Values{"stage": f.At.Stage, "kind": f.At.Kind, "why": f}
	if f.At.Stage > 0 {
		return finding.Finding{Code: AtStage, Severity: f.Severity, Values: values, At: f.At}
	}
	if f.At.Kind == "" {
		return f
	}
	delete(values, "stage")
	return finding.Finding{Code: AtKind, Severity: f.Severity, Values: values, At: f.At}
}
