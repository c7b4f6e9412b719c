package figures_test

import (
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// Each threshold of the judge from both sides, on M10 class 10.9 with a grip of
// 30 mm. The thresholds are design choices: 15° and a whole turn; lengths to
// half a millimetre, one diameter beyond an engagement, three beyond a nut of
// 0.8; heads of 1.1 to 2.05 diameters; friction of 0.04 to 0.4.
func TestThresholds(t *testing.T) {
	t.Parallel()
	oil := func(low, high float64) func(*figures.Bolt) {
		return func(b *figures.Bolt) { f := screw.Same(screw.Between(low, high)); b.Bolt.Friction = &f }
	}
	turned := func(deg ...unit.Angle) func(*figures.Bolt) {
		return func(b *figures.Bolt) {
			b.Bolt.Class = "" // so that no turn can be calculated
			b.Stages = b.Stages[:1]
			for k, a := range deg {
				b.Stages = append(b.Stages, figures.Stage{Number: k + 2, Do: figures.Advance, Angle: a})
			}
		}
	}
	long := func(length unit.Length) func(*figures.Bolt) {
		return func(b *figures.Bolt) { b.Grip.BoltLength, b.Grip.Thread = length, 60 }
	}
	nutted := func(length unit.Length) func(*figures.Bolt) {
		return func(b *figures.Bolt) {
			b.Grip.TappedIn, b.Grip.Engagement, b.NutAcross = "", 0, 16
			b.Grip.BoltLength, b.Grip.Thread = length, 60
		}
	}
	torques := func(values ...float64) func(*figures.Bolt) {
		return func(b *figures.Bolt) {
			b.Stages = nil
			for k, v := range values {
				b.Stages = append(b.Stages, figures.Stage{Number: k + 1, Do: figures.Tighten, Torque: unit.GivenTorque{Value: v}})
			}
		}
	}
	stud := func(change func(*figures.Bolt)) func(*figures.Bolt) {
		return func(b *figures.Bolt) { change(b); b.Stud = true }
	}
	for _, c := range []struct {
		code    finding.Code
		without []func(*figures.Bolt) // just within the limit
		with    []func(*figures.Bolt) // just beyond
	}{
		{figures.TurnHardlyAny, []func(*figures.Bolt){turned(15), turned(0)}, []func(*figures.Bolt){turned(14.9), turned(90, 1)}},
		{figures.TurnWhole, []func(*figures.Bolt){turned(360), turned(180, 180)}, []func(*figures.Bolt){turned(361), turned(180, 181)}},
		{figures.LengthShort, []func(*figures.Bolt){long(30.1), long(0)}, []func(*figures.Bolt){long(30), long(20)}},
		{figures.LengthLeaves, []func(*figures.Bolt){long(49.5), long(30)}, []func(*figures.Bolt){long(49.4), long(30.1)}},
		{figures.LengthPlain, []func(*figures.Bolt){
			func(b *figures.Bolt) { b.Grip.Thread = 20 }, func(b *figures.Bolt) { b.Grip.Thread = 0 },
			stud(func(b *figures.Bolt) { b.Grip.Thread = 10 }),
		}, []func(*figures.Bolt){func(b *figures.Bolt) { b.Grip.Thread = 19.9 }}},
		{figures.LengthBeyond, []func(*figures.Bolt){long(60.5), nutted(90)}, []func(*figures.Bolt){long(60.6)}},
		{figures.LengthNut, []func(*figures.Bolt){nutted(37.5), long(50), stud(nutted(45.5))}, []func(*figures.Bolt){nutted(37.4), stud(nutted(45.4))}},
		{figures.LengthBeyondNut, []func(*figures.Bolt){nutted(68.5), long(90), stud(nutted(106.5))}, []func(*figures.Bolt){nutted(68.6), stud(nutted(106.6))}},
		{figures.AcrossOdd, []func(*figures.Bolt){
			func(b *figures.Bolt) { b.NutAcross = 12.4 }, func(b *figures.Bolt) { b.Bolt.HeadAcross = 11 }, func(b *figures.Bolt) { b.NutAcross = 20.5 },
			func(b *figures.Bolt) { b.Bolt.HeadAcross = 20.5 }, func(b *figures.Bolt) { b.Bolt.HeadAcross, b.Bolt.HeadForm = 21, head.Socket },
		}, []func(*figures.Bolt){
			func(b *figures.Bolt) { b.NutAcross = 12.3 }, func(b *figures.Bolt) { b.NutAcross = 20.6 },
			func(b *figures.Bolt) { b.Bolt.HeadAcross = 20.6 }, func(b *figures.Bolt) { b.Bolt.HeadAcross, b.Bolt.HeadForm = 20.6, head.Hexagon },
		}},
		{figures.FrictionOdd, []func(*figures.Bolt){oil(0.04, 0.04), oil(0.4, 0.4)}, []func(*figures.Bolt){oil(0.039, 0.039), oil(0.41, 0.41)}},
		// Engine oil has 0.08 to 0.16 (VDI 2230, table A5).
		{figures.FrictionOfOther, []func(*figures.Bolt){oil(0.05, 0.08), oil(0.16, 0.2)}, []func(*figures.Bolt){oil(0.05, 0.079), oil(0.161, 0.2)}},
		// A wrench is accurate from a fifth of its maximum on (ISO 6789).
		{figures.TwoWrenches, []func(*figures.Bolt){torques(10, 50), torques(50)}, []func(*figures.Bolt){torques(9.9, 50), torques(50, 9.9)}},
		{figures.HoleTooSmall, []func(*figures.Bolt){func(b *figures.Bolt) { b.Bolt.Hole = 10 }}, []func(*figures.Bolt){func(b *figures.Bolt) { b.Bolt.Hole = 9.9 }}},
		{figures.HoleWithoutClearance, []func(*figures.Bolt){func(b *figures.Bolt) { b.Bolt.Hole = 10.1 }}, []func(*figures.Bolt){func(b *figures.Bolt) { b.Bolt.Hole = 10 }}},
		// ISO 273: M12 goes through 13 mm.
		{figures.HoleOfLarger, []func(*figures.Bolt){func(b *figures.Bolt) { b.Bolt.Hole = 12.5 }}, []func(*figures.Bolt){func(b *figures.Bolt) { b.Bolt.Hole = 13 }}},
		{figures.EngagementOpen, []func(*figures.Bolt){
			func(b *figures.Bolt) {}, func(b *figures.Bolt) { b.Grip.Engagement, b.Grip.TappedIn = 0, "" },
		}, []func(*figures.Bolt){func(b *figures.Bolt) { b.Grip.Engagement = 0 }}},
		{figures.EngagementFirst, []func(*figures.Bolt){func(b *figures.Bolt) { b.Grip.TappedIn = "steel" }}, []func(*figures.Bolt){func(b *figures.Bolt) { b.Grip.Engagement = 8 }}},
		// Oil without a statement of what is on the thread may also be dry.
		{figures.TorqueGalls, []func(*figures.Bolt){
			func(b *figures.Bolt) { b.Bolt.Class, b.Bolt.Lubricant, b.Grip.TappedIn = "A2-70", "", "steel" },
			func(b *figures.Bolt) { b.Bolt.Class, b.Grip.TappedIn = "A2-70", "" },
			func(b *figures.Bolt) { b.Bolt.Lubricant, b.Grip.TappedIn = "", "" },
		}, []func(*figures.Bolt){
			func(b *figures.Bolt) { b.Bolt.Class, b.Bolt.Lubricant, b.Grip.TappedIn = "A2-70", "", "" },
			func(b *figures.Bolt) { b.Bolt.Class, b.Bolt.Lubricant, b.Grip.TappedIn = "A2-70", "dry", "" },
		}},
	} {
		for want, changes := range map[bool][]func(*figures.Bolt){false: c.without, true: c.with} {
			for k, change := range changes {
				b := whole(t)
				change(&b)
				if found := figures.Judge([]figures.Bolt{b}); finding.Has(found, c.code) != want {
					t.Errorf("%q: case %d, said %v, want %v: %v", c.code, k, !want, want, found)
				}
			}
		}
	}
}

// The torque over yield is given as a multiple from 1.5 on, in halves, and
// roughly from 9.5 on. The yield torque is that of the calculation.
func TestHowManyTimesOverYield(t *testing.T) {
	t.Parallel()
	b := whole(t)
	whole := b.Bolt
	whole.YieldShare = 1
	r, err := screw.AtTorque(whole, 20)
	if err != nil {
		t.Fatal(err)
	}
	for ratio, want := range map[float64]struct {
		times float64
		some  bool
	}{1.49: {0, false}, 1.51: {1.5, false}, 1.7: {1.5, false}, 1.8: {2, false}, 9.4: {9.5, false}, 9.6: {10, true}, 20.2: {20, true}} {
		b.Stages = []figures.Stage{{Number: 1, Do: figures.Tighten, Torque: unit.GivenTorque{Value: ratio * float64(r.Nominal.FullTorque)}}}
		said := false
		for _, f := range figures.Judge([]figures.Bolt{b}) {
			if f.Code == figures.TorqueOver {
				said = true
				if f.Values["times"] != want.times || f.Values["some"] != want.some {
					t.Errorf("%g times: told as %v, some %v", ratio, f.Values["times"], f.Values["some"])
				}
			}
		}
		if !said {
			t.Errorf("%g times what brings it to yield is not told", ratio)
		}
	}
}

// For a turn that is not calculated, the finding says what is missing.
func TestWhatATurnLacks(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(b *figures.Bolt)
		lacks  bool
	}{
		"no class":  {func(b *figures.Bolt) { b.Bolt.Class = "" }, true},
		"no thread": {func(b *figures.Bolt) { b.Bolt.Thread.Name = "" }, true},
		"no grip":   {func(b *figures.Bolt) { b.Grip.Layers = nil }, true},
		"no torque": {func(b *figures.Bolt) { b.Stages = b.Stages[1:] }, false},
	} {
		b := whole(t)
		b.Stages[1].Angle = 361
		c.change(&b)
		said := false
		for _, f := range figures.Judge([]figures.Bolt{b}) {
			if f.Code == figures.TurnWhole {
				if said = true; f.Values["lacks"] != c.lacks || f.At.Stage != 2 || f.Severity != finding.Warning {
					t.Errorf("%s: %+v", name, f)
				}
			}
		}
		if !said {
			t.Errorf("%s: a turn and more is not told", name)
		}
	}
}

// A settlement of more than 15 % of the preload is reported (common practice,
// no source). The same micrometres weigh more in a short grip.
func TestSettlementThatIsWorthAWord(t *testing.T) {
	t.Parallel()
	said, silent := false, false
	for _, mm := range []unit.Length{2, 4, 6, 8, 10, 15, 20, 40, 80} {
		ask := alone(t)
		ask.Grip = stiffness.Simple(mm)
		a := work(t, ask)
		if a.Settlement == nil {
			continue
		}
		much := a.Settlement.LossShare > 0.15
		if finding.Has(a.Notes, figures.SettlesMuch) != much {
			t.Errorf("a grip of %v loses %.3f: told %v", mm, a.Settlement.LossShare, !much)
		}
		said, silent = said || much, silent || !much
	}
	if !said || !silent {
		t.Error("the grips lie all on one side of the limit")
	}
}

// A bolt that is used once is never measured for its next use.
func TestOnceIsNeverMeasured(t *testing.T) {
	t.Parallel()
	judged := func(angle unit.Angle, reuse string) []finding.Finding {
		b := whole(t)
		b.Reuse = reuse
		b.Grip = stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 95, Material: "aluminium"}}, TappedIn: "aluminium", Engagement: 24, BoltLength: 120, Thread: 60}
		b.Stages[1].Angle = angle
		return figures.Judge([]figures.Bolt{b})
	}
	measured := 0
	for angle := unit.Angle(45); angle <= 180; angle += 5 {
		once := judged(angle, "once")
		if finding.Has(once, figures.TurnMeasured) {
			t.Errorf("%v: to be measured, and used once", angle)
		}
		if finding.Has(judged(angle, "inspect"), figures.TurnMeasured) {
			measured++
			if !finding.Has(once, figures.TurnUsedOnce) {
				t.Errorf("%v: not said that it is used once", angle)
			}
		}
	}
	if measured == 0 {
		t.Error("no angle is just beyond yield")
	}
}

// Permanent stretch is reported: as used up, or to be measured. A bolt that
// springs back has no finding.
func TestWhatLastsOfATurn(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		angle unit.Angle
		want  finding.Code
	}{{45, ""}, {180, figures.TurnUsedOnce}} {
		b := whole(t)
		b.Reuse = "once"
		b.Grip = stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 95, Material: "aluminium"}}, TappedIn: "aluminium", Engagement: 24, BoltLength: 120, Thread: 60}
		b.Stages[1].Angle = c.angle
		found := figures.Judge([]figures.Bolt{b})
		for _, code := range []finding.Code{figures.TurnUsedOnce, figures.TurnMeasured} {
			if finding.Has(found, code) != (code == c.want) {
				t.Errorf("%v: %q said %v", c.angle, code, code != c.want)
			}
		}
	}
}
