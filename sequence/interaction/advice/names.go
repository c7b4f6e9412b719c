package advice

import "drawdown/sequence"

// Names of trials that are no plain ways.
const (
	OwnWay       = "the file's own"
	Recipe       = "recipe"
	OnceRound    = "once round"
	NoFirstStage = "no first stage"
	SnugFirst    = "10 % snug pass first"
	OneMorePass  = "one more pass"
	LastTwice    = "last torque again, no angle"
	LeastScatter = "search: least scatter"
	LeastTilt    = "search: least tilt"
	LeastOfBoth  = "search: both"
)

// TrialNames lists them.
func TrialNames() []string {
	return []string{OwnWay, Recipe, OnceRound, NoFirstStage, SnugFirst, OneMorePass, LastTwice, LeastScatter, LeastTilt, LeastOfBoth}
}

// RecipeWords say what the recipe is.
const RecipeWords = "Recipe: a snug pass to 10 %, the stages of the file from the centre out, the last torque once round or end to end, and the same again."

// SensibleWays are the ways that bolts are gone round by, in the order of the help.
var SensibleWays = []sequence.Way{sequence.Spiral, sequence.Cross, sequence.RowWay, sequence.Star, sequence.Circular}
