package judge

// Report is the result of judging an order.
type Report struct {
	Side     Side          `json:"side"`
	Makers   bool          `json:"makers,omitempty"` // described, not judged
	Verdict  Verdict       `json:"verdict"`
	Findings []Finding     `json:"findings"`
	Groups   []GroupReport `json:"groups,omitempty"` // none if the list is incomplete
	// TravelMm is the path of the wrench over the whole order, from place to
	// place; OwnTravelMm is that of drawdown's own order.
	TravelMm    float64 `json:"travel_mm"`
	OwnTravelMm float64 `json:"own_travel_mm"`
}

// Verdict sums up a report.
type Verdict string

const (
	// Sound means that no rule is broken.
	Sound Verdict = "sound"
	// Remarks means that rules are broken, but by little.
	Remarks Verdict = "usable with remarks"
	// Departs means that a rule is broken by much. Remarks do not add up,
	// because one slip can break several rules.
	Departs Verdict = "not the trade's order"
	// NotWhole means that a fastener is missing, repeated or unknown.
	NotWhole Verdict = "no whole order"
	// Described means the maker's own order, whatever the findings.
	Described Verdict = "described"
)

// Right reports whether the order is usable: it is complete, and it is the
// maker's or close to the rules.
func (v Verdict) Right() bool { return v == Sound || v == Remarks || v == Described }

// Rule names the subject of a finding.
type Rule string

const (
	Unknown    Rule = "unknown"    // a name that no fastener has
	Twice      Rule = "twice"      // a repeated fastener
	Missing    Rule = "missing"    // a fastener left out
	GroupOrder Rule = "groups"     // a group is started before an earlier one is finished
	Together   Rule = "cluster"    // the fasteners of a cluster are separated
	Unloaded   Rule = "unloaded"   // an unloaded cluster goes first, or last
	Middle     Rule = "middle"     // starts in the middle
	Outwards   Rule = "outwards"   // works outwards
	OneSide    Rule = "one side"   // no long run on one side
	Neighbours Rule = "neighbours" // not in succession where avoidable
	Across     Rule = "across"     // on a bolt circle, each followed by one across
	Balance    Rule = "balance"    // the clamp load never pulls far to one side
	Saddle     Rule = "saddle"     // two opposite sides are not tightened before the others
	Travel     Rule = "travel"     // distance travelled by the wrench
)

// Severity is the effect of a finding on the verdict.
type Severity string

const (
	Fault       Severity = "fault"       // of the list itself
	Departure   Severity = "departs"     // from a rule, by much
	Remark      Severity = "remark"      // from a rule, by little
	Description Severity = "description" // nothing to fix
)

// Finding is one thing found in an order. Found returns it as a
// finding.Finding.
type Finding struct {
	Rule     Rule     `json:"rule"`
	Severity Severity `json:"severity"`
	Side     Side     `json:"-"`
	Kinds    []string `json:"kinds,omitempty"` // of the group that was judged
	Steps    []int    `json:"steps,omitempty"` // from 1, ascending
	IDs      []string `json:"ids,omitempty"`   // fasteners at these steps; for Missing without steps
	// Against names what the ids are compared with: those in the middle, those
	// that should come before, the id that an unknown name may mean. For
	// Outwards, Neighbours and Across there is one for each id.
	Against      []string `json:"against,omitempty"`
	AgainstSteps []int    `json:"against_steps,omitempty"`
	// Figure is the number of fasteners or steps; for Balance the pull, for
	// Travel millimetres. Allowed is the most that the trade's own orders for
	// the layout reach.
	Figure  float64 `json:"figure"`
	Allowed float64 `json:"allowed"`
	Of      int     `json:"of,omitempty"` // number of all steps, for Across
}

// Layout is the layout of the places of a group.
type Layout string

const (
	Row    Layout = "row"
	Circle Layout = "bolt circle"
	Spread Layout = "spread" // grids, heads, perimeters, all others
)

// GroupReport has the figures of one group.
type GroupReport struct {
	Kinds  []string `json:"kinds"`
	Layout Layout   `json:"layout"`
	IDs    []string `json:"ids"` // in the given order
	Order  Figures  `json:"figures"`
	Own    Figures  `json:"own_figures"` // of drawdown's own order for the layout
}

// Figures measures an order of one group.
type Figures struct {
	// Pull is the greatest pull to one side during the work: the length of the
	// vector sum from the centroid of the group to all places tightened so far,
	// divided by the distance from there to the outermost. It counts fasteners
	// at the edge without counterweight. (The centroid of those tightened says
	// less: after the first bolt of any circle it is at the rim.)
	Pull float64 `json:"pull"`
	// PullEarly is the greatest pull in the first third of the steps, while
	// little is tight and the part can still tip.
	PullEarly float64 `json:"pull_early"`
	// PullStep is the step after which the pull is greatest.
	PullStep int `json:"pull_step,omitempty"`
	// Saddle is how much what is tight bends the part along one line more than
	// across it, at the worst moment, in fasteners at the edge.
	Saddle float64 `json:"saddle"`
	// Run is the longest run of fasteners on one side of a line through the
	// middle.
	Run int `json:"run"`
	// Inwards is the number of steps to a place further in than an earlier one.
	Inwards int `json:"inwards"`
	// Neighbours is the number of steps from a place to its neighbour.
	Neighbours int `json:"neighbours"`
	// TravelMm is the path of the wrench within the group.
	TravelMm float64 `json:"travel_mm"`
}
