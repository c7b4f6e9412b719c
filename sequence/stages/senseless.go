// Package stages compares the stages of a plan with each other: stages that
// have no effect, that leave the joint loose, or whose figure must be wrong.
package stages

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
)

// Stages that make no sense. Each finding names the stage.
const (
	TorqueFalls    finding.Code = "stage torque falls"    // kind, stage, torque, before, beforeTorque
	LeftLoose      finding.Code = "stage left loose"      // kind, stage, angle
	AngleAlone     finding.Code = "stage angle alone"     // kind, stage, angle, slackened: by a stage before
	CheckDiffers   finding.Code = "stage check differs"   // kind, stage, torque, before, beforeTorque
	SlackFirst     finding.Code = "stage slack first"     // kind, stage
	AfterAngle     finding.Code = "stage after angle"     // kind, stage, torque, before: the angle
	EndsShort      finding.Code = "stage ends short"      // kind, stage, percent
	StretchesAgain finding.Code = "stage stretches again" // kind, stage, before: the angle, slackened: the stage between
	CheckByAngle   finding.Code = "stage check by angle"  // kind, stage, angle
	StageTwice     finding.Code = "stage twice"           // stage, before
	CheckFirst     finding.Code = "stage check first"     // kind, stage, later: a torque that does not go once around
	WaitsFirst     finding.Code = "stage waits first"     // stage
	WaitsLast      finding.Code = "stage waits last"      // stage
	WaitsOn        finding.Code = "stage waits on"        // stage, before
)

// dust is the rounding difference between the same torque in two units.
const dust = 1e-9

// Senseless returns the tightening stages that have no effect, that leave the
// joint loose, or whose figure has no basis (first principles: a wrench set
// below the torque of a bolt clicks at once; an angle starts from a torque).
func Senseless(p plan.Plan) []finding.Finding {
	found := waits(p)
	found = append(found, repeats(p)...)
	for _, k := range p.Kinds {
		found = append(found, senselessFor(p, k.Name)...)
		found = append(found, mixedUnits(p, k.Name)...)
		found = append(found, slips(p, k.Name)...)
	}
	found = append(found, shortWaits(p)...)
	found = append(found, waitsSet(p)...)
	found = append(found, smallerMore(p)...)
	found = append(found, equalsApart(p)...)
	slices.SortStableFunc(found, func(a, b finding.Finding) int { return a.At.Stage - b.At.Stage })
	return found
}

// TorquesFall returns those whose torque is below an earlier one.
func TorquesFall(p plan.Plan) []finding.Finding {
	return slices.DeleteFunc(Senseless(p), func(f finding.Finding) bool { return f.Code != TorqueFalls })
}

// state is the state of the bolts of a kind.
type state struct {
	most    plan.Stage // with the greatest torque so far; Number 0: none
	round   plan.Stage // the first torque, if it goes once around; Number 0: it does not, or others do not
	crossed bool       // a torque went crosswise or outwards, not once around
	turned  plan.Stage // by an angle since the last torque or slackening; Number 0: none
	loose   plan.Stage // that slackened them last, if not tightened since
	angle   plan.Stage // the last angle since a slackening; Number 0: none
	stretch plan.Stage // by an angle, before the last slackening; Number 0: none
	slack   plan.Stage // the last slackening
	once    bool       // they may be stretched by an angle only once
}

func senselessFor(p plan.Plan, kind string) (found []finding.Finding) {
	so := state{once: stretchOnce(p, kind)}
	for _, s := range p.Tighten.Stages {
		if slices.Contains(s.Kinds, kind) {
			found = append(found, so.take(kind, s)...)
		}
	}
	if so.loose.Number > 0 {
		values := finding.Values{"kind": kind, "stage": so.loose.Number, "angle": so.loose.Angle}
		found = append(found, finding.Failed(LeftLoose, values).About(finding.Place{Kind: kind, Stage: so.loose.Number}))
	}
	if share := so.most.Percent; share > 0 && share < 100 && so.turned.Number == 0 {
		values := finding.Values{"kind": kind, "stage": so.most.Number, "percent": share}
		found = append(found, finding.Warned(EndsShort, values).About(finding.Place{Kind: kind, Stage: so.most.Number}))
	}
	return found
}

// stretchOnce reports whether fasteners of a kind are single-use, or an angle
// takes them past yield.
func stretchOnce(p plan.Plan, kind string) bool {
	return p.Kind(kind).Reuse == plan.ReuseOnce || slices.ContainsFunc(p.Figures, func(f finding.Finding) bool {
		switch f.Code {
		case figures.TurnUsedAgain, figures.TurnUsedOnce, figures.TurnUsesUp, figures.TurnNecks:
			return f.At.Kind == kind
		}
		return false
	})
}

// take applies a stage to the bolts, and reports what makes no sense.
func (so *state) take(kind string, s plan.Stage) []finding.Finding {
	values := finding.Values{"kind": kind, "stage": s.Number}
	warned := func(code finding.Code) []finding.Finding {
		return []finding.Finding{finding.Warned(code, values).About(finding.Place{Kind: kind, Stage: s.Number})}
	}
	switch s.Do {
	case plan.BackOff:
		tight := so.most.Number > 0 || so.turned.Number > 0 || so.loose.Number > 0
		stretch := so.stretch
		if so.angle.Number > 0 {
			stretch = so.angle
		}
		*so = state{loose: s, slack: s, stretch: stretch, once: so.once}
		if !tight {
			return warned(SlackFirst)
		}
	case plan.Advance:
		alone, slackened, checks := so.most.Number == 0, so.loose.Number > 0, so.turned.Number > 0 && s.Way == sequence.Circular
		so.loose, so.turned, so.angle = plan.Stage{}, s, s
		values["angle"], values["slackened"] = s.Angle, slackened
		switch {
		case checks:
			return warned(CheckByAngle)
		case alone:
			return warned(AngleAlone)
		}
		if so.once && so.stretch.Number > 0 {
			values["before"], values["slackened"] = so.stretch.Number, so.slack.Number
			so.stretch = plan.Stage{}
			return warned(StretchesAgain)
		}
	case plan.Tighten:
		before, crossed, turned := so.most, so.crossed, so.turned
		so.turned = plan.Stage{}
		so.loose, so.crossed = plan.Stage{}, crossed || s.Way != sequence.Circular
		values["torque"], values["before"], values["beforeTorque"] = s.Torque, before.Number, before.Torque
		rises := compared(s, before)
		if rises > 0 {
			so.most = s
		}
		switch {
		case rises < 0:
			return warned(TorqueFalls)
		case turned.Number > 0 && s.Way != sequence.Circular:
			values["before"] = turned.Number
			return warned(AfterAngle)
		case rises > 0 && before.Number > 0 && crossed && s.Way == sequence.Circular:
			return warned(CheckDiffers)
		}
		if before.Number == 0 && s.Way == sequence.Circular {
			so.round = s
		}
		if first := so.round; first.Number > 0 && s.Way != sequence.Circular {
			so.round = plan.Stage{}
			return []finding.Finding{finding.Warned(CheckFirst, finding.Values{"kind": kind, "stage": first.Number, "later": s.Number}).
				From(finding.CommonPractice).About(finding.Place{Kind: kind, Stage: first.Number})}
		}
	}
	return nil
}

// compared is 1 if a torque is above that of the stage before, or there is
// none; -1 if it is below.
func compared(s, before plan.Stage) int {
	now, most := float64(s.Torque.Nm()), float64(before.Torque.Nm())
	switch {
	case before.Number == 0 || now > most*(1+dust):
		return 1
	case now < most*(1-dust):
		return -1
	}
	return 0
}

// waits returns consecutive waits with no work between them.
func waits(p plan.Plan) (found []finding.Finding) {
	stages := p.Tighten.Stages
	for i, s := range stages {
		if s.Do != plan.Wait {
			continue
		}
		warn := func(code finding.Code) {
			values := finding.Values{"stage": s.Number, "before": s.Number - 1}
			found = append(found, finding.Warned(code, values).About(finding.Place{Stage: s.Number}))
		}
		switch {
		case i == 0:
			warn(WaitsFirst)
		case stages[i-1].Do == plan.Wait:
			warn(WaitsOn)
		}
		if i > 0 && i == len(stages)-1 {
			warn(WaitsLast)
		}
	}
	return found
}

// repeats returns the torques and slackenings that are the same twice in a row.
// Angles add up, and a check pass is marked as one.
func repeats(p plan.Plan) (found []finding.Finding) {
	for i, s := range p.Tighten.Stages {
		if i == 0 || s.Do != plan.Tighten && s.Do != plan.BackOff {
			continue
		}
		if before := p.Tighten.Stages[i-1]; same(before, s) {
			values := finding.Values{"stage": s.Number, "before": before.Number}
			found = append(found, finding.Warned(StageTwice, values).About(finding.Place{Stage: s.Number}))
		}
	}
	return found
}

func same(s, other plan.Stage) bool {
	return s.Do == other.Do && s.Torque == other.Torque && s.Angle == other.Angle && s.Way == other.Way && s.Turn == other.Turn &&
		s.Note == other.Note && slices.Equal(s.Kinds, other.Kinds)
}
