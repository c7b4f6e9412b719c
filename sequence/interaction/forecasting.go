package interaction

import (
	"cmp"
	"math"
	"slices"

	"drawdown/sequence/plan"
)

// lowFromPercent is where a bolt counts among the lowest: what no wrench can
// tell from the target is no news.
const lowFromPercent = 99.5

// forecaster walks the three runs of a prediction side by side.
type forecaster struct {
	plan  plan.Plan
	model Model
	p     Prediction
	work  PlanWork

	level  Level
	turned []bool
	aims   [3][]float64 // of the last pass that turned a fastener, N, by run
}

// Forecast sums a prediction up for people. The prediction must be that of the
// work on the model.
func (m Model) Forecast(p plan.Plan, prediction Prediction, work PlanWork) (Forecast, error) {
	w := &forecaster{plan: p, model: m, p: prediction, work: work, level: LevelOver(m.At), turned: make([]bool, len(m.At))}
	for r := range w.aims {
		w.aims[r] = make([]float64, len(m.At))
	}
	f := Forecast{
		Class: prediction.Class(), Repeats: -1, FoundationMPaPerMm: m.Foundation,
		Basis: m.Basis, Hundreds: w.hundreds(), Falls: work.Falls, FrictionSD: FrictionOf(p).SDPercent,
		Sensitivity: w.over(func(r Run) float64 { return r.Joint.Sensitivity() }),
	}
	for n := range work.Passes {
		f.Passes = append(f.Passes, w.pass(n))
	}
	for i := range m.At {
		f.TargetsN = append(f.TargetsN, w.over(func(r Run) float64 { return r.TargetsN[i] }))
	}
	f.Lowest = w.lowest(f.Last())
	if len(f.Lowest) > 0 {
		if t, counts := w.taken(f.Lowest[0]); counts {
			f.Taken = &t
		}
	}
	if err := w.judge(&f); err != nil {
		return Forecast{}, err
	}
	f.Doubts = w.doubts(f)
	return f, nil
}

// over gives a figure over the gasket's band.
func (w *forecaster) over(of func(Run) float64) Band {
	return bandOf(of(w.p.Soft), of(w.p.Nominal), of(w.p.Stiff))
}

func (w *forecaster) spread(of func(Run) Spread) SpreadBand {
	s, n, t := of(w.p.Soft), of(w.p.Nominal), of(w.p.Stiff)
	return SpreadBand{bandOf(s.Min, n.Min, t.Min), bandOf(s.Mean, n.Mean, t.Mean), bandOf(s.Max, n.Max, t.Max), bandOf(s.SD, n.SD, t.SD)}
}

func (w *forecaster) pass(n int) ForecastPass {
	made := ForecastPass{Number: n + 1, Stage: w.stage(n)}
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
	w.sumUp(&made, func(r Run) AfterPass { return r.Passes[n] })
	return made
}

func (w *forecaster) stage(n int) *plan.Stage {
	if n >= len(w.work.Stages) {
		return nil
	}
	return &w.plan.Tighten.Stages[w.work.Stages[n]]
}

// sumUp fills in how the joint stands after a pass.
func (w *forecaster) sumUp(made *ForecastPass, after func(Run) AfterPass) {
	made.Turned = slices.Clone(w.turned)
	made.Lowest = none
	for i, in := range w.turned {
		percent, ofAim, class := Band{}, Band{}, Class("")
		if in {
			percent = w.over(func(r Run) float64 { return 100 * after(r).ForcesN[i] / r.TargetsN[i] })
			ofAim = w.ofAim(i, after)
			class = ClassOf(ofAim.Low)
			if made.Lowest == none || tied(ofAim.Low) < tied(made.OfAim[made.Lowest].Low) {
				made.Lowest = i
			}
		}
		made.Percent, made.OfAim, made.Class = append(made.Percent, percent), append(made.OfAim, ofAim), append(made.Class, class)
	}
	made.Spread = w.spread(func(r Run) Spread { return SpreadOf(chosen(Percent(after(r).ForcesN, r.TargetsN), w.turned)) })
	made.TiltMm = w.over(func(r Run) float64 { return after(r).LargestTiltMm })
	made.WarpMm = w.over(func(r Run) float64 { return after(r).LargestWarpMm })
	made.UnevenMm = w.over(func(r Run) float64 { return after(r).LargestUnevenMm })
	made.LargestN = w.over(func(r Run) float64 { return after(r).LargestForceN })
}

// chosen keeps the figures of some fasteners.
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
	w.turned[do.Fastener] = do.Do != Out
	f := Frame{Fastener: do.Fastener, Turned: slices.Clone(w.turned)}
	forces := func(r Run) []float64 { return r.Passes[n].StepForcesN[step] }
	for i := range w.turned {
		f.Percent = append(f.Percent, w.over(func(r Run) float64 { return 100 * forces(r)[i] / r.TargetsN[i] }))
	}
	var tilt, warp, uneven [3]float64
	for k, r := range []Run{w.p.Soft, w.p.Nominal, w.p.Stiff} {
		closure := r.Joint.ClosureMm(forces(r))
		tilt[k], warp[k], uneven[k] = w.level.Tilt(closure), w.level.Warp(closure), Unevenness(closure)
		if k == 1 {
			f.ClosureMm = closure
		}
	}
	f.TiltMm, f.WarpMm, f.UnevenMm = bandOf3(tilt), bandOf3(warp), bandOf3(uneven)
	return f
}

func bandOf3(v [3]float64) Band { return bandOf(v[0], v[1], v[2]) }

// aim notes what a pass brings its fasteners to: its torque, or, by angle, the
// mean that its kind then has, in each run for itself.
func (w *forecaster) aim(n int) {
	byTravel := map[string][]int{}
	for _, step := range w.work.Passes[n] {
		for r := range w.aims {
			w.aims[r][step.Fastener] = step.ForceN
		}
		if step.Do == ByTravel {
			kind := w.plan.Joint.Fasteners[step.Fastener].Kind
			byTravel[kind] = append(byTravel[kind], step.Fastener)
		}
	}
	for _, list := range byTravel {
		for r, run := range []Run{w.p.Soft, w.p.Nominal, w.p.Stiff} {
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

func (w *forecaster) ofAim(i int, after func(Run) AfterPass) Band {
	var v [3]float64
	for k, r := range []Run{w.p.Soft, w.p.Nominal, w.p.Stiff} {
		if w.aims[k][i] > 0 {
			v[k] = 100 * after(r).ForcesN[i] / w.aims[k][i]
		}
	}
	return bandOf3(v)
}

// tied rounds what mirror images of a bolt differ in by round-off.
func tied(percent float64) float64 { return math.Round(1e4 * percent) }

// lowest lists the fasteners that end low, the lowest first, and of equals the
// one that is turned first.
func (w *forecaster) lowest(last ForecastPass) []int {
	numbers := w.plan.Tighten.Numbers()
	var list []int
	for i, percent := range last.Percent {
		if last.Turned[i] && percent.Low < lowFromPercent {
			list = append(list, i)
		}
	}
	slices.SortFunc(list, func(i, k int) int {
		return cmp.Or(cmp.Compare(tied(last.Percent[i].Low), tied(last.Percent[k].Low)), cmp.Compare(numbers[i], numbers[k]))
	})
	return list
}

// shareOf is the share of the target that a pass takes, where it is one for all.
func shareOf(pass Pass, targets []float64) float64 {
	share := 0.0
	for k, step := range pass {
		one := step.ForceN / targets[step.Fastener]
		if step.Do != ToForce || k > 0 && math.Abs(one-share) > 1e-9 {
			return 0
		}
		share = one
	}
	return share
}

// judge says what a single pass would do, and what one more buys.
func (w *forecaster) judge(f *Forecast) error {
	targets := w.p.Nominal.TargetsN
	once, err := w.afterwards([]Pass{ToForces(w.plan.Tighten.Order, targets, 1)})
	if err != nil {
		return err
	}
	f.OnePass = w.spread(func(r Run) Spread { return SpreadOf(Percent(once(r).ForcesN, targets)) })
	if !w.work.CanRepeat() {
		return nil
	}
	passes := w.work.Passes
	last := passes[len(passes)-1]
	again, err := w.afterwards(append(slices.Clone(passes), last))
	if err != nil {
		return err
	}
	f.OneMore = &ForecastPass{Number: len(passes) + 1, Share: shareOf(last, targets)}
	w.sumUp(f.OneMore, again)
	count, enough, err := w.p.Soft.Joint.Repeats(passes, targets, f.FrictionSD, w.model.Stick)
	if enough {
		f.Repeats = count
	}
	return err
}

// afterwards works passes from a loose joint on each run and gives how the last
// of them leaves it.
func (w *forecaster) afterwards(passes []Pass) (func(Run) AfterPass, error) {
	ends := map[*Joint]AfterPass{}
	for _, r := range []Run{w.p.Soft, w.p.Nominal, w.p.Stiff} {
		nuts := r.Joint.Loose()
		nuts.Stick = w.model.Stick
		after, err := nuts.Work(passes, w.model.At)
		if err != nil {
			return nil, err
		}
		ends[r.Joint] = after[len(after)-1]
	}
	return func(r Run) AfterPass { return ends[r.Joint] }, nil
}

// CanRepeat says whether the last pass is a torque over all fasteners, as the
// plan has it, so that the same again is a pass that one can do.
func (w PlanWork) CanRepeat() bool {
	if len(w.Passes) == 0 || w.Compensated || len(w.Falls) > 0 {
		return false
	}
	last := w.Passes[len(w.Passes)-1]
	isTurn := func(s Step) bool { return s.Do != ToForce }
	return len(last) == len(w.TargetsN) && !slices.ContainsFunc(last, isTurn)
}
