package service_test

import (
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
	"drawdown/sequence/service"
)

// Every warning speaks against a joint, whoever found it; of the notes only
// those about the joint or about a bolt that may yield. Warnings come first.
func TestDoubts(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name  string
		found finding.Finding
		want  bool
	}{
		{"the bolt breaks", finding.Warned(figures.TorqueOneFriction, nil), true},
		{"the bolt yields", finding.Warned(figures.TorqueOver, nil), true},
		{"the bolt breaks at its angle", finding.Warned(figures.TurnBreaks, nil), true},
		{"the bolt breaks at its stretch", finding.Warned(figures.StretchBreaks, nil), true},
		{"the head sinks in", finding.Warned(figures.PressureTooHigh, nil), true},
		{"the thread strips", finding.Warned(figures.EngagementFails, nil), true},
		{"the gasket is crushed", finding.Warned(service.Crushes, nil), true},
		{"the bolt may yield", finding.Noted(figures.TorquePastYield, nil), true},
		{"the snug torque may break the bolt", finding.Noted(figures.SnugBreaks, nil), true},
		{"the bolt yields hot", finding.Noted(service.YieldsHot, nil), true},
		{"the gasket may not seat", finding.Noted(service.NotSeated, nil), true},
		{"the gasket may leak", finding.Noted(service.BelowWork, nil), true},
		{"the parts may open", finding.Noted(service.PartsOpen, nil), true},
		{"no torque fits", finding.Noted(service.NothingFits, nil), true},
		{"the lubricant is open", finding.Noted(figures.LubricantOpen, nil), false},
		{"the torque is high for a hand", finding.Noted(figures.TorqueByTool, nil), false},
	} {
		if got := len(service.Doubts([]finding.Finding{test.found})) > 0; got != test.want {
			t.Errorf("%s: speaks against the joint %v, want %v", test.name, got, test.want)
		}
	}
	kind := finding.Place{Kind: "stud"}
	list := service.Doubts([]finding.Finding{finding.Noted(service.YieldsHot, nil), finding.Warned(figures.PressureTooHigh, nil).About(kind)})
	if len(list) != 2 || list[0].Code != figures.AtKind || list[1].Code != service.YieldsHot {
		t.Errorf("got %v, want the warning first, with its kind", list)
	}
}
