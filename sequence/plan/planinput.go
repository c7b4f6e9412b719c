// Package plan joins a joint, its kinds of fasteners and its stages into the
// plan of the work: every step with its fastener, its figure and the source of
// the figure. The Plan has everything that a sheet or the JSON output prints.
// Defaults are in files named default…. The package knows orders and bolts, but
// no file format, no paper and no clock.
package plan

import (
	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/measure"
)

// Heading is what a file states about itself.
type Heading struct {
	Name        string // stem of the files to write, such as p4-head
	Title       string
	Machine     string
	Revision    string
	Date        string // as the file gives it; never the clock
	Fingerprint string // short hash of the file and what it extends
	Cautions    []Caution
}

// Input is the content of a pattern file, checked and in internal units.
type Input struct {
	Heading
	View    string
	Joint   geometry.Joint
	Clamped Clamped
	Mirror  geometry.Axis // the finished order is mirrored with the part
	Kinds   []Kind
	Groups  []sequence.Group // in the order in which they are finished; empty: by size
	Way     sequence.Way     // asked for by the user; overrides every group's own
	Turn    sequence.Turn    // the same
	Tighten []StageInput
	Loosen  []StageInput
	Source  string // where the figures come from; "": calculated
	// Measures are the values to measure, in the order of the file.
	Measures []measure.Value
}

// Action is what a stage does to each fastener.
type Action string

const (
	Tighten  Action = "torque"   // to a torque
	Advance  Action = "angle"    // turn further by an angle
	Lengthen Action = "stretch"  // until the bolt is longer by a stretch
	Percent  Action = "percent"  // to a share of a calculated torque
	BackOff  Action = "back off" // slacken by an angle, then go on
	Wait     Action = "wait"     // let the joint settle
	TurnBack Action = "turn"     // break loose by an angle
	Remove   Action = "remove"   // take out
)

// StageInput is one stage as the file gives it.
type StageInput struct {
	Of      []string // kinds; empty: every fastener
	Do      Action
	Torque  unit.GivenTorque // for Tighten
	Angle   unit.Angle       // for Advance, BackOff, TurnBack
	Stretch unit.Length      // for Lengthen
	Wait    unit.Duration    // for Wait
	Percent float64          // for Percent, in (0, 100]
	Way     sequence.Way     // "": the groups' own order
	Turn    sequence.Turn
	Until   string // for TurnBack and torques: repeat until then
	AtOnce  int    // wrenches that work at once, for torques; 0: one
	Note    string
}
