package interaction

import (
	"fmt"
	"strings"
)

const (
	// snugShare is the most that the first pass over a loose part should take
	// (engineering judgement; 10 % is usual).
	snugShare = 0.5
	// thinReach is how far a load must reach in a plate, in its thicknesses, for
	// thin-plate theory: against a thick plate the neighbours came out 5 to 17 %
	// too strong at 0.8 to 1.
	thinReach = 0.8
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
	Fall   Fall
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

// doubts says where the joint or the work leaves what the model can follow.
func (w *forecaster) doubts(f Forecast) (list []Doubt) {
	if _, preview := w.model.Kernel.(InfinitePlate); preview {
		list = append(list, Doubt{Kind: PreviewOnly})
	}
	for _, fall := range f.Falls {
		list = append(list, Doubt{Kind: TorqueFalls, Fall: fall})
	}
	for _, kind := range BeyondYield(w.plan, w.p.Nominal.TargetsN) {
		list = append(list, Doubt{Kind: PastYield, Name: kind.Name, Figure: YieldN(kind) / 1000})
	}
	if f.Passes[0].Share > snugShare {
		list = append(list, Doubt{Kind: NoSnugPass})
	}
	if end, ever := w.slack(); end > 0 {
		list = append(list, Doubt{Kind: SlackAtTheEnd, Bolts: end})
	} else if ever > 0 {
		list = append(list, Doubt{Kind: SlackOnTheWay, Bolts: ever})
	}
	if ClassOf(f.OnePass.Min.Low) == Strong {
		list = append(list, Doubt{Kind: HardeningCount})
	}
	if thin := w.reach(); thin > 0 && thin < thinReach && ClassOf(f.OnePass.Min.Low) != Negligible {
		list = append(list, Doubt{Kind: ThickForAPlate, Figure: thin})
	}
	return list
}

// bolts says how many go slack.
func bolts(n int) string {
	if n == 1 {
		return "1 bolt goes"
	}
	return fmt.Sprintf("%d bolts go", n)
}

// slack counts the bolts that hold nothing at the soft end though they are in:
// at the end of the work, and the most at the end of any pass.
func (w *forecaster) slack() (end, ever int) {
	in := make([]bool, len(w.turned))
	for n, after := range w.p.Soft.Passes {
		for _, step := range w.work.Passes[n] {
			in[step.Fastener] = step.Do != Out
		}
		end = 0
		for i, force := range after.ForcesN {
			if in[i] && force == 0 {
				end++
			}
		}
		ever = max(ever, end)
	}
	return end, ever
}

// reach is how far a load reaches in a plate on the nominal gasket, in its
// thicknesses; 0 where the part is no plate.
func (w *forecaster) reach() float64 {
	rigidity := 0.0
	switch plate := w.model.Kernel.(type) {
	case Plate:
		rigidity = plate.RigidityNmm
	case InfinitePlate:
		rigidity = plate.RigidityNmm
	}
	if rigidity == 0 || w.model.Part.Thickness == 0 {
		return 0
	}
	return CharacteristicLengthMm(rigidity, w.model.Foundation.Nominal) / float64(w.model.Part.Thickness)
}
