package plan

import "drawdown/geometry/finding"

// StageFails is of a stage that cannot be planned.
const StageFails finding.Code = "plan stage fails" // side, stage, why

// Fails is of a plan that cannot be made, for another reason.
const Fails finding.Code = "plan fails" // why

// SmallFirst is of a group that is finished too early by the trade's practice.
const SmallFirst finding.Code = "plan small first" // small, small_thread, large, large_thread

// stageFails names the stage that cannot be planned. The place of a finding is
// a stage of tightening: of loosening the values alone tell it.
func stageFails(side CautionSide, stage int, why error) error {
	found := finding.Failed(StageFails, finding.Values{"side": string(side), "stage": stage, "why": why})
	if side == CautionTighten {
		found.At.Stage = stage
	}
	return found
}
