package plan

import "drawdown/geometry/finding"

// StageFails reports a stage that cannot be planned.
const StageFails finding.Code = "plan stage fails" // side, stage, why

// Fails reports a plan that cannot be made for another reason.
const Fails finding.Code = "plan fails" // why

// SmallFirst reports a group that is finished too early by the practice of the
// trade.
const SmallFirst finding.Code = "plan small first" // small, large; _thread of both, or _hole if none is known

// Grounds of an order and its rounds.
const (
	SizeByHole    finding.Code = "plan size by hole"   // kinds, holes, side
	SprungLoosen  finding.Code = "plan sprung loosen"  //
	SprungTighten finding.Code = "plan sprung tighten" // turn
)

// Stages that lift a part under spring load at one end.
const (
	SprungTurn finding.Code = "plan sprung turn" // kind, turn, release, most
	SprungOut  finding.Code = "plan sprung out"  // kind, other: still under load, rounds of it, least; the text for a file: until, unloaded
)

// stageFails names the stage that cannot be planned. The place of a finding is
// a stage of tightening; for a loosening stage only the values name it.
func stageFails(side CautionSide, stage int, why error) error {
	found := finding.Failed(StageFails, finding.Values{"side": string(side), "stage": stage, "why": why})
	if side == CautionTighten {
		found.At.Stage = stage
	}
	return found
}
