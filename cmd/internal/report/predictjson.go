package report

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/procedure"
)

// predictOut is the output of predict --json. Plain numbers are nominal; a
// range covers the possible stiffness of the gasket. Rows and columns of the
// compliance, and the flexibilities, are in the file's order of fasteners.
type predictOut struct {
	Title       string   `json:"title"`
	Machine     string   `json:"machine,omitempty"`
	Fingerprint string   `json:"fingerprint"`
	Fasteners   []string `json:"fasteners"`
	Order       []string `json:"order"`

	Class       string  `json:"class"`  // negligible, noticeable, strong
	Branch      string  `json:"branch"` // of the advice: its result
	Advice      string  `json:"advice"`
	Band        Span    `json:"band"`           // the lowest fastener after the last pass, in percent of its target
	Sensitivity Span    `json:"sensitivity"`    // mean share lost in one pass in any order
	OnePass     sumOut  `json:"one_pass"`       // result of a single pass in this order
	Repeat      *sumOut `json:"one_more_pass"`  // null if the last pass is not a torque on all bolts
	Repeats     *int    `json:"repeats_needed"` // the same, and also null if fifty are not enough

	FoundationMPaPerMm Span               `json:"foundation_MPa_per_mm"`
	ComplianceMmPerN   [][]Figure         `json:"compliance_mm_per_N"` // of part and gasket
	OneNewton          [][]Figure         `json:"interaction_matrix"`  // in tightening order: the preload that step s of a single pass, by one newton, adds to each bolt, as long as none goes slack
	Leaves             Figure             `json:"repeat_leaves"`       // share of the elastic error, on the same condition
	BoltMmPerN         map[string]Figure  `json:"bolt_flexibility_mm_per_N"`
	TargetsN           map[string]Span    `json:"target_range_N"`
	Hundred            []string           `json:"hundred_percent_is"` // by kind
	Verdict            string             `json:"verdict,omitempty"`  // whether it is worth asking the maker for another way
	Ways               []trialOut         `json:"ways,omitempty"`     // the file's own first
	Scatter            *scatterOut        `json:"scatter,omitempty"`  // including friction
	Compensated        *compensatedOut    `json:"compensated,omitempty"`
	Passes             []predictedPassOut `json:"passes"`
	WorkedOut          bool               `json:"worked_out"`
	Caution            string             `json:"caution"`
	Guidance           string             `json:"guidance"`
	Warnings           []string           `json:"warnings"` // of the file
	Doubts             []string           `json:"doubts"`   // limits of the model
	Notes              []string           `json:"notes"`
	Stated             []string           `json:"stated"` // about the joint, by the file or flags
	Assumptions        []string           `json:"assumptions"`
	Limits             []string           `json:"limits"`
}

// sumOut summarizes fasteners in percent of their targets.
type sumOut struct {
	Min  Span `json:"min_range"`
	Mean Span `json:"mean_range"`
	Max  Span `json:"max_range"`
	SD   Span `json:"sd_range"`
}

func sumJSON(s bounds.Spreads) sumOut {
	return sumOut{bandJSON(s.Min), bandJSON(s.Mean), bandJSON(s.Max), bandJSON(s.SD)}
}

// bandJSON prints a range to a millionth of its unit, so that the output does
// not depend on the machine's rounding.
func bandJSON(b bounds.Band) Span {
	return Span{Low: millionth(b.Low), Nominal: millionth(b.Nominal), High: millionth(b.High)}
}

func millionth(v float64) Figure { return Figure(math.Round(v*1e6)/1e6 + 0) }

// predictedPassOut is the joint after a pass. The sums leave out fasteners that
// have not been tightened yet.
type predictedPassOut struct {
	Pass     int               `json:"pass"`
	Stage    int               `json:"stage,omitempty"` // of the plan
	Do       string            `json:"do"`
	Kinds    []string          `json:"kinds,omitempty"`
	Fraction *Figure           `json:"fraction"` // of the target; null if it is not the same for all, as after an angle
	Percent  map[string]Figure `json:"preload_percent"`
	Percents map[string]Span   `json:"preload_range_percent"`
	ForcesN  map[string]Span   `json:"preload_range_N"`
	Min      Figure            `json:"min"`
	Mean     Figure            `json:"mean"`
	Max      Figure            `json:"max"`
	SD       Figure            `json:"sd"`
	sumOut
	LargestN Span `json:"largest_range_N"` // at any step, in any fastener
	TiltMm   Span `json:"tilt_range_mm"`   // at any step, of the best-fit plane, over the part
	WarpMm   Span `json:"warp_range_mm"`   // at any step, from that plane
	UnevenMm Span `json:"uneven_range_mm"` // at any step, tilt and warp together
}

// compensatedOut has the targets of the last pass that compensate for the loss.
type compensatedOut struct {
	Cap      Figure            `json:"cap"`
	TargetsN map[string]Figure `json:"target_N"`
	Percent  map[string]Figure `json:"target_percent"`
	Stretch  map[string]Figure `json:"stretch_mm"` // to measure on the bolt; 0 if its grip or thread is unknown
	Caution  string            `json:"caution"`
}

// JSON returns a prediction as data; its findings are in the words of the
// language.
func (r Prediction) JSON(warnings problem.List, compare bool) (predictOut, error) {
	p, f := r.Plan, r.Forecast
	oneNewton, leaves, err := r.OnePass()
	if err != nil {
		return predictOut{}, err
	}
	byClass := advice.ByClass(f.Class, len(f.OnAngle()) > 0).Says()
	out := predictOut{
		Title: p.Title, Machine: p.Machine, Fingerprint: p.Fingerprint, Order: p.IDs(p.Tighten.Order),
		Class: string(f.Class), Branch: string(r.Advice.Branch), Advice: r.said(byClass), Band: bandJSON(f.Last().Spread.Min),
		Sensitivity: bandJSON(f.Sensitivity), OnePass: sumJSON(f.OnePass), FoundationMPaPerMm: bandJSON(r.Foundation),
		ComplianceMmPerN: rowsJSON(r.Nominal.Joint.Compliance()), OneNewton: rowsJSON(oneNewton), Leaves: millionth(leaves),
		BoltMmPerN: byID(r, func(i int) Figure { return Figure(r.Own[i]) }),
		TargetsN:   byID(r, func(i int) Span { return bandJSON(f.TargetsN[i]) }),
		WorkedOut:  true, Caution: r.Words.Torque.WorkedOut, Guidance: r.Words.Forecast.Guidance + " " + r.Words.Sheet.ManualFirst,
		Warnings: []string{}, Doubts: r.listed(f.Doubts), Notes: r.listed(r.Notes), Stated: r.listed(r.Stated), Assumptions: r.listed(r.Assumed),
		Hundred: r.listed(procedure.Say(f.Hundreds)), Limits: r.listed(interaction.LeftOut(r.Scatter != nil)),
		Compensated: r.compensatedJSON(), Scatter: r.scatterJSON(),
	}
	for _, warning := range warnings {
		out.Warnings = append(out.Warnings, warning.String())
	}
	for _, fastener := range p.Joint.Fasteners {
		out.Fasteners = append(out.Fasteners, fastener.ID)
	}
	if more := f.OneMore; more != nil {
		again := sumJSON(more.Spread)
		out.Repeat = &again
	}
	if f.Repeats >= 0 {
		out.Repeats = &f.Repeats
	}
	for n := range f.Passes {
		out.Passes = append(out.Passes, r.passJSON(n))
	}
	if r.Comparison != nil {
		out.Verdict = r.said(r.Advice.Says())
		if compare {
			out.Ways = r.trialsJSON()
		}
	}
	if r.Advice.Branch == advice.MendFile {
		out.Verdict = r.said(r.Advice.Says())
		out.Advice = out.Verdict
	}
	return out, nil
}

func (r Prediction) listed(list []finding.Finding) []string { return Listed(r.Words.SayAll(list)) }

// byID returns a value for each fastener, by its id.
func byID[T any](r Prediction, of func(i int) T) map[string]T {
	m := map[string]T{}
	for i, f := range r.Plan.Joint.Fasteners {
		m[f.ID] = of(i)
	}
	return m
}

func rowsJSON(rows [][]float64) (list [][]Figure) {
	for _, row := range rows {
		line := make([]Figure, len(row))
		for k, v := range row {
			line[k] = Figure(v)
		}
		list = append(list, line)
	}
	return list
}

func (r Prediction) passJSON(n int) predictedPassOut {
	pass := r.Forecast.Passes[n]
	s := pass.Spread
	out := predictedPassOut{
		Pass: n + 1, Do: "torque",
		Percent:  byID(r, func(i int) Figure { return millionth(pass.Percent[i].Nominal) }),
		Percents: byID(r, func(i int) Span { return bandJSON(pass.Percent[i]) }),
		ForcesN:  byID(r, func(i int) Span { return bandJSON(r.ForceN(n, i)) }),
		Min:      millionth(s.Min.Nominal), Mean: millionth(s.Mean.Nominal), Max: millionth(s.Max.Nominal), SD: millionth(s.SD.Nominal), sumOut: sumJSON(s),
		LargestN: bandJSON(pass.LargestN), TiltMm: bandJSON(pass.TiltMm), WarpMm: bandJSON(pass.WarpMm), UnevenMm: bandJSON(pass.UnevenMm),
	}
	if pass.Stage != nil {
		out.Stage, out.Do, out.Kinds = pass.Stage.Number, string(pass.Stage.Do), pass.Stage.Kinds
	}
	if pass.Share > 0 {
		out.Fraction = Stated(pass.Share)
	}
	return out
}

func (r Prediction) compensatedJSON() *compensatedOut {
	if r.Targets == nil {
		return nil
	}
	return &compensatedOut{
		Cap: Figure(r.Cap), Caution: r.Words.Say(finding.Noted(interaction.TargetsCaution, nil)),
		TargetsN: byID(r, func(i int) Figure { return millionth(r.Targets[i]) }),
		Stretch:  byID(r, func(i int) Figure { return millionth(procedure.StretchMm(r.Plan.KindOf(i), r.Targets[i])) }),
		Percent:  byID(r, func(i int) Figure { return millionth(100 * r.Targets[i] / r.Nominal.TargetsN[i]) }),
	}
}

// trialOut is a way to do the work and its result.
type trialOut struct {
	Name  string   `json:"name"`
	Also  []string `json:"also"` // other names for the same work
	Order []string `json:"order"`
	Rules string   `json:"rules"` // verdict of the trade's rules on the order
	Worth bool     `json:"worth_asking_for"`
	Class string   `json:"class"`
	sumOut
	TiltMm      Span   `json:"tilt_range_mm"` // the worst at any step, as for a pass
	WarpMm      Span   `json:"warp_range_mm"`
	UnevenMm    Span   `json:"uneven_range_mm"`
	WrenchPathM Figure `json:"wrench_path_m"`
	Steps       int    `json:"steps"`
}

func (r Prediction) trialsJSON() []trialOut {
	var list []trialOut
	for i, t := range r.Comparison.Trials {
		list = append(list, trialOut{
			Name: string(t.Way), Also: Listed(texts(t.Also)), Order: r.Plan.IDs(t.Order), Rules: string(t.Rules), Worth: i > 0 && i == r.Advice.Best, Class: string(t.Class), sumOut: sumJSON(t.End),
			TiltMm: bandJSON(t.TiltMm), WarpMm: bandJSON(t.WarpMm), UnevenMm: bandJSON(t.UnevenMm), WrenchPathM: millionth(t.TravelM), Steps: t.Steps,
		})
	}
	return list
}

// scatterOut is the result of repeating the work with random friction on the
// nominal gasket. A span is the 5th percentile, the median and the 95th.
type scatterOut struct {
	Draws     int               `json:"draws"`
	Seed      uint64            `json:"seed"`
	Friction  map[string]Figure `json:"friction_sd_percent"` // of the preload at a given torque
	ElasticSD Figure            `json:"cross_talk_sd_percent"`
	SD        Figure            `json:"sd_percent"`
	Lowest    Span              `json:"lowest_span_percent"` // of a joint
	Elastic   map[string]Figure `json:"cross_talk_percent"`
	Percents  map[string]Span   `json:"preload_span_percent"`
}

func (r Prediction) scatterJSON() *scatterOut {
	s := r.Scatter
	if s == nil {
		return nil
	}
	return &scatterOut{
		Draws: s.Draws, Seed: s.Seed, ElasticSD: millionth(s.Elastic.SD), SD: millionth(s.Together.SD), Lowest: bandJSON(s.Together.Lowest),
		Friction: byID(r, func(i int) Figure { return millionth(s.Friction.ByFastener[i]) }),
		Elastic:  byID(r, func(i int) Figure { return millionth(s.Elastic.ByFastener[i].Nominal) }),
		Percents: byID(r, func(i int) Span { return bandJSON(s.Together.ByFastener[i]) }),
	}
}
