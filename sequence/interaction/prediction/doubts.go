package prediction

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/procedure"
)

// Where the joint or the work is outside the range of the model.
const (
	PreviewOnly     finding.Code = "forecast preview only"
	PastYield       finding.Code = "forecast past yield" // kind, yield
	NoSnugPass      finding.Code = "forecast no snug pass"
	SlackAtTheEnd   finding.Code = "forecast slack at the end" // bolts
	SlackOnTheWay   finding.Code = "forecast slack on the way" // bolts
	HardeningCounts finding.Code = "forecast hardening counts"
	ThickForAPlate  finding.Code = "forecast thick for a plate" // times: how far a load spreads, in thicknesses
)

// doubts reports where the joint or the work is outside the range of the model.
func (w *forecaster) doubts(f Forecast) (list []finding.Finding) {
	doubt := func(code finding.Code, values finding.Values) { list = append(list, finding.Warned(code, values)) }
	if _, preview := w.model.Kernel.(compliance.InfinitePlate); preview {
		doubt(PreviewOnly, nil)
	}
	list = append(list, f.Falls...)
	for _, kind := range procedure.BeyondYield(w.plan, w.p.Nominal.TargetsN) {
		doubt(PastYield, finding.Values{"kind": kind.Name, "yield": unit.Force(procedure.YieldN(kind))})
	}
	if f.Passes[0].Share > limits.SnugShare {
		doubt(NoSnugPass, nil)
	}
	if end, ever := w.slack(); end > 0 {
		doubt(SlackAtTheEnd, finding.Values{"bolts": end})
	} else if ever > 0 {
		doubt(SlackOnTheWay, finding.Values{"bolts": ever})
	}
	once := advice.ClassOf(f.OnePass.Min.Low)
	if once == advice.Strong {
		doubt(HardeningCounts, nil)
	}
	if thin := w.reach(); thin > 0 && thin < limits.ThinReach && once != advice.Negligible {
		doubt(ThickForAPlate, finding.Values{"times": thin})
	}
	return list
}

// slack counts the bolts that are in but hold nothing at the soft end: at the
// end of the work, and the most at the end of any pass.
func (w *forecaster) slack() (end, ever int) {
	in := make([]bool, len(w.turned))
	for n, after := range w.p.Soft.Passes {
		for _, step := range w.work.Passes[n] {
			in[step.Fastener] = step.Do != contact.Out
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

// reach is how far a load spreads in a plate on the nominal gasket, in its
// thicknesses; 0 if the part is not a plate.
func (w *forecaster) reach() float64 {
	rigidity := 0.0
	switch plate := w.model.Kernel.(type) {
	case compliance.Plate:
		rigidity = plate.RigidityNmm
	case compliance.InfinitePlate:
		rigidity = plate.RigidityNmm
	}
	if rigidity == 0 || w.model.Part.Thickness == 0 {
		return 0
	}
	return compliance.CharacteristicLengthMm(rigidity, w.model.Foundation.Nominal) / float64(w.model.Part.Thickness)
}
