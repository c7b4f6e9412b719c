package plan

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/figures"
)

// Build turns a checked input into the plan. It fails if the orders do not
// cover the joint, or with StageFails if a figure cannot be calculated.
func Build(in Input) (Plan, error) {
	p := Plan{Heading: in.Heading, View: in.View, Source: in.Source, Measures: in.Measures, Joint: in.Joint, Asked: Asked{in.Way, in.Turn}}
	if err := p.order(in); err != nil {
		return Plan{}, err
	}
	p.Kinds = inOrder(in.Kinds, p.Groups)
	if err := p.stages(in); err != nil {
		return Plan{}, err
	}
	p.basis(in)
	p.Assumptions = assumptions(in)
	// The order is decided on the part as drawn and mirrored with it, so that
	// the second bank has the exact mirror image.
	p.Joint, p.Mirrored = in.Joint.Mirrored(in.Mirror), in.Mirror != geometry.NoAxis
	p.Clamped = in.Clamped.mirrored(in.Joint.Points(), p.Joint.Points())
	p.Figures = figures.Judge(p.Bolts())
	if p.Mirrored {
		for i := range p.Groups {
			p.Groups[i].Turn = shown(p.Groups[i].Turn, in.Mirror)
		}
	}
	return p, nil
}

// shown returns a turn as the card shows it: a mirror reverses it.
func shown(turn sequence.Turn, mirror geometry.Axis) sequence.Turn {
	if mirror != geometry.NoAxis {
		return turn.Opposite()
	}
	return turn
}

// order decides the groups, the tightening order and its reverse.
func (p *Plan) order(in Input) error {
	groups := in.groups()
	order, err := sequence.Order(in.Joint, groups)
	if err != nil {
		return err
	}
	p.Tighten.Order = order
	p.Loosen.Order = slices.Clone(order)
	slices.Reverse(p.Loosen.Order)
	for _, g := range groups {
		if settled := p.settle(g); len(settled.Members) > 0 { // a kind without fasteners has nothing to order
			p.Groups = append(p.Groups, settled)
		}
	}
	return nil
}

// groups returns the groups to order. The user's way and turn override those of
// the file.
func (in Input) groups() []sequence.Group {
	groups := slices.Clone(in.Groups)
	// A maker's list over all kinds has no groups to order in another way.
	if len(groups) == 0 || in.Way != "" && len(groups) == 1 {
		groups = defaultGroups(in)
	}
	for i := range groups {
		if in.Way != "" {
			groups[i].Way, groups[i].List = in.Way, nil
		}
		if in.Turn != "" {
			groups[i].Turn = in.Turn
			if in.Mirror != geometry.NoAxis {
				groups[i].Turn = in.Turn.Opposite() // the user names it as the card shows it
			}
		}
	}
	return groups
}

// settle returns a group with its final way and turn.
func (p *Plan) settle(g sequence.Group) Group {
	var settled Group
	settled.Members, settled.Kinds = p.covered(p.Tighten.Order, g.Kinds)
	if len(g.Kinds) > 0 { // in the order of the file
		idle := func(kind string) bool { return !slices.Contains(settled.Kinds, kind) }
		settled.Kinds = slices.DeleteFunc(slices.Clone(g.Kinds), idle)
	}
	settled.Seen = sequence.SeenGroup(p.Joint, settled.Members, g)
	settled.Way = g.SettledAs(settled.Seen)
	settled.Turn = g.Turn.For(settled.Way)
	settled.Sprung = sequence.Sprung(p.Joint, settled.Members)
	return settled
}

// covered returns the fasteners of the given kinds, or all if none is given,
// and their kinds.
func (p *Plan) covered(order []int, of []string) (fasteners []int, kinds []string) {
	for _, i := range order {
		kind := p.Joint.Fasteners[i].Kind
		if len(of) > 0 && !slices.Contains(of, kind) {
			continue
		}
		fasteners = append(fasteners, i)
		if !slices.Contains(kinds, kind) {
			kinds = append(kinds, kind)
		}
	}
	return fasteners, kinds
}

// inOrder sorts the kinds in the order in which their groups are finished.
// Groups have no kind without a fastener.
func inOrder(kinds []Kind, groups []Group) []Kind {
	var sorted []Kind
	for _, g := range groups {
		for _, name := range g.Kinds {
			for _, k := range kinds {
				if k.Name == name {
					sorted = append(sorted, k)
				}
			}
		}
	}
	return sorted
}

// stages fills in the stages of both sides.
func (p *Plan) stages(in Input) (err error) {
	if p.Tighten.Stages, err = p.sideStages(in, in.Tighten, p.Tighten.Order, CautionTighten); err != nil {
		return err
	}
	p.Tighten.otherTorques()
	p.Loosen.Stages, err = p.sideStages(in, p.loosening(in.Loosen), p.Loosen.Order, CautionLoosen)
	return err
}

// otherTorques converts each torque for the other kind of wrench, rounded like
// the others of its kinds.
func (s Side) otherTorques() {
	for i := range s.Stages {
		if stage := &s.Stages[i]; stage.Do == Tighten {
			stage.Other = stage.Torque.OtherBeside(s.torquesOf(stage.Kinds))
		}
	}
}

// torquesOf returns the torques of the stages that cover one of the kinds.
func (s Side) torquesOf(kinds []string) (all []unit.GivenTorque) {
	for _, stage := range s.Stages {
		if stage.Do == Tighten && len(shared(stage.Kinds, kinds)) > 0 {
			all = append(all, stage.Torque)
		}
	}
	return all
}

func (p *Plan) sideStages(in Input, given []StageInput, order []int, side CautionSide) ([]Stage, error) {
	var stages []Stage
	for k, s := range given {
		stage, err := p.stage(in, s, order)
		if err != nil {
			return nil, stageFails(side, k+1, err)
		}
		stage.Number = k + 1
		stages = append(stages, stage)
	}
	return stages, nil
}

// spacedOut orders a way round for several wrenches: each takes its part of the
// way, so that they stay evenly apart.
func spacedOut(round []int, wrenches int) []int {
	part := (len(round) + wrenches - 1) / wrenches
	var order []int
	for i := range part {
		for from := i; from < len(round); from += part {
			order = append(order, round[from])
		}
	}
	return order
}

// stage returns one stage with the fasteners that it covers.
func (p *Plan) stage(in Input, s StageInput, order []int) (Stage, error) {
	stage := Stage{Do: s.Do, Torque: s.Torque, Angle: s.Angle, Stretch: s.Stretch, Wait: s.Wait, Percent: s.Percent, Until: s.Until, AtOnce: s.AtOnce, Note: s.Note, Source: in.Source}
	if s.Do == Wait {
		return stage, nil
	}
	stage.Fasteners, stage.Kinds = p.covered(order, s.Of)
	if s.Way != "" {
		own, err := sequence.OrderGroup(in.Joint, stage.Fasteners, sequence.Group{Way: s.Way, Turn: s.Turn})
		if err != nil {
			return Stage{}, err
		}
		if s.Way == sequence.Circular {
			own = sequence.From(in.Joint, own, stage.Fasteners[0]) // a check pass starts at number one too
		}
		stage.Fasteners, stage.Way, stage.Turn = own, s.Way, shown(s.Turn.For(s.Way), in.Mirror)
	}
	if s.Way == sequence.Circular && s.AtOnce > 1 {
		stage.Fasteners = spacedOut(stage.Fasteners, s.AtOnce)
	}
	if s.Do == BackOff {
		slices.Reverse(stage.Fasteners) // slackening goes from the outside in
	}
	return stage, p.figure(in, &stage)
}
