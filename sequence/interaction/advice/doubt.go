package advice

import (
	"fmt"
	"strings"

	"drawdown/sequence/interaction/procedure"
)

// DoubtKind is why a forecast is not to be trusted.
type DoubtKind string

const (
	PreviewOnly    DoubtKind = "preview only"      // nothing more
	TorqueFalls    DoubtKind = "torque falls"      // Fall
	PastYield      DoubtKind = "past yield"        // Name: the kind; Figure: its yield load in kN
	NoSnugPass     DoubtKind = "no snug pass"      // nothing more
	SlackAtTheEnd  DoubtKind = "slack at the end"  // Bolts
	SlackOnTheWay  DoubtKind = "slack on the way"  // Bolts
	HardeningCount DoubtKind = "hardening counts"  // nothing more
	ThickForAPlate DoubtKind = "thick for a plate" // Figure: how far a load reaches, in thicknesses
)

// Doubt is where the joint or the work leaves what the model can follow.
type Doubt struct {
	Kind   DoubtKind
	Name   string
	Bolts  int
	Figure float64
	Fall   procedure.Fall
}

// String says it in a whole English sentence.
func (d Doubt) String() string {
	switch d.Kind {
	case PreviewOnly:
		return "A preview only: a plate without edges stands in for the part, so losses may be low by a factor of 2."
	case TorqueFalls:
		words := d.Fall.String()
		return strings.ToUpper(words[:1]) + words[1:] + ": it turns no nut. The figures are those of the file as it stands."
	case PastYield:
		return fmt.Sprintf("Kind %s is turned beyond its yield at %.0f kN, and the model knows no yield: its percentages show how even the bolts would be, its newtons are not real. At yield bolts come out more even than shown.", d.Name, d.Figure)
	case NoSnugPass:
		return "There is no snug pass: a loose part see-saws under the first bolts, which the model takes to lie on its gasket. Bring all bolts to about 10 % first."
	case SlackAtTheEnd:
		return fmt.Sprintf("On the softest gasket %s slack at the end: the joint is not closed, and no percentage stands.", bolts(d.Bolts))
	case SlackOnTheWay:
		return fmt.Sprintf("On the softest gasket %s slack on the way and must be caught up by later passes.", bolts(d.Bolts))
	case HardeningCount:
		return "On a joint as soft as this a gasket that hardens changes the figures by another 5 to 10 points either way."
	case ThickForAPlate:
		return fmt.Sprintf("The part is thick for a plate: a load reaches only %.1f times its thickness. Neighbours act on each other up to a fifth less than shown.", d.Figure)
	}
	return string(d.Kind)
}

// bolts says how many go slack.
func bolts(n int) string {
	if n == 1 {
		return "1 bolt goes"
	}
	return fmt.Sprintf("%d bolts go", n)
}
