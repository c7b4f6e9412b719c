package measures

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/sequence/measure"
)

// MostSizes limits the number of sizes of a set of shims.
const MostSizes = 1000

// shims reads the available shim sizes. It returns nil if they make no sense,
// which is reported.
func (r *reader) shims(f form.Fields, v measure.Value) *measure.Shims {
	from, to := figure(f, f.Need("from", "2.00"), "from", v.Unit), figure(f, f.Need("to", "3.20"), "to", v.Unit)
	step := figure(f, f.Need("step", "0.05"), "step", v.Unit)
	if v.Unit != "" && !v.Unit.IsLength() {
		r.Fail(f.Node, ShimsNoLength, finding.Values{"unit": string(v.Unit)})
		return nil
	}
	if _, wanted := v.Aim(); !wanted && !r.Mistyped("from", "to", "wanted") && !r.Has("wanted") {
		r.Fail(f.Node, ShimsUnwanted, nil)
	}
	if from == nil || to == nil || step == nil {
		return nil
	}
	s := measure.Shims{From: *from, To: *to, Step: *step}
	if !r.sound(f, v, s) {
		return nil
	}
	return &s
}

func (r *reader) sound(f form.Fields, v measure.Value, s measure.Shims) bool {
	zero := unit.Decimal{}
	span := s.To.Minus(s.From)
	switch {
	case !zero.Less(s.From):
		r.Fail(f.Node.KeyNode("from"), ShimsThin, finding.Values{"from": v.Read(s.From)})
	case s.To.Less(s.From):
		r.Fail(f.Node.KeyNode("to"), ShimsReversed, finding.Values{"from": v.Read(s.From), "to": v.Read(s.To)})
	case !zero.Less(s.Step) || span.Less(s.Step):
		r.Fail(f.Node.KeyNode("step"), ShimsStep, finding.Values{"step": v.Read(s.Step), "most": v.Read(span)})
	case s.Count() > MostSizes:
		r.Fail(f.Node, ShimsTooMany, finding.Values{"count": int(s.Count()), "most": MostSizes})
	default:
		r.fitting(f, v, s)
		return true
	}
	return false
}

// fitting warns about sizes that may not serve their purpose.
func (r *reader) fitting(f form.Fields, v measure.Value, s measure.Shims) {
	if last := s.Thickest(); last.Less(s.To) {
		r.Warn(f.Node.KeyNode("to"), ShimsUneven, finding.Values{"to": v.Read(s.To), "last": v.Read(last)})
	}
	const mostTimes = 4 // common practice, no source
	if s.To.Float() > mostTimes*s.From.Float() {
		r.Warn(f.Node.KeyNode("to"), ShimsWide, finding.Values{"from": v.Read(s.From), "to": v.Read(s.To)})
	}
	if v.From == nil || v.To == nil || v.To.Less(*v.From) {
		return
	}
	if width := v.To.Minus(*v.From); width.Less(s.Step) {
		r.Warn(f.Node.KeyNode("step"), ShimsCoarse, finding.Values{"step": v.Read(s.Step), "range": v.Read(width)})
	}
}
