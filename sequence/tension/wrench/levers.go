package wrench

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// shortest holds the least length of a wrench for more than a torque: room for
// a hand, and more as the pull increases. Common practice, no source.
var shortest = []struct {
	overNm unit.Torque
	length unit.Length
}{
	{0, 60}, // a few fingers and the head
	{20, 100},
	{100, 200}, // both hands
}

// Force at the grip of a wrench at the end of its scale. Common practice, no
// source.
const (
	mostAtGrip  unit.Force  = 1000 // a heavy person hanging on it
	longWrench  unit.Length = 1000 // only wrenches of about 200 N·m and more are longer
	leastAtGrip unit.Force  = 100  // of a long one: with less force, the length would not be needed
)

// doubtLength reports that a wrench of this length cannot be meant for a
// torque, with a scale that ends at most at another.
func doubtLength(length unit.Length, torque, end unit.GivenTorque) (finding.Finding, bool) {
	if length <= 0 || torque.Value <= 0 {
		return finding.Finding{}, false
	}
	doubt := func(code finding.Code, torque unit.GivenTorque, limit any) (finding.Finding, bool) {
		return finding.Warned(code, finding.Values{
			"length": length, "torque": torque, "force": atGrip(torque, length), "limit": limit,
		}).From(finding.CommonPractice), true
	}
	least := shortestFor(torque)
	switch {
	case atGrip(torque, length) > mostAtGrip:
		return doubt(PullTooGreat, torque, mostAtGrip)
	case length < least:
		return doubt(LengthShort, torque, least)
	case length > longWrench && atGrip(end, length) < leastAtGrip:
		return doubt(LengthLong, end, longWrench)
	}
	return finding.Finding{}, false
}

func atGrip(torque unit.GivenTorque, length unit.Length) unit.Force {
	const mmPerMetre = 1000
	return unit.Force(float64(torque.Nm()) * mmPerMetre / float64(length))
}

func shortestFor(torque unit.GivenTorque) unit.Length {
	least := unit.Length(0)
	for _, s := range shortest {
		if torque.Nm() > s.overNm {
			least = s.length
		}
	}
	return least
}

// DoubtLength reports that the length of a wrench does not match the end of its
// scale: a digit or the unit of one of them is wrong.
func (w Wrench) DoubtLength() (finding.Finding, bool) {
	end := unit.GivenTorque{Value: w.Max, Unit: w.Unit}
	return doubtLength(w.Length, end, end)
}

// doubtLength judges the length used for the setting: that of a listed wrench
// by its scale, a stated one by the setting.
func (w Work) doubtLength(r Result) (finding.Finding, bool) {
	if r.LengthFrom == LengthOfList {
		return r.Wrench.DoubtLength()
	}
	return doubtLength(w.Length, r.Setting.OnScale(w.Unit), (r.Setting / LeastUsable).OnScale(w.Unit))
}
