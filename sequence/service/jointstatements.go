package service

import "drawdown/geometry/finding"

// Statements about a joint.
const (
	Needs      finding.Code = "torque window"    // seating, work, crush
	UsesHot    finding.Code = "torque yield hot" // cold, hot, high
	Alternates finding.Code = "torque fatigue"   // amplitude, limit
	AimIs      finding.Code = "torque tightest"  // torque, by, low, high, needed, reaches
)

// Says states what the gasket needs and bears.
func (g Gasket) Says() finding.Finding {
	return finding.Noted(Needs, finding.Values{"seating": g.Window.Seating, "work": g.Window.Work, "crush": g.Window.Crush})
}

// Says states how much of its yield stress a bolt uses.
func (y Yield) Says() finding.Finding {
	return finding.Noted(UsesHot, finding.Values{"cold": y.Cold, "hot": y.Nominal, "high": y.High})
}

// Says states how the load alternates the bolt.
func (f Fatigue) Says() finding.Finding {
	return finding.Noted(Alternates, finding.Values{"amplitude": f.Amplitude, "limit": f.Limit})
}

// Says states the highest aim and what limits it.
func (a Aim) Says() finding.Finding {
	return finding.Noted(AimIs, finding.Values{
		"torque": a.Torque, "by": string(a.By), "low": a.Preload.Low, "high": a.Preload.High, "needed": a.Needed, "reaches": a.Reaches(),
	})
}
