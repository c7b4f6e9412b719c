// Package advice decides what a prediction comes to: how strongly the bolts act on
// each other, what is not to be trusted, and whether to ask the maker for another
// way. All limits stand here. It may import what work is made of, and reckons no
// force.
package advice

// Class says in a word how much bolts act on each other.
type Class string

const (
	Negligible Class = "negligible" // next to the scatter of the torque
	Noticeable Class = "noticeable" // add one repeat pass
	Strong     Class = "strong"     // several passes, or measured stretch
)

// Bounds of the classes in percent of the target of the worst bolt
// (engineering judgement).
const negligibleFromPercent, noticeableFromPercent = 95, 85

// ClassOf judges the worst bolt after the last pass.
func ClassOf(worstPercent float64) Class {
	switch {
	case worstPercent >= negligibleFromPercent:
		return Negligible
	case worstPercent >= noticeableFromPercent:
		return Noticeable
	}
	return Strong
}

// Advice says in words what the class asks for.
func (c Class) Advice() string {
	switch c {
	case Negligible:
		return "cross-talk is negligible next to torque scatter"
	case Noticeable:
		return "cross-talk is noticeable: add one repeat pass"
	}
	return "cross-talk is strong: several passes or measured stretch"
}

// Guidance must stand beside every prediction.
const Guidance = "Order-of-magnitude guidance from a simplified elastic model. Gasket stiffness is a guess within a factor of about two to three, so predicted losses are too. " +
	"It is no substitute for the maker's figures: use the service manual's torque, angle, sequence and re-torque rules where they exist. " +
	"Real scatter is usually dominated by friction in thread and under the head, which a repeat pass in any order does not remove."
