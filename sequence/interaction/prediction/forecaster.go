package prediction

import (
	"cmp"
	"math"
	"slices"

	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/plan"
)

// forecaster steps through the three runs of a prediction in parallel.
type forecaster struct {
	plan  plan.Plan
	model Model
	p     Prediction
	work  procedure.Work

	turned []bool
	aims   [3][]float64 // aim of the last pass that turned a fastener, N, by run
}

// Forecast summarizes a prediction. The runs must be those of the work on the
// model.
func (m Model) Forecast(p plan.Plan, runs Prediction, work procedure.Work) (Forecast, error) {
	w := &forecaster{plan: p, model: m, p: runs, work: work, turned: make([]bool, len(m.At))}
	for r := range w.aims {
		w.aims[r] = make([]float64, len(m.At))
	}
	row, _ := m.Kernel.(compliance.Row)
	f := Forecast{
		Class: runs.Class(), Repeats: -1, FoundationMPaPerMm: m.Foundation, PerLength: row.PerLength(),
		Stated: m.Stated, Assumed: m.Assumed, Hundreds: w.hundreds(), Falls: work.Falls, FrictionSD: procedure.FrictionOf(p).SDPercent,
		Sensitivity: w.p.Over(func(r Run) float64 { return r.Joint.Sensitivity() }),
	}
	for n := range work.Passes {
		f.Passes = append(f.Passes, w.pass(n))
	}
	for i := range m.At {
		f.TargetsN = append(f.TargetsN, w.p.Over(func(r Run) float64 { return r.TargetsN[i] }))
	}
	f.Lowest = w.lowest(f.Last())
	if len(f.Lowest) > 0 {
		f.Taken = w.taken(f.Lowest[0])
	}
	if err := w.further(&f); err != nil {
		return Forecast{}, err
	}
	f.Doubts = w.doubts(f)
	return f, nil
}

func (w *forecaster) pass(n int) ForecastPass {
	made := ForecastPass{Number: n + 1}
	if n < len(w.work.Stages) {
		made.Stage = &w.plan.Tighten.Stages[w.work.Stages[n]]
	}
	if !w.work.Compensated || n < len(w.work.Passes)-1 {
		made.Share = shareOf(w.work.Passes[n], w.p.Nominal.TargetsN)
	}
	for s := range w.work.Passes[n] {
		made.Frames = append(made.Frames, w.frame(n, s))
		if made.Frames[s].UnevenMm.Nominal > made.Frames[made.WorstFrame].UnevenMm.Nominal {
			made.WorstFrame = s
		}
	}
	w.aim(n)
	w.sumUp(&made, w.p, n)
	return made
}

// sumUp fills in the state of the joint after a pass of some runs.
func (w *forecaster) sumUp(made *ForecastPass, runs Prediction, n int) {
	made.Turned = slices.Clone(w.turned)
	made.Lowest = -1
	for i, in := range w.turned {
		made.Percent = append(made.Percent, runs.Over(func(r Run) float64 { return 100 * r.Passes[n].ForcesN[i] / r.TargetsN[i] }))
		var ofAim bounds.Band
		if in {
			ofAim = w.ofAim(i, runs, n)
			if made.Lowest < 0 || tied(ofAim.Low) < tied(made.OfAim[made.Lowest].Low) {
				made.Lowest = i
			}
		}
		made.OfAim = append(made.OfAim, ofAim)
	}
	made.Spread = runs.SpreadsOver(func(r Run) bounds.Spread { return bounds.SpreadOf(chosen(r.Percent(n), w.turned)) })
	made.TiltMm = runs.Over(func(r Run) float64 { return r.Passes[n].LargestTiltMm })
	made.WarpMm = runs.Over(func(r Run) float64 { return r.Passes[n].LargestWarpMm })
	made.UnevenMm = runs.Over(func(r Run) float64 { return r.Passes[n].LargestUnevenMm })
	made.LargestN = runs.Over(func(r Run) float64 { return r.Passes[n].LargestForceN })
}

// chosen returns the figures of some fasteners.
func chosen(list []float64, which []bool) (some []float64) {
	for i, v := range list {
		if which[i] {
			some = append(some, v)
		}
	}
	return some
}

// frame is the joint after a step of a pass.
func (w *forecaster) frame(n, step int) Frame {
	do := w.work.Passes[n][step]
	w.turned[do.Fastener] = do.Do != contact.Out
	f := Frame{Fastener: do.Fastener, Turned: slices.Clone(w.turned)}
	forces := func(r Run) []float64 { return r.Passes[n].StepForcesN[step] }
	for i := range w.turned {
		f.Percent = append(f.Percent, w.p.Over(func(r Run) float64 { return 100 * forces(r)[i] / r.TargetsN[i] }))
	}
	over := func(of func(contact.Lie) float64) bounds.Band {
		return w.p.Over(func(r Run) float64 { return of(r.Passes[n].StepLies[step]) })
	}
	f.TiltMm = over(func(l contact.Lie) float64 { return l.TiltMm })
	f.WarpMm = over(func(l contact.Lie) float64 { return l.WarpMm })
	f.UnevenMm = over(func(l contact.Lie) float64 { return l.UnevenMm })
	return f
}

// aim records the aim of a pass for its fasteners: its torque, or for an angle
// the resulting mean of the kind, separately for each run.
func (w *forecaster) aim(n int) {
	byTravel := map[string][]int{}
	for _, step := range w.work.Passes[n] {
		for r := range w.aims {
			w.aims[r][step.Fastener] = step.ForceN
		}
		if step.Do == contact.ByTravel {
			kind := w.plan.Joint.Fasteners[step.Fastener].Kind
			byTravel[kind] = append(byTravel[kind], step.Fastener)
		}
	}
	for _, list := range byTravel {
		for r, run := range w.p.Runs() {
			mean := 0.0
			for _, i := range list {
				mean += run.Passes[n].ForcesN[i] / float64(len(list))
			}
			for _, i := range list {
				w.aims[r][i] = mean
			}
		}
	}
}

func (w *forecaster) ofAim(i int, runs Prediction, n int) bounds.Band {
	var v [3]float64
	for k, r := range runs.Runs() {
		if w.aims[k][i] > 0 {
			v[k] = 100 * r.Passes[n].ForcesN[i] / w.aims[k][i]
		}
	}
	return bounds.Of(v[0], v[1], v[2])
}

// tied rounds away the differences between mirror images of a bolt that come
// from rounding.
func tied(percent float64) float64 { return math.Round(1e4 * percent) }

// lowest lists the fasteners that end low, the lowest first; of equal ones the
// first in the order.
func (w *forecaster) lowest(last ForecastPass) []int {
	numbers := w.plan.Tighten.Numbers()
	var list []int
	for i, percent := range last.Percent {
		if last.Turned[i] && percent.Low < limits.LowFromPercent {
			list = append(list, i)
		}
	}
	slices.SortFunc(list, func(i, k int) int {
		return cmp.Or(cmp.Compare(tied(last.Percent[i].Low), tied(last.Percent[k].Low)), cmp.Compare(numbers[i], numbers[k]))
	})
	return list
}

// shareOf is the share of the target in a pass, if it is the same for all.
func shareOf(pass contact.Pass, targets []float64) float64 {
	share := 0.0
	for k, step := range pass {
		one := step.ForceN / targets[step.Fastener]
		if step.Do != contact.ToForce || k > 0 && math.Abs(one-share) > 1e-9 {
			return 0
		}
		share = one
	}
	return share
}

// further adds the results of a single pass, and of one more pass.
func (w *forecaster) further(f *Forecast) error {
	targets := w.p.Nominal.TargetsN
	forcesAlone := w.model
	forcesAlone.At = nil
	once, err := forcesAlone.Again(w.p, []contact.Pass{contact.ToForces(w.plan.Tighten.Order, targets, 1)})
	if err != nil {
		return err
	}
	for _, r := range once.Runs() {
		r.TargetsN = targets
	}
	f.OnePass = once.Spreads(0)
	if !w.work.CanRepeat() {
		return nil
	}
	passes := w.work.Passes
	last := passes[len(passes)-1]
	again, err := w.model.Again(w.p, append(slices.Clone(passes), last))
	if err != nil {
		return err
	}
	f.OneMore = &ForecastPass{Number: len(passes) + 1, Share: shareOf(last, targets)}
	w.sumUp(f.OneMore, again, len(passes))
	count, enough, err := procedure.Repeats(w.p.Soft.Joint, passes, targets, f.FrictionSD, w.model.Stick)
	if enough {
		f.Repeats = count
	}
	return err
}

// hundreds fills in the forces.
func (w *forecaster) hundreds() []procedure.Hundred {
	var list []procedure.Hundred
	for _, h := range w.work.Hundreds {
		for i, f := range w.plan.Joint.Fasteners {
			if h.Kind == "" || f.Kind == h.Kind {
				h.ForceN = w.p.Over(func(r Run) float64 { return r.TargetsN[i] })
				break
			}
		}
		list = append(list, h)
	}
	return list
}
