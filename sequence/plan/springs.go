package plan

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
)

// Springs under the caps of a camshaft lift it at one end if only that end is
// loosened: the camshaft bends and may break. So it is raised and lowered by
// small turns over all caps.
const (
	// mostReleaseMm limits how far a planned round lets the part rise: a
	// quarter to half a turn of the usual threads (common practice, no source).
	mostReleaseMm = 0.5
	// mostOwnReleaseMm is the rise from which a turn stated by the file is too
	// large: half a turn of M10 and 3/8-16 (common practice, no source).
	mostOwnReleaseMm = 0.8
	// plannedRounds is the number of rounds with tick boxes; more follow until
	// no spring presses.
	plannedRounds = 3
)

// NoSpringPresses is the condition that ends the last planned round, as a file
// writes it too.
const NoSpringPresses = "no spring presses"

// sayUnloaded is what a file writes for a cluster without spring load.
const sayUnloaded keyed = "loaded: no"

type keyed string

// handTurns are the turns that are easy to estimate by hand, the largest first.
var handTurns = []unit.Angle{180, 90, 60, 45, 30}

// roundTurn returns the turn of one round over caps of the kinds: the largest
// with a small enough release on the coarsest thread, or a quarter turn if no
// thread is known.
func (p *Plan) roundTurn(kinds []string) unit.Angle {
	for _, turn := range handTurns {
		if release := p.release(turn, kinds); release > 0 && release <= mostReleaseMm {
			return turn
		}
	}
	if p.release(1, kinds) > 0 {
		return handTurns[len(handTurns)-1]
	}
	return 90
}

// release is the most that a turn lets a part rise on bolts of the kinds; 0 if
// no thread is known.
func (p *Plan) release(turn unit.Angle, kinds []string) unit.Length {
	pitch := 0.0
	for _, name := range kinds {
		if k := p.Kind(name); k.Thread != nil {
			pitch = max(pitch, k.Thread.PitchMm)
		}
	}
	return unit.Length(float64(turn) / 360 * pitch)
}

// rounds are the stages that remove a part under spring load.
func (p *Plan) rounds(kinds []string) []StageInput {
	rounds := slices.Repeat([]StageInput{{Do: TurnBack, Angle: p.roundTurn(kinds)}}, plannedRounds)
	rounds[plannedRounds-1].Until = NoSpringPresses
	return append(rounds, StageInput{Do: Remove})
}

// sprungKinds lists the kinds of the groups under spring load, the group
// finished last first.
func (p Plan) sprungKinds() []string {
	var kinds []string
	for _, g := range slices.Backward(p.Groups) {
		if g.Sprung {
			kinds = append(kinds, g.Kinds...)
		}
	}
	return kinds
}

// Unloaded reports that a cluster has no spring load although others beside it
// have.
func (p Plan) Unloaded(c geometry.Cluster) bool {
	return c.Unloaded && slices.ContainsFunc(p.Groups, func(g Group) bool {
		return g.Sprung && slices.ContainsFunc(p.IDs(g.Members), func(id string) bool { return slices.Contains(c.Of, id) })
	})
}

// spring applies what springs require: the rise per round, small turns up to
// the first figure of a cap, and the grounds of both.
func (p *Plan) spring() {
	left := p.sprungKinds()
	if len(left) == 0 {
		return
	}
	p.Loosen.Basis = append(p.Loosen.Basis, finding.Noted(SprungLoosen, nil).From(finding.CommonPractice))
	p.Tighten.Basis = append(p.Tighten.Basis, finding.Noted(SprungTighten, finding.Values{"turn": p.roundTurn(left)}).From(finding.CommonPractice))
	for i := range p.Loosen.Stages {
		if s := &p.Loosen.Stages[i]; s.Do == TurnBack {
			s.Release = p.release(s.Angle, shared(s.Kinds, left))
		}
	}
	turn := p.roundTurn(left)
	for i := range p.Tighten.Stages {
		s := &p.Tighten.Stages[i]
		if now := shared(s.Kinds, left); len(now) > 0 && (s.Do == Tighten || s.Do == Advance) {
			s.ByTurns, s.Release = turn, p.release(turn, now)
			left = slices.DeleteFunc(left, func(kind string) bool { return slices.Contains(now, kind) })
		}
	}
}

func shared(a, b []string) []string {
	return slices.DeleteFunc(slices.Clone(a), func(kind string) bool { return !slices.Contains(b, kind) })
}

// LiftsSprung finds the loosening stages that lift a part under spring load at
// one end, by their indices: a large turn, too few turns before the bolts come
// out, bolts that are out before others are turned, or rounds that end with
// another condition than that no spring presses.
func (in Input) LiftsSprung() map[int]finding.Finding { return in.lifts(in.sprungKinds()) }

func (in Input) lifts(sprung []string) map[int]finding.Finding {
	found := map[int]finding.Finding{}
	rounds := map[string]int{} // by kind; enough when it is turned back until no spring presses
	p := Plan{Kinds: in.Kinds}
	for i, s := range in.Loosen {
		for _, kind := range sprung {
			if len(s.Of) > 0 && !slices.Contains(s.Of, kind) {
				continue
			}
			switch release := p.release(s.Angle, []string{kind}); {
			case s.Do == Remove:
				if f, lifts := outEarly(kind, sprung, rounds); lifts {
					found[i] = f
				}
			case release > mostOwnReleaseMm || release == 0 && s.Angle > 180:
				found[i] = finding.Warned(SprungTurn, finding.Values{
					"kind": kind, "turn": s.Angle, "release": release, "most": unit.Length(mostReleaseMm),
				}).From(finding.CommonPractice)
			}
			if s.Do == TurnBack {
				rounds[kind]++
			}
			if s.Until != "" {
				rounds[kind] = max(rounds[kind], plannedRounds)
				if f, odd := untilSense(s.Until); odd && found[i].Code == "" {
					found[i] = f
				}
			}
		}
	}
	return found
}

// outEarly reports whether bolts come out while springs still push on these or
// on others.
func outEarly(kind string, sprung []string, rounds map[string]int) (finding.Finding, bool) {
	for _, other := range sprung {
		if rounds[other] < plannedRounds {
			return finding.Warned(SprungOut, finding.Values{
				"kind": kind, "other": other, "rounds": rounds[other], "least": plannedRounds,
				"until": "until: " + NoSpringPresses, "unloaded": string(sayUnloaded),
			}).From(finding.CommonPractice), true
		}
	}
	return finding.Finding{}, false
}

// sprungKinds lists the kinds under spring load.
func (in Input) sprungKinds() []string {
	var kinds []string
	for _, k := range in.Kinds {
		if sequence.Sprung(in.Joint, sequence.Group{Kinds: []string{k.Name}}.Members(in.Joint)) {
			kinds = append(kinds, k.Name)
		}
	}
	return kinds
}
