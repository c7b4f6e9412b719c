package figures_test

import (
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// All expected values in this file follow from first principles.

func drawKind(t *rapid.T) plan.Kind {
	k := plan.Kind{
		Name:   "main",
		Thread: named(t, rapid.SampledFrom([]string{"M4", "M6", "M8", "M10", "M10x1.25", "M12", "M16", "M24"}).Draw(t, "thread")),
		Class:  rapid.SampledFrom([]string{"5.6", "8.8", "10.9", "A2-70", "830 MPa"}).Draw(t, "class"),
		Reuse:  rapid.SampledFrom([]plan.Reuse{plan.ReuseUnknown, plan.ReuseInspect, plan.ReuseYes}).Draw(t, "reuse"),
	}
	if rapid.Bool().Draw(t, "coefficients stated") {
		low := rapid.Float64Range(0.06, 0.2).Draw(t, "low")
		span := screw.Between(low, low*rapid.Float64Range(1.01, 1.5).Draw(t, "span")) // a single figure gets the range of its class
		k.Friction = &screw.Friction{Thread: span, Head: span}
	} else if k.Class == "A2-70" { // it galls when dry
		k.Lubricant = rapid.SampledFrom([]string{"", "engine oil", "moly"}).Draw(t, "lubricant")
	} else {
		k.Lubricant = rapid.SampledFrom([]string{"", "engine oil", "moly", "dry"}).Draw(t, "lubricant")
	}
	return k
}

// sound draws stages up to a share of the calculated torque of the kind.
func sound(t *rapid.T, k plan.Kind) []plan.StageInput {
	target, err := screw.Target(k.Bolt())
	if err != nil {
		t.Fatal(err)
	}
	last := float64(target.Torque) * rapid.Float64Range(0.5, 1).Draw(t, "share")
	stages := []plan.StageInput{torqueOf(last)}
	if rapid.Bool().Draw(t, "two stages") {
		stages = []plan.StageInput{torqueOf(last * rapid.Float64Range(0.25, 1).Draw(t, "first")), torqueOf(last)}
	}
	return stages
}

// A torque up to the calculated one gives no warning; ten times that always
// gives one about the torque.
func TestTenTimesASoundPlanIsDoubted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := drawKind(t)
		stages := sound(t, k)
		if doubts := doubtsOn(t, k, stages...); len(doubts) > 0 {
			t.Fatalf("%v", doubts)
		}
		for i := range stages {
			stages[i].Torque.Value *= 10
		}
		doubts := doubtsOn(t, k, stages...)
		if len(doubts) == 0 || subjects[doubts[len(doubts)-1].Code] != "torque" {
			t.Fatalf("ten times: %v", doubts)
		}
	})
}

// The calculated shares of a torque are the plan's own and give no warning.
func TestSharesAreNotDoubted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := drawKind(t)
		share := rapid.Float64Range(25, 100).Draw(t, "share")
		if doubts := doubtsOn(t, k, plan.StageInput{Do: plan.Percent, Percent: share}, plan.StageInput{Do: plan.Percent, Percent: 100}); len(doubts) > 0 {
			t.Fatalf("%v", doubts)
		}
	})
}

// A larger angle never gives fewer warnings.
func TestMoreAngleIsDoubtedMore(t *testing.T) {
	gravity := func(doubts []finding.Finding) int {
		worst := 0
		for _, d := range doubts {
			switch subjects[d.Code] {
			case "reuse":
				worst = max(worst, 1)
			case "angle":
				worst = 2
			}
		}
		return worst
	}
	rapid.Check(t, func(t *rapid.T) {
		k := drawKind(t)
		k.Grip = unit.Length(k.Thread.MajorMm * rapid.Float64Range(0.5, 20).Draw(t, "grip"))
		target, err := screw.Target(k.Bolt())
		if err != nil {
			t.Fatal(err)
		}
		snug := torqueOf(float64(target.Torque) * rapid.Float64Range(0.1, 0.6).Draw(t, "snug"))
		angle := unit.Angle(rapid.Float64Range(1, 700).Draw(t, "angle"))
		more := angle + unit.Angle(rapid.Float64Range(1, 700).Draw(t, "more"))
		if less, most := gravity(doubtsOn(t, k, snug, angleOf(angle))), gravity(doubtsOn(t, k, snug, angleOf(more))); less > most {
			t.Fatalf("%v is doubted as %d, %v as %d", angle, less, more, most)
		}
	})
}
