package plan

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/measure"
)

// Plan is the whole work on a joint: what to do to which fastener, in which
// order, with which figure, and where the figure comes from. Fasteners are
// indices into Joint.Fasteners.
type Plan struct {
	Heading
	View        string
	Joint       geometry.Joint // already mirrored if the file says so
	Mirrored    bool
	Clamped     Clamped
	Asked       Asked  // replaces the file's own
	Kinds       []Kind // in the order in which they are finished
	Groups      []Group
	Tighten     Side
	Loosen      Side
	Source      string            // where the figures come from; "": calculated
	Assumptions []finding.Finding // grounds of the calculated figures
	Figures     []finding.Finding // findings about the tightening figures
	Measures    []measure.Value   // the values to measure, in the order of the file
}

// Group is a set of fasteners that are ordered together.
type Group struct {
	Kinds   []string
	Way     sequence.Way // final: never Auto
	Turn    sequence.Turn
	Members []int       // in tightening order
	Sprung  bool        // springs push against what it holds
	Seen    family.Seen // the family used for its order
}

// Makers reports whether the order of the group is the maker's: a list, or the
// numbers on the part.
func (g Group) Makers() bool { return g.Way.IsMakers() }

// Asked is the way and the turn that the user asked for; empty to use the
// file's own.
type Asked struct {
	Way  sequence.Way
	Turn sequence.Turn
}

// Side is one direction of the work.
type Side struct {
	Order  []int // every fastener once
	Stages []Stage
	Basis  []finding.Finding // grounds of the order and the rounds
}

// Stage is one round of the work over the fasteners it covers.
type Stage struct {
	Number    int // from 1; the pass number of its steps
	Do        Action
	Kinds     []string // that it covers; nil for a wait
	Fasteners []int    // in working order; nil for a wait
	Torque    unit.GivenTorque
	Other     unit.GivenTorque // the torque for the other kind of wrench
	Angle     unit.Angle
	Stretch   unit.Length // of the bolt
	Wait      unit.Duration
	Percent   float64      // of the calculated torque; 0 if the file gives the figure
	ByTurns   unit.Angle   // approach the figure by this angle at a time over all caps; 0: at once
	Release   unit.Length  // how far such a turn, or one back, moves a part under spring load; 0 if the thread is unknown
	Until     string       // turned repeatedly until then
	AtOnce    int          // so many of Fasteners, one after another, go down together; 0: one
	Way       sequence.Way // if it differs from the groups' own
	Turn      sequence.Turn
	WorkedOut bool   // the figure is not from a manual
	Source    string // where the figure comes from
	Note      string
}

// Step is one action on one fastener, or a wait.
type Step struct {
	Stage    *Stage
	Fastener *geometry.Fastener // nil for a wait
}

// Steps lists the steps of a side.
func (p Plan) Steps(s Side) []Step {
	var steps []Step
	for i := range s.Stages {
		stage := &s.Stages[i]
		if stage.Do == Wait {
			steps = append(steps, Step{Stage: stage})
		}
		for _, f := range stage.Fasteners {
			steps = append(steps, Step{stage, &p.Joint.Fasteners[f]})
		}
	}
	return steps
}

// IDs returns the ids of fasteners.
func (p Plan) IDs(fasteners []int) []string { return p.Joint.IDs(fasteners) }

// ClusterNames returns the name of each fastener's cluster; "" for none.
func (p Plan) ClusterNames() []string {
	names := make([]string, len(p.Joint.Fasteners))
	index := p.Joint.Index()
	for _, c := range p.Joint.Clusters {
		for _, id := range c.Of {
			names[index[id]] = c.Name
		}
	}
	return names
}

// Bare returns the plan without the words on the part, for small drawings.
func (p Plan) Bare() Plan {
	p.Joint.Front, p.Joint.Labels, p.Joint.Stations = "", nil, nil
	p.Joint.Bores = slices.Clone(p.Joint.Bores)
	for i := range p.Joint.Bores {
		p.Joint.Bores[i].Label = ""
	}
	return p
}

// Numbers returns the number of each fastener in the side's order, from 1.
func (s Side) Numbers() []int {
	numbers := make([]int, len(s.Order))
	for k, i := range s.Order {
		numbers[i] = k + 1
	}
	return numbers
}

// WorkedOut reports whether a figure of the plan is not from a manual.
func (p Plan) WorkedOut() bool {
	return slices.ContainsFunc(p.Tighten.Stages, func(s Stage) bool { return s.WorkedOut })
}

// KindOf returns the kind of a fastener.
func (p Plan) KindOf(fastener int) Kind { return p.Kind(p.Joint.Fasteners[fastener].Kind) }

// Kind returns the kind with a name; for an unknown one, a Kind with only the
// name.
func (p Plan) Kind(name string) Kind {
	if i := slices.IndexFunc(p.Kinds, func(k Kind) bool { return k.Name == name }); i >= 0 {
		return p.Kinds[i]
	}
	return Kind{Name: name}
}

// Count returns the number of fasteners of a kind.
func (p Plan) Count(kind string) int {
	n := 0
	for _, f := range p.Joint.Fasteners {
		if f.Kind == kind {
			n++
		}
	}
	return n
}

// LastAction is the last tightening action for the fasteners of a kind; "" if
// no stage covers them.
func (p Plan) LastAction(kind string) Action {
	for _, s := range slices.Backward(p.Tighten.Stages) {
		if s.Do != Wait && slices.Contains(s.Kinds, kind) {
			return s.Do
		}
	}
	return ""
}
