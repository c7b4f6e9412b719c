package advice

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/procedure"
)

// Way names a way to do the work: one of those below, or a way to order bolts.
// It is a term of the trade, as in the JSON output.
type Way = finding.Term

const (
	OwnWay       Way = "the file's own"
	Recipe       Way = "recipe"
	OnceRound    Way = "once round"
	NoFirstStage Way = "no first stage"
	SnugFirst    Way = "10 % snug pass first"
	OneMorePass  Way = "one more pass"
	LastTwice    Way = "last torque again, no angle"
	LeastScatter Way = "search: least scatter"
	LeastTilt    Way = "search: least tilt"
	LeastOfBoth  Way = "search: both"
)

// Searched reports whether a way is the result of a search, which its name does
// not describe.
func Searched(w Way) bool { return slices.Contains([]Way{LeastScatter, LeastTilt, LeastOfBoth}, w) }

// repeats are the ways that apply the last torque again.
var repeats = []Way{OneMorePass, LastTwice, Recipe}

// What a way changes, if its name does not say so.
const (
	RecipeIs   finding.Code = "way recipe"
	TorqueOnce finding.Code = "way torque once more" // kind, torque
)

// changed describes what a way changes, so that the advice is clear without a
// table.
func changed(w Way, hundreds []procedure.Hundred) any {
	switch w {
	case Recipe:
		return finding.Noted(RecipeIs, nil)
	case LastTwice:
		var list []finding.Finding
		for _, h := range procedure.Taken(procedure.ByLastTorque, hundreds) {
			list = append(list, finding.Noted(TorqueOnce, finding.Values{"kind": h.Kind, "torque": h.Torque}))
		}
		return list
	}
	return w
}
