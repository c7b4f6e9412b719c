package plan

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
)

// Stages in another order than the groups. Each finding names the stage.
const (
	FinishedEarly finding.Code = "stage finished early" // kind, stage, other, last: stage of other, with its torque
	LoosenedEarly finding.Code = "stage loosened early" // kind, stage, other, first: stage of other
	TurnLittle    finding.Code = "stage turn little"    // stage, turn, least
	TurnMuch      finding.Code = "stage turn much"      // stage, turn
	OutUnturned   finding.Code = "stage out unturned"   // kinds, stage
)

// FinishedOutOfTurn finds the tightening stages, by their indices, that finish
// a kind although another should come first whose torque comes later. An angle
// may come later, because the other kind already clamps by then. Kinds that one
// stage finishes together have no order.
func (in Input) FinishedOutOfTurn() map[int]finding.Finding {
	found := map[int]finding.Finding{}
	for _, early := range in.Kinds {
		i := in.last(early.Name, Tighten, Percent, Advance)
		if i < 0 || !in.has(early.Name) {
			continue
		}
		for _, late := range in.Kinds {
			then := in.last(late.Name, Tighten, Percent)
			if then > i && in.has(late.Name) && !in.Tighten[i].Covers(late.Name) && in.goesBefore(late, early) {
				found[i] = finding.Warned(FinishedEarly, finding.Values{
					"kind": early.Name, "stage": i + 1, "other": late.Name, "last": then + 1,
				}).From(finding.CommonPractice)
				break
			}
		}
	}
	return found
}

// last returns the index of the last stage that does one of these to a kind, or
// -1. A torque applied once around after another is only a check.
func (in Input) last(kind string, does ...Action) int {
	last := -1
	for i, s := range in.Tighten {
		if slices.Contains(does, s.Do) && s.Covers(kind) && (last < 0 || s.Way != sequence.Circular) {
			last = i
		}
	}
	return last
}

// LoosenedOutOfTurn finds the loosening stages, by their indices, that release
// a kind before one that was finished after it: the kind released last then
// carries the whole load. LiftsSprung judges parts under spring load. Stages
// that name no kind are planned group by group.
func (in Input) LoosenedOutOfTurn() map[int]finding.Finding {
	found := map[int]finding.Finding{}
	if !slices.ContainsFunc(in.Loosen, func(s StageInput) bool { return len(s.Of) > 0 }) {
		return found
	}
	for _, early := range in.unsprung() {
		for _, late := range in.unsprung() {
			i, then := in.letGo(early.Name), in.letGo(late.Name)
			if i >= 0 && then > i && in.goesBefore(early, late) {
				found[i] = finding.Warned(LoosenedEarly, finding.Values{
					"kind": early.Name, "stage": i + 1, "other": late.Name, "first": then + 1,
				}).From(finding.CommonPractice)
			}
		}
	}
	return found
}

// OutUnturned finds the stages, by their indices, that remove a kind at full
// load because no stage before has turned it back. LiftsSprung judges parts
// under spring load.
func (in Input) OutUnturned() map[int]finding.Finding {
	kinds := map[int][]string{}
	for _, k := range in.unsprung() {
		i := in.letGo(k.Name)
		if i >= 0 && in.Loosen[i].Do == Remove {
			kinds[i] = append(kinds[i], k.Name)
		}
	}
	found := map[int]finding.Finding{}
	for i, names := range kinds {
		found[i] = finding.Warned(OutUnturned, finding.Values{"kinds": names, "stage": i + 1}).From(finding.CommonPractice)
	}
	return found
}

// letGo returns the index of the first loosening stage of a kind, or -1.
func (in Input) letGo(kind string) int {
	return slices.IndexFunc(in.Loosen, func(s StageInput) bool { return s.Covers(kind) })
}

// unsprung returns the kinds that have fasteners and no spring load.
func (in Input) unsprung() []Kind {
	sprung := in.sprungKinds()
	return slices.DeleteFunc(slices.Clone(in.Kinds), func(k Kind) bool {
		return !in.has(k.Name) || slices.Contains(sprung, k.Name)
	})
}

// goesBefore reports whether a kind should be finished before another: by the
// order of the file, unless SmallBeforeLarge already judges it, or by the cast
// numbers; without either, by size.
func (in Input) goesBefore(first, second Kind) bool {
	a, b := first.SizeMm(), second.SizeMm()
	groups := in.Groups
	if len(groups) == 0 {
		groups = castGroups(in)
	}
	if len(groups) == 0 {
		return b > 0 && a > b
	}
	group := func(k Kind) int {
		return slices.IndexFunc(groups, func(g sequence.Group) bool { return len(g.Kinds) == 0 || slices.Contains(g.Kinds, k.Name) })
	}
	i, j := group(first), group(second)
	switch {
	case i < 0 || i > j:
		return false
	case i == j:
		return groups[i].Way.IsMakers() && in.listedBefore(groups[i], first, second)
	}
	makers := groups[i].Way.IsMakers() || groups[j].Way.IsMakers()
	return makers || a == 0 || a >= b
}

// listedBefore reports whether a group in maker's order has all fasteners of
// one kind before those of another.
func (in Input) listedBefore(g sequence.Group, first, second Kind) bool {
	order, err := sequence.OrderGroup(in.Joint, g.Members(in.Joint), g)
	if err != nil {
		return false
	}
	lastOfFirst, firstOfSecond := -1, len(order)
	for k, i := range order {
		switch in.Joint.Fasteners[i].Kind {
		case first.Name:
			lastOfFirst = k
		case second.Name:
			firstOfSecond = min(firstOfSecond, k)
		}
	}
	return lastOfFirst < firstOfSecond
}

// ForNone returns the stages, by their indices, whose kinds have no fastener.
func (in Input) ForNone(stages []StageInput) []int {
	var found []int
	for i, s := range stages {
		if len(s.Of) > 0 && !slices.ContainsFunc(s.Of, in.has) {
			found = append(found, i)
		}
	}
	return found
}

// Covers reports whether the stage applies to fasteners of the kind.
func (s StageInput) Covers(kind string) bool {
	return s.Do != Wait && (len(s.Of) == 0 || slices.Contains(s.Of, kind))
}

// Limits for a turn that breaks a bolt loose (common practice, no source): less
// is within the twist of a wrench, more releases it in one go.
const (
	leastLoosening unit.Angle = 15
	mostLoosening  unit.Angle = 360
)

// OddTurns finds the loosening stages, by their indices, that turn too little
// to break a bolt loose, or release it all at once. LiftsSprung judges parts
// under spring load.
func (in Input) OddTurns() map[int]finding.Finding {
	found := map[int]finding.Finding{}
	for i, s := range in.Loosen {
		values := finding.Values{"stage": i + 1, "turn": s.Angle}
		first := func(k Kind) bool { return in.letGo(k.Name) == i }
		switch {
		case s.Do != TurnBack:
		case s.Angle < leastLoosening:
			values["least"] = leastLoosening
			found[i] = finding.Warned(TurnLittle, values).From(finding.CommonPractice)
		case s.Angle > mostLoosening && slices.ContainsFunc(in.unsprung(), first):
			found[i] = finding.Warned(TurnMuch, values).From(finding.CommonPractice)
		}
	}
	return found
}
