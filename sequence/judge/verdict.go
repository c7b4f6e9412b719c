package judge

// Report is what an order came to.
type Report struct {
	Side     Side          `json:"side"`
	Makers   bool          `json:"makers,omitempty"` // described, not judged
	Verdict  Verdict       `json:"verdict"`
	Findings []Finding     `json:"findings"`
	Groups   []GroupReport `json:"groups,omitempty"` // none where the list is not whole
	// TravelMm is the way of the wrench over the whole order, from place to
	// place; OwnTravelMm that of drawdown's own order.
	TravelMm    float64 `json:"travel_mm"`
	OwnTravelMm float64 `json:"own_travel_mm"`
}

// Verdict sums a report up.
type Verdict string

const (
	// Sound: no rule is broken.
	Sound Verdict = "sound"
	// Remarks: rules are broken, but by little.
	Remarks Verdict = "usable with remarks"
	// Departs: a rule is broken by much. Remarks are not added up, since one
	// slip can break several rules.
	Departs Verdict = "not the trade's order"
	// NotWhole: a fastener is missing, there twice, or unknown.
	NotWhole Verdict = "no whole order"
	// Described: the maker's own order, whatever the findings.
	Described Verdict = "described"
)

// Right reports whether the order can be worked by: it is whole, and it is the
// maker's or keeps near the rules.
func (v Verdict) Right() bool { return v == Sound || v == Remarks || v == Described }

// Rule names what a finding is about.
type Rule string

const (
	Unknown    Rule = "unknown"    // a name that no fastener has
	Twice      Rule = "twice"      // a fastener that comes again
	Missing    Rule = "missing"    // a fastener that is left out
	GroupOrder Rule = "groups"     // a group is begun before an earlier one is finished
	Together   Rule = "cluster"    // the fasteners of a cluster are parted
	Unloaded   Rule = "unloaded"   // a cluster that no spring presses on goes first, or last
	Middle     Rule = "middle"     // starts in the middle
	Outwards   Rule = "outwards"   // works outwards
	OneSide    Rule = "one side"   // no long run on one side
	Neighbours Rule = "neighbours" // not in succession where it can be helped
	Across     Rule = "across"     // round a bolt circle, each followed by one across
	Balance    Rule = "balance"    // the clamp load never pulls far to one side
	Saddle     Rule = "saddle"     // two opposite sides are not drawn down before the others
	Travel     Rule = "travel"     // how far the wrench goes
)

// Severity says what a finding means for the verdict.
type Severity string

const (
	Fault       Severity = "fault"       // of the list itself
	Departure   Severity = "departs"     // from a rule, by much
	Remark      Severity = "remark"      // from a rule, by little
	Description Severity = "description" // nothing to mend
)

// Finding is one thing that an order does. Found returns it as a finding.
type Finding struct {
	Rule     Rule     `json:"rule"`
	Severity Severity `json:"severity"`
	Side     Side     `json:"-"`
	Kinds    []string `json:"kinds,omitempty"` // of the group that was judged
	Steps    []int    `json:"steps,omitempty"` // from 1, rising
	IDs      []string `json:"ids,omitempty"`   // worked at these steps; for Missing without steps
	// Against names what the ids are held against: those in the middle, those
	// that should be worked before, the name that an unknown one may mean. For
	// Outwards, Neighbours and Across there is one for each id.
	Against      []string `json:"against,omitempty"`
	AgainstSteps []int    `json:"against_steps,omitempty"`
	// Figure is the count of fasteners or steps; for Balance the pull, for
	// Travel millimetres. Allowed is what the trade's own orders for the layout
	// reach at the most.
	Figure  float64 `json:"figure"`
	Allowed float64 `json:"allowed"`
	Of      int     `json:"of,omitempty"` // steps in all, for Across
}

// Layout is how the places of a group lie.
type Layout string

const (
	Row    Layout = "row"
	Circle Layout = "bolt circle"
	Spread Layout = "spread" // grids, heads, perimeters, all else
)

// GroupReport holds the figures of one group.
type GroupReport struct {
	Kinds  []string `json:"kinds"`
	Layout Layout   `json:"layout"`
	IDs    []string `json:"ids"` // in the order as given
	Order  Figures  `json:"figures"`
	Own    Figures  `json:"own_figures"` // of drawdown's own order for the layout
}

// Figures measures an order of one group.
type Figures struct {
	// Pull is the greatest pull to one side on the way: the length of the sum
	// of the vectors from the centroid of the group to all places tightened so
	// far, over the distance from there to the outermost. It counts fasteners
	// at the edge that nothing holds against. (The centroid of those tightened
	// says less: after the first bolt of any circle it lies at the rim.)
	Pull float64 `json:"pull"`
	// PullEarly is the greatest pull in the first third of the steps, while little
	// is tight and the part can still tip.
	PullEarly float64 `json:"pull_early"`
	// PullStep is the step after which the pull is greatest.
	PullStep int `json:"pull_step,omitempty"`
	// Saddle is how far what is tight bends the part along one line more than
	// across it, at the worst moment, in fasteners at the edge.
	Saddle float64 `json:"saddle"`
	// Run is the longest run of fasteners that lie on one side of some line
	// through the middle.
	Run int `json:"run"`
	// Inwards counts the steps to a place further in than one worked before.
	Inwards int `json:"inwards"`
	// Neighbours counts the steps from a place to its neighbour.
	Neighbours int `json:"neighbours"`
	// TravelMm is the way of the wrench within the group.
	TravelMm float64 `json:"travel_mm"`
}
