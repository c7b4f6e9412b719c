package plan

import (
	"fmt"

	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// mixedLubricants doubts bolts that look alike and turn against another
// friction. A kind is held against the first that differs.
func mixedLubricants(kinds []Kind) []Doubt {
	var found []Doubt
	for i, late := range kinds {
		for _, early := range kinds[:i] {
			if !alike(early, late) || !otherFriction(early, late) {
				continue
			}
			found = append(found, Doubt{Kind: late.Name, About: AboutLubricant, Figure: fmt.Sprintf("%s on the thread", late.Lubricant),
				Says: fmt.Sprintf("differs from %s on kind %s, which has the same thread and class (%s, %s)", early.Lubricant, early.Name, late.Thread.Name, late.Class),
				Look: "whether both are meant: mixed up, the same torque gives another preload"})
			break
		}
	}
	return found
}

// alike says whether two kinds have the same thread and the same class.
func alike(a, b Kind) bool {
	if a.Thread == nil || b.Thread == nil || a.Thread.Name != b.Thread.Name {
		return false
	}
	classA, errA := strength.ParseClass(a.Class, *a.Thread)
	classB, errB := strength.ParseClass(b.Class, *b.Thread)
	return errA == nil && errB == nil && classA.Name == classB.Name
}

// otherFriction says whether the lubricants of two kinds are of different
// friction classes. Stated coefficients are the maker's word.
func otherFriction(a, b Kind) bool {
	if a.Friction != nil || b.Friction != nil {
		return false
	}
	spanA, errA := screw.FrictionOf(a.Lubricant)
	spanB, errB := screw.FrictionOf(b.Lubricant)
	return errA == nil && errB == nil && spanA != spanB
}
