// Package plan joins a joint, its kinds of fasteners and its stages into the
// plan of the work: every step with its fastener, its figure and the source of
// the figure. The Plan has all that a sheet or the JSON output prints. Defaults
// are in files named default…. It sees orders and bolts; no file format, no
// paper, no clock.
package plan

import (
	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/measure"
)

// Heading is what a file says of itself.
type Heading struct {
	Name        string // stem of the files to write, such as p4-head
	Title       string
	Machine     string
	Revision    string
	Date        string // as the file gives it; never the clock
	Fingerprint string // short hash of the file and what it extends
	Cautions    []Caution
}

// Input is what a pattern file says, checked and in inner units.
type Input struct {
	Heading
	View    string
	Joint   geometry.Joint
	Clamped Clamped
	Mirror  geometry.Axis // the finished order is mirrored with the part
	Kinds   []Kind
	Groups  []sequence.Group // in the order in which the groups are finished; empty: by size
	Way     sequence.Way     // asked for by the user; goes before every group's own
	Turn    sequence.Turn    // likewise
	Tighten []StageInput
	Loosen  []StageInput
	Source  string // where the figures come from; empty: worked out
	// Measures are the values to take, in the order of the file.
	Measures []measure.Value
}

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
	Until   string // for TurnBack: repeated until then
	Note    string
}
