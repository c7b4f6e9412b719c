package plan

import "fmt"

// Doubt is a figure of the file that does not agree with the mechanics of its
// bolt. The figure stands all the same: the maker knows the joint, and the
// mechanics know only what the file states.
type Doubt struct {
	Stage  int     // of tightening, from 1; 0: the kind as a whole
	Kind   string  // of fastener
	About  Subject // of the doubt
	Figure string  // as the file gives it, such as 300 N·m
	Says   string  // what the mechanics say of it, with their own figures
	Look   string  // what to look at
}

// Subject is what a doubt is about.
type Subject string

const (
	AboutTorque     Subject = "torque"     // over what takes the bolt to yield, or hardly any
	AboutAngle      Subject = "angle"      // that breaks the bolt or uses it up, or is past one turn
	AboutReuse      Subject = "reuse"      // of a bolt that is stretched past yield
	AboutEngagement Subject = "engagement" // that does not hold the preload
	AboutLength     Subject = "length"     // of a bolt that does not reach
	AboutGrip       Subject = "grip"       // that is none
	AboutHead       Subject = "head"       // whose bearing face is none, or presses too hard
	AboutWrench     Subject = "wrench"     // no single one serves all torques of a kind
	AboutLubricant  Subject = "lubricant"  // of like bolts differs
)

// String says the doubt in one line.
func (d Doubt) String() string {
	where := "the kind " + d.Kind
	if d.Stage > 0 {
		where = fmt.Sprintf("tightening stage %d, kind %s", d.Stage, d.Kind)
	}
	return fmt.Sprintf("%s: %s %s; look at %s", where, d.Figure, d.Says, d.Look)
}

// Doubts compares the figures of the plan with the mechanics of the bolts, kind
// by kind. Where the file leaves something open, the most lenient of the usual
// cases is taken, so that a doubt means something. What cannot be worked out is
// not doubted.
func (p Plan) Doubts() []Doubt {
	var found []Doubt
	for _, k := range p.Kinds {
		found = append(found, p.doubtsOf(k)...)
	}
	return append(found, mixedLubricants(p.Kinds)...)
}
