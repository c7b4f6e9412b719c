package plan

import "drawdown/geometry/finding"

// StageFails is of a stage that cannot be planned.
const StageFails finding.Code = "plan stage fails" // side, stage, why

// Fails is of a plan that cannot be made, for another reason.
const Fails finding.Code = "plan fails" // why

// SmallFirst is of a group that is finished too early by the trade's practice.
const SmallFirst finding.Code = "plan small first" // small, large; _thread of both, or _hole where none is known

// What an order and its rounds rest on.
const (
	SizeByHole    finding.Code = "plan size by hole"   // kinds, holes, side
	SprungLoosen  finding.Code = "plan sprung loosen"  //
	SprungTighten finding.Code = "plan sprung tighten" // turn
)

// What lifts a part under spring load at one end.
const (
	SprungTurn finding.Code = "plan sprung turn" // kind, turn, release, most
	SprungOut  finding.Code = "plan sprung out"  // kind, other: still pressed on, rounds of it, least; what a file says in its place: until, unloaded
)

// stageFails names the stage that cannot be planned. The place of a finding is
// a stage of tightening: of loosening the values alone tell it.
func stageFails(side CautionSide, stage int, why error) error {
	found := finding.Failed(StageFails, finding.Values{"side": string(side), "stage": stage, "why": why})
	if side == CautionTighten {
		found.At.Stage = stage
	}
	return found
}
