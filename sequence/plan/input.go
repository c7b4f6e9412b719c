// Package plan joins a joint, its fastener kinds and its stages into the plan
// of the work: every step with its fastener, its figure and where the figure
// came from. All that a sheet or the JSON output prints is in the Plan.
package plan

import (
	"drawdown/geometry"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/tension/head"
)

// Input is what a pattern file says, checked and in inner units.
type Input struct {
	Name        string // stem of the files to write, such as p4-head
	Title       string
	Machine     string
	Revision    string
	Date        string // as the file gives it; never the clock
	View        string
	Fingerprint string // short hash of the file and what it extends
	Joint       geometry.Joint
	Clamped     Clamped
	Mirror      geometry.Axis // the finished order is mirrored with the part
	Kinds       []Kind
	Groups      []sequence.Group // in the order in which the groups are finished; empty: by size
	Way         sequence.Way     // asked for by the user; goes before every group's own
	Turn        sequence.Turn    // likewise
	Tighten     []StageInput
	Loosen      []StageInput
	Source      string // where the figures come from; empty: worked out
	Cautions    []Caution
}

// Reuse says whether a fastener may go back in.
type Reuse string

const (
	ReuseUnknown Reuse = ""
	ReuseOnce    Reuse = "once"    // used once, then thrown away
	ReuseInspect Reuse = "inspect" // measured before it goes back
	ReuseYes     Reuse = "yes"
)

// Kind is one kind of fastener. Zero lengths are unknown.
type Kind struct {
	Name       string
	Implied    bool           // the file names no kinds; the name is not its own
	Thread     *thread.Thread // nil where the file names none
	Class      string         // as written: 10.9, grade 8, A2-70, 830 MPa
	Length     unit.Length
	Grip       unit.Length // clamped length
	Into       string      // material of the tapped hole
	Engagement unit.Length
	Lubricant  string
	Friction   *Friction   // nil where only a lubricant is known
	HeadForm   head.Form   // empty: hexagon
	HeadAcross unit.Length // across flats
	NutAcross  unit.Length // across flats; 0 where there is no nut
	WasherFace unit.Length // outer diameter of the bearing face
	Hole       unit.Length
	Reuse      Reuse
}

// Friction holds coefficient ranges; a single figure has Low equal to High.
type Friction struct{ Thread, Head Range }

// Range is a span of a dimensionless coefficient.
type Range struct{ Low, High float64 }

// Action is what a stage has done to each fastener.
type Action string

const (
	Tighten  Action = "torque"   // to a torque
	Advance  Action = "angle"    // on by an angle
	Percent  Action = "percent"  // to a share of a worked-out torque
	BackOff  Action = "back off" // slacken by an angle, then go on
	Wait     Action = "wait"     // let the joint settle
	TurnBack Action = "turn"     // break loose by an angle
	Remove   Action = "remove"   // out
)

// StageInput is one stage as the file gives it.
type StageInput struct {
	Of      []string // kinds; empty: every fastener
	Do      Action
	Torque  unit.GivenTorque // for Tighten
	Angle   unit.Angle       // for Advance, BackOff, TurnBack
	Wait    unit.Duration    // for Wait
	Percent float64          // for Percent, in (0, 100]
	Way     sequence.Way     // empty: the groups' own order
	Turn    sequence.Turn
	Note    string
}
