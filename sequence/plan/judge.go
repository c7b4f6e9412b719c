package plan

import (
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// judge compares the figures of one kind of fastener with the mechanics.
type judge struct {
	kind     Kind
	stages   []Stage // of tightening that cover the kind
	bolt     screw.Bolt
	strength strength.Class
	strong   bool          // the class is not known; the strongest stands for it
	tooMuch  []unit.Torque // at any friction
	preload  unit.Force    // that the bolt has in the end; 0: not known
	found    []Doubt
}

// strongestClass stands in where the class is not known: the yield stress of
// class 12.9, ISO 898-1, table 3.
const strongestClass = "1100 MPa"

func (p Plan) doubtsOf(k Kind) []Doubt {
	j := judge{kind: k}
	for _, s := range p.Tighten.Stages {
		if slices.Contains(s.Kinds, k.Name) {
			j.stages = append(j.stages, s)
		}
	}
	j.judgeLength()
	if k.Thread != nil {
		j.settle()
		j.judgeTorques()
	}
	j.judgeAngles()
	// A torque that is far off makes the rest void: it follows from that figure.
	if len(j.tooMuch) == 0 {
		j.judgeWrench()
		j.judgeEngagement()
		j.judgePressure()
	}
	return j.found
}

// doubt records a doubt about the kind.
func (j *judge) doubt(stage int, about Subject, figure, says, look string) {
	j.found = append(j.found, Doubt{Stage: stage, Kind: j.kind.Name, About: about, Figure: figure, Says: says, Look: look})
}

// settle describes the bolt to the mechanics. What they cannot read of it is
// taken as not stated; that the class or the lubricant is not known, the reader
// of the file has said already.
func (j *judge) settle() {
	k := j.kind
	j.bolt = k.Bolt()
	j.bolt.YieldShare = 1
	class, err := strength.ParseClass(k.Class, *k.Thread)
	if err != nil {
		j.bolt.Class, j.strong = strongestClass, true
		class, _ = strength.ParseClass(strongestClass, *k.Thread)
	}
	j.strength = class
	if _, err := screw.FrictionOf(k.Lubricant); err != nil {
		j.bolt.Lubricant = ""
	}
	j.settleHead()
}

// name gives thread and class as a sentence has them.
func (j *judge) name() string {
	if j.strong {
		return j.kind.Thread.Name + " of the strongest class, 12.9,"
	}
	return j.kind.Thread.Name + " " + j.strength.Name
}
