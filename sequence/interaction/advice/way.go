package advice

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/procedure"
)

// Way names a way to do the work: one of those below, or one by which bolts are
// ordered. It is a word of the trade, and what JSON has.
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

// Searched reports whether a way is an order that was searched, which nobody can tell
// by its name.
func Searched(w Way) bool { return slices.Contains([]Way{LeastScatter, LeastTilt, LeastOfBoth}, w) }

// repeats are the ways that give the last torque again.
var repeats = []Way{OneMorePass, LastTwice, Recipe}

// What a way changes, where its name alone would not tell.
const (
	RecipeIs   finding.Code = "way recipe"
	TorqueOnce finding.Code = "way torque once more" // kind, torque
)

// changed says what a way changes, so that it is understood without a table.
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
