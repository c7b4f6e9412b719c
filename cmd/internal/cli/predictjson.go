package cli

import (
	"math"

	"drawdown/cmd/internal/job"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/procedure"
)

// predictOut is what predict --json prints. Plain numbers are nominal; a range
// runs over what the gasket's stiffness may be. Rows and columns of the
// compliance, and the flexibilities, are in the file's order of fasteners.
type predictOut struct {
	Title       string   `json:"title"`
	Machine     string   `json:"machine,omitempty"`
	Fingerprint string   `json:"fingerprint"`
	Fasteners   []string `json:"fasteners"`
	Order       []string `json:"order"`

	Class       string  `json:"class"` // negligible, noticeable, strong
	Advice      string  `json:"advice"`
	Band        spanOut `json:"band"`           // the lowest fastener after the last pass, in percent of its target
	Sensitivity spanOut `json:"sensitivity"`    // mean share that one pass in any order takes
	OnePass     sumOut  `json:"one_pass"`       // a single pass in this order would end like this
	Repeat      *sumOut `json:"one_more_pass"`  // null where the last pass is no torque over all bolts
	Repeats     *int    `json:"repeats_needed"` // the same, and where fifty are not enough

	FoundationMPaPerMm spanOut              `json:"foundation_MPa_per_mm"`
	ComplianceMmPerN   [][]figureOut        `json:"compliance_mm_per_N"` // of part and gasket
	OneNewton          [][]figureOut        `json:"interaction_matrix"`  // in tightening order: what step s of a single pass, by a newton, adds to each bolt; while none goes slack
	Leaves             figureOut            `json:"repeat_leaves"`       // share of the elastic error, the same
	BoltMmPerN         map[string]figureOut `json:"bolt_flexibility_mm_per_N"`
	TargetsN           map[string]spanOut   `json:"target_range_N"`
	Hundred            []string             `json:"hundred_percent_is"` // by kind
	Verdict            string               `json:"verdict,omitempty"`  // whether another way is worth asking the maker for
	Ways               []trialOut           `json:"ways,omitempty"`     // the file's own first
	Scatter            *scatterOut          `json:"scatter,omitempty"`  // with friction on top
	Compensated        *compensatedOut      `json:"compensated,omitempty"`
	Passes             []predictedPassOut   `json:"passes"`
	WorkedOut          bool                 `json:"worked_out"`
	Caution            string               `json:"caution"`
	Guidance           string               `json:"guidance"`
	Warnings           []string             `json:"warnings"` // of the file
	Doubts             []string             `json:"doubts"`   // where the model does not hold
	Notes              []string             `json:"notes"`
	Stated             []string             `json:"stated"` // of the joint, by the file or the flags
	Assumptions        []string             `json:"assumptions"`
	Limits             []string             `json:"limits"`
}

// sumOut sums up fasteners in percent of their targets.
type sumOut struct {
	Min  spanOut `json:"min_range"`
	Mean spanOut `json:"mean_range"`
	Max  spanOut `json:"max_range"`
	SD   spanOut `json:"sd_range"`
}

func sumJSON(s bounds.Spreads) sumOut {
	return sumOut{bandJSON(s.Min), bandJSON(s.Mean), bandJSON(s.Max), bandJSON(s.SD)}
}

// bandJSON prints a band to a millionth of its unit, so that round-off does not
// tell one machine from another.
func bandJSON(b bounds.Band) spanOut {
	return spanOut{Low: millionth(b.Low), Nominal: millionth(b.Nominal), High: millionth(b.High)}
}

func millionth(v float64) figureOut { return figureOut(math.Round(v*1e6)/1e6 + 0) }

// predictedPassOut is the joint after a pass. The sums leave out fasteners that
// have not been turned yet, which hold nothing.
type predictedPassOut struct {
	Pass     int                  `json:"pass"`
	Stage    int                  `json:"stage,omitempty"` // of the plan
	Do       string               `json:"do"`
	Kinds    []string             `json:"kinds,omitempty"`
	Fraction *figureOut           `json:"fraction"` // of the target; null where it is not one for all, as after an angle
	Percent  map[string]figureOut `json:"preload_percent"`
	Percents map[string]spanOut   `json:"preload_range_percent"`
	ForcesN  map[string]spanOut   `json:"preload_range_N"`
	Min      figureOut            `json:"min"`
	Mean     figureOut            `json:"mean"`
	Max      figureOut            `json:"max"`
	SD       figureOut            `json:"sd"`
	sumOut
	LargestN spanOut `json:"largest_range_N"` // at any step, in any fastener
	TiltMm   spanOut `json:"tilt_range_mm"`   // the same, of the plane that fits best, over the part
	WarpMm   spanOut `json:"warp_range_mm"`   // the same, from that plane
	UnevenMm spanOut `json:"uneven_range_mm"` // the same, tilt and warp together
}

// compensatedOut is the targets of the last pass that make up for the loss.
type compensatedOut struct {
	Cap      figureOut            `json:"cap"`
	TargetsN map[string]figureOut `json:"target_N"`
	Percent  map[string]figureOut `json:"target_percent"`
	Caution  string               `json:"caution"`
}

func predictJSON(a job.PredictAnswer, warnings []string, compare bool) predictOut {
	p := a.Plan
	ids := make([]string, len(p.Joint.Fasteners))
	for i, f := range p.Joint.Fasteners {
		ids[i] = f.ID
	}
	out := predictOut{
		Title: p.Title, Machine: p.Machine, Fingerprint: p.Fingerprint, Fasteners: ids, Order: p.IDs(p.Tighten.Order),
		Class: string(a.Forecast.Class), Advice: a.Forecast.Class.Advice(), Band: bandJSON(a.Forecast.Last().Spread.Min),
		Sensitivity: bandJSON(a.Forecast.Sensitivity), OnePass: sumJSON(a.Forecast.OnePass), FoundationMPaPerMm: bandJSON(a.Foundation),
		BoltMmPerN: map[string]figureOut{}, TargetsN: map[string]spanOut{},
		WorkedOut: true, Caution: precedence, Guidance: advice.Guidance,
		Warnings: listed(warnings), Doubts: listed(sentences(a.Forecast.Doubts)), Notes: listed(a.Notes), Stated: listed(a.Stated), Assumptions: listed(a.Assumptions), Hundred: listed(sentences(a.Forecast.Hundreds)), Limits: predictLimits,
	}
	if more := a.Forecast.OneMore; more != nil {
		again := sumJSON(more.Spread)
		out.Repeat = &again
	}
	if a.Forecast.Repeats >= 0 {
		out.Repeats = &a.Forecast.Repeats
	}
	out.ComplianceMmPerN, out.OneNewton, out.Leaves = rowsJSON(a.Nominal.Joint.Compliance()), rowsJSON(a.OneNewton), millionth(a.Leaves)
	for i, id := range ids {
		out.BoltMmPerN[id] = figureOut(a.Own[i])
		out.TargetsN[id] = bandJSON(a.Forecast.TargetsN[i])
	}
	for n := range a.Forecast.Passes {
		out.Passes = append(out.Passes, passJSON(a, ids, n))
	}
	out.Compensated = compensatedJSON(a, ids)
	if c := a.Comparison; c != nil {
		out.Verdict = c.Verdict.String()
		if compare {
			out.Ways = trialsJSON(a)
		}
	}
	if falls := a.Forecast.Falls; len(falls) > 0 {
		out.Verdict = procedure.LookFirst(falls)
		out.Advice = out.Verdict
	}
	out.Scatter = scatterJSON(a, ids)
	return out
}

func rowsJSON(rows [][]float64) (list [][]figureOut) {
	for _, row := range rows {
		line := make([]figureOut, len(row))
		for k, v := range row {
			line[k] = figureOut(v)
		}
		list = append(list, line)
	}
	return list
}

func passJSON(a job.PredictAnswer, ids []string, n int) predictedPassOut {
	pass := a.Forecast.Passes[n]
	s := pass.Spread
	out := predictedPassOut{
		Pass: n + 1, Do: "torque", Percent: map[string]figureOut{}, Percents: map[string]spanOut{}, ForcesN: map[string]spanOut{},
		Min: millionth(s.Min.Nominal), Mean: millionth(s.Mean.Nominal), Max: millionth(s.Max.Nominal), SD: millionth(s.SD.Nominal), sumOut: sumJSON(s),
		LargestN: bandJSON(pass.LargestN), TiltMm: bandJSON(pass.TiltMm), WarpMm: bandJSON(pass.WarpMm), UnevenMm: bandJSON(pass.UnevenMm),
	}
	if pass.Stage != nil {
		out.Stage, out.Do, out.Kinds = pass.Stage.Number, string(pass.Stage.Do), pass.Stage.Kinds
	}
	if pass.Share > 0 {
		out.Fraction = number(pass.Share)
	}
	for i, id := range ids {
		percent := pass.Percent[i]
		out.Percent[id], out.Percents[id] = millionth(percent.Nominal), bandJSON(percent)
		out.ForcesN[id] = bandJSON(a.ForceN(n, i))
	}
	return out
}

func compensatedJSON(a job.PredictAnswer, ids []string) *compensatedOut {
	if a.Targets == nil {
		return nil
	}
	out := &compensatedOut{Cap: figureOut(a.Cap), TargetsN: map[string]figureOut{}, Percent: map[string]figureOut{}, Caution: compensatedCaution}
	for i, id := range ids {
		out.TargetsN[id], out.Percent[id] = millionth(a.Targets[i]), millionth(100*a.Targets[i]/a.Nominal.TargetsN[i])
	}
	return out
}

// trialOut is a way to do the work and what it leaves.
type trialOut struct {
	Name  string   `json:"name"`
	Also  []string `json:"also"` // other names of the same work
	Order []string `json:"order"`
	Rules string   `json:"rules"` // what the trade's rules say of the order
	Worth bool     `json:"worth_asking_for"`
	Class string   `json:"class"`
	sumOut
	TiltMm      spanOut   `json:"tilt_range_mm"` // the worst at any step, as of a pass
	WarpMm      spanOut   `json:"warp_range_mm"`
	UnevenMm    spanOut   `json:"uneven_range_mm"`
	WrenchPathM figureOut `json:"wrench_path_m"`
	Steps       int       `json:"steps"`
}

func trialsJSON(a job.PredictAnswer) []trialOut {
	var list []trialOut
	for i, t := range a.Comparison.Trials {
		list = append(list, trialOut{
			Name: t.Name, Also: listed(t.Also), Order: a.Plan.IDs(t.Order), Rules: string(t.Rules), Worth: i > 0 && i == a.Comparison.Best, Class: string(t.Class), sumOut: sumJSON(t.End),
			TiltMm: bandJSON(t.TiltMm), WarpMm: bandJSON(t.WarpMm), UnevenMm: bandJSON(t.Uneven), WrenchPathM: millionth(t.TravelM), Steps: t.Steps,
		})
	}
	return list
}

// scatterOut is the work done again and again with another friction each time,
// on the nominal gasket. A span is the 5th percentile, the median and the 95th.
type scatterOut struct {
	Draws     int                  `json:"draws"`
	Seed      uint64               `json:"seed"`
	Friction  map[string]figureOut `json:"friction_sd_percent"` // of the preload at a torque
	ElasticSD figureOut            `json:"cross_talk_sd_percent"`
	SD        figureOut            `json:"sd_percent"`
	Lowest    spanOut              `json:"lowest_span_percent"` // of a joint
	Elastic   map[string]figureOut `json:"cross_talk_percent"`
	Percents  map[string]spanOut   `json:"preload_span_percent"`
}

func scatterJSON(a job.PredictAnswer, ids []string) *scatterOut {
	s := a.Scatter
	if s == nil {
		return nil
	}
	out := &scatterOut{
		Draws: s.Draws, Seed: s.Seed, ElasticSD: millionth(s.Elastic.SD), SD: millionth(s.Together.SD), Lowest: bandJSON(s.Together.Lowest),
		Friction: map[string]figureOut{}, Elastic: map[string]figureOut{}, Percents: map[string]spanOut{},
	}
	for i, id := range ids {
		out.Friction[id], out.Elastic[id], out.Percents[id] = millionth(s.SDPercent[i]), millionth(s.Elastic.ByFastener[i].Nominal), bandJSON(s.Together.ByFastener[i])
	}
	return out
}
