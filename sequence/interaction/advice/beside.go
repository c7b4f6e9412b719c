package advice

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/limits"
)

// What the first stage contributes.
const (
	SnugSame   finding.Code = "snug same"
	SnugUneven finding.Code = "snug uneven" // without, own: mm
	SnugLowest finding.Code = "snug lowest" // without, own: percent
)

// OnFirstStage compares the work without its first stage with the file's own.
func OnFirstStage(own, without Trial) (list []finding.Finding) {
	uneven, lowest := own.UnevenMm.Nominal, own.Lowest.Low
	if hardly := math.Max(limits.SameUnevenShare*uneven, limits.SameUnevenMm); math.Abs(without.UnevenMm.Nominal-uneven) >= hardly {
		list = append(list, finding.Noted(SnugUneven, finding.Values{"without": without.UnevenMm.Nominal, "own": uneven}))
	}
	if math.Abs(without.Lowest.Low-lowest) >= limits.SamePoints {
		list = append(list, finding.Noted(SnugLowest, finding.Values{"without": without.Lowest.Low, "own": lowest}))
	}
	if list == nil {
		list = append(list, finding.Noted(SnugSame, nil))
	}
	return list
}

// RecipeHere compares the recipe with the file's own work.
const RecipeHere finding.Code = "advice recipe here" // ends, than: better, worse, nothing

// OnRecipe compares the recipe with the file's own work.
func OnRecipe(own, recipe Trial) finding.Finding {
	than := ""
	switch gain := recipe.Lowest.Low - own.Lowest.Low; {
	case gain >= limits.WorthPoints:
		than = "better"
	case gain <= -limits.WorthPoints:
		than = "worse"
	}
	return finding.Noted(RecipeHere, finding.Values{"ends": recipe.Lowest, "than": than})
}

// Which of friction and cross-talk deserves effort.
const (
	FrictionRules   finding.Code = "scatter friction rules"
	FrictionRepeats finding.Code = "scatter friction rules, repeat asked for"
	CountAlike      finding.Code = "scatter both alike"
	CrossTalkRules  finding.Code = "scatter cross-talk rules"
	BothAreLess     finding.Code = "scatter both are less" // kinds
)

// Scatters are standard deviations, in percent.
type Scatters struct{ Friction, Elastic, Both float64 }

// OnScatter says which of the two deserves effort, consistent with what the
// prediction asks for.
func OnScatter(s Scatters, asksForRepeat bool, onAngle []string) []finding.Finding {
	code := CrossTalkRules
	switch {
	case s.Elastic < s.Both*limits.CountsAlike && asksForRepeat:
		code = FrictionRepeats
	case s.Elastic < s.Both*limits.CountsAlike:
		code = FrictionRules
	case s.Elastic < s.Both*limits.CountsMore:
		code = CountAlike
	}
	list := []finding.Finding{finding.Noted(code, nil)}
	if len(onAngle) > 0 && s.Both < s.Friction {
		list = append(list, finding.Noted(BothAreLess, finding.Values{"kinds": onAngle}))
	}
	return list
}
