package prediction

import (
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/procedure"
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

// doubts says where the joint or the work leaves what the model can follow.
func (w *forecaster) doubts(f Forecast) (list []advice.Doubt) {
	if _, preview := w.model.Kernel.(compliance.InfinitePlate); preview {
		list = append(list, advice.Doubt{Kind: advice.PreviewOnly})
	}
	for _, fall := range f.Falls {
		list = append(list, advice.Doubt{Kind: advice.TorqueFalls, Fall: fall})
	}
	for _, kind := range procedure.BeyondYield(w.plan, w.p.Nominal.TargetsN) {
		list = append(list, advice.Doubt{Kind: advice.PastYield, Name: kind.Name, Figure: procedure.YieldN(kind) / 1000})
	}
	if f.Passes[0].Share > snugShare {
		list = append(list, advice.Doubt{Kind: advice.NoSnugPass})
	}
	if end, ever := w.slack(); end > 0 {
		list = append(list, advice.Doubt{Kind: advice.SlackAtTheEnd, Bolts: end})
	} else if ever > 0 {
		list = append(list, advice.Doubt{Kind: advice.SlackOnTheWay, Bolts: ever})
	}
	if advice.ClassOf(f.OnePass.Min.Low) == advice.Strong {
		list = append(list, advice.Doubt{Kind: advice.HardeningCount})
	}
	if thin := w.reach(); thin > 0 && thin < thinReach && advice.ClassOf(f.OnePass.Min.Low) != advice.Negligible {
		list = append(list, advice.Doubt{Kind: advice.ThickForAPlate, Figure: thin})
	}
	return list
}

// slack counts the bolts that hold nothing at the soft end though they are in:
// at the end of the work, and the most at the end of any pass.
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

// reach is how far a load reaches in a plate on the nominal gasket, in its
// thicknesses; 0 where the part is no plate.
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
