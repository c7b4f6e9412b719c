package texts

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// ofAnyText are the findings that hold for a text outside the file of the joint: names,
// counts and sides there may be those of the whole machine.
var ofAnyText = []finding.Code{TextTorque, TextAngle, TextSize, TextDry, TextLubricant, TextReuse, TextAgain, TextsDisagree, TextOtherOrder}

// OfJoint compares a text of a machine file that is about a joint with the file of the
// joint, as if it were a caution there.
func OfJoint(p plan.Plan, c plan.Caution) (found []finding.Finding) {
	if c.Text == "" {
		return nil
	}
	p.Cautions = append(slices.Clone(p.Cautions), c)
	of := Cautions(p)
	for _, f := range of[len(of)-1] {
		if slices.Contains(ofAnyText, f.Code) {
			found = append(found, f)
		}
	}
	return found
}

// About reports whether a text is about the fasteners of a joint by its title: cover
// bolts, for the title Gearbox cover.
func About(text string, p plan.Plan) bool {
	title := stemsOf(p.Title)
	words := wordsOf(text)
	for i := 1; i < len(words); i++ {
		if isFastener(words[i].low) && slices.Contains(title, words[i-1].low) {
			return true
		}
	}
	return slices.ContainsFunc(words, func(w word) bool {
		first := compound(w.low)
		return first != "" && slices.Contains(title, first)
	})
}
