package plan

import (
	"fmt"

	"drawdown/geometry/unit"
)

// turn is a run of angles that add up, and the torque that they follow.
type turn struct {
	snug  unit.GivenTorque // 0: the bolt was slackened or never torqued
	angle unit.Angle       // in all
	last  int              // number of the last stage of angle
}

// turns adds up the angles of the kind. They begin anew with each torque and
// each slackening.
func (j *judge) turns() []turn {
	var runs []turn
	var now turn
	for _, s := range j.stages {
		switch s.Do {
		case Tighten:
			runs, now = append(runs, now), turn{snug: s.Torque}
		case BackOff:
			runs, now = append(runs, now), turn{}
		case Advance:
			now.angle += s.Angle
			now.last = s.Number
		}
	}
	var turned []turn
	for _, run := range append(runs, now) {
		if run.angle > 0 {
			turned = append(turned, run)
		}
	}
	return turned
}

func (t turn) String() string {
	if t.snug.Value == 0 {
		return fmt.Sprintf("%v in all", t.angle)
	}
	return fmt.Sprintf("%v in all after %s", t.angle, t.snug)
}
