package ways_test

import (
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

func forecastOf(t testing.TB, p plan.Plan, stated setup.Setup) prediction.Forecast {
	t.Helper()
	f, err := prediction.ForecastOf(p, stated)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// First principles: what others take from a bolt after its last turn is what it
// lacks at the end.
func TestWhoTakesTheLoadOfTheLowestBolt(t *testing.T) {
	f := forecastOf(t, builtin(t, "p4-head"), setup.Setup{})
	if f.Taken == nil {
		t.Fatal("nobody took load from a bolt that ends low")
	}
	lowest := f.Lowest[0]
	if lacks := 100 - f.Last().Percent[lowest].Low; f.Taken.From != lowest || math.Abs(f.Taken.All-lacks) > 1e-6 || !(f.Taken.Points > lacks/4 && f.Taken.Points <= lacks) {
		t.Errorf("%+v, but bolt %d lacks %g", *f.Taken, lowest, lacks)
	}
	// On a soft flange the last pass has compensated for earlier losses.
	soft := forecastOf(t, builtin(t, "p4-pump-flange"), setup.Setup{Gasket: compliance.CorkRubber})
	if lacks := 100 - soft.Last().Percent[soft.Lowest[0]].Low; soft.Taken == nil || math.Abs(soft.Taken.All-lacks) > 1e-6 {
		t.Errorf("flange: %+v, lacks %g", soft.Taken, lacks)
	}
	// Its neighbour in the row, and one that is turned later.
	p := builtin(t, "p4-head")
	numbers := p.Tighten.Numbers()
	at := p.Joint.Points()
	if numbers[f.Taken.By] <= numbers[lowest] || at[lowest].Distance(at[f.Taken.By]) > 2*geometry.Spacing(at) {
		t.Errorf("%s takes load from %s", p.Joint.Fasteners[f.Taken.By].ID, p.Joint.Fasteners[lowest].ID)
	}
	if even := forecastOf(t, builtin(t, "p4-cam-caps"), setup.Setup{}); even.Taken != nil {
		t.Errorf("nobody ends low, yet %+v", *even.Taken)
	}
}

// The stages of the files: 24 N·m on the side bolts of the head, whose main bolts
// end on an angle; 200 N·m on the flange.
func TestWhatAHundredPercentIs(t *testing.T) {
	for name, want := range map[string][]finding.Code{
		"p4-head":        {procedure.ByMeanAtAngle, procedure.ByLastTorque},
		"p4-pump-flange": {procedure.ByLastTorque},
	} {
		f := forecastOf(t, builtin(t, name), setup.Setup{})
		if len(f.Hundreds) != len(want) {
			t.Errorf("%s: %v", name, f.Hundreds)
			continue
		}
		for k, h := range f.Hundreds {
			if h.By != want[k] || h.ForceN.Nominal <= 0 {
				t.Errorf("%s: %v, want %s", name, h, want[k])
			}
		}
		torques := map[string]float64{"p4-head": 24, "p4-pump-flange": 200} // N·m
		if last := f.Hundreds[len(want)-1]; float64(last.Torque.Nm()) != torques[name] {
			t.Errorf("%s: by %v, want %g N·m", name, last.Torque, torques[name])
		}
	}
}

// The pump flange goes around twice more at its last torque, which is the
// reason to leave it as it is. For the head the advice is about its side bolts
// only, since an angle ends the others.
func TestTheReasonOfAVerdict(t *testing.T) {
	flange := compared(t, builtin(t, "p4-pump-flange"), setup.Setup{}).Advice
	before, _ := flange.Reasons[0].Values["before"].(float64)
	if flange.Branch != advice.LeaveItsRepeat || !(before > 70 && before < 95) || len(flange.Reasons) != 1 {
		t.Errorf("flange: %+v", flange)
	}
	head := compared(t, builtin(t, "p4-head"), setup.Setup{}).Advice
	again, _ := head.Head.Values["change"].([]finding.Finding)
	if len(again) != 1 || again[0].Values["kind"] != "side" || !finding.Has(head.Reasons, advice.SaysNeverAgain) {
		t.Errorf("head: %+v", head)
	}
}

// The trade's rules, as in sequence/judge: on a bolt circle, one after the
// other departs, crosswise is sound.
func TestOrdersAreHeldAgainstTheRules(t *testing.T) {
	c := compared(t, builtin(t, "p4-pump-flange"), setup.Setup{})
	for name, want := range map[advice.Way]judge.Verdict{"circular": judge.Departs, "star": judge.Sound} {
		if got := trial(t, c, name).Rules; got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// A wrench notices a loss of five percent (engineering estimate of the model's
// design): the flange has compensated for more, the head's side bolts have not.
func TestWhetherAWrenchFeelsARepeat(t *testing.T) {
	for name, want := range map[string]bool{"p4-pump-flange": false, "p4-head": true} {
		if got := forecastOf(t, builtin(t, name), setup.Setup{}).RepeatIsFelt(); got != want {
			t.Errorf("%s: %v", name, got)
		}
	}
}
