package contact

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/checktest"
	"drawdown/sequence/tension/stiffness"
)

func TestHeadWithBoresCutOut(t *testing.T) {
	plate, c := headPlate(t)
	order := checktest.Ints(checktest.CaseOf(t, "P12").Wants("order_spiral"))
	for _, mesh := range []float64{0, 10, 5} { // the case: mesh-converged values differ by less than 1 %
		plate.MeshMm = mesh
		m := checktest.Must[*mat.SymDense](t)(plate.Compliance(checktest.TwoByFive(), c.In("k")))
		c.Same("C 0 0", m.At(0, 0), c.Want("C_0_0"))
		c.Same("C 4 4", m.At(4, 4), c.Want("C_4_4"))
		c.Same("C 4 5", m.At(4, 5), c.Want("C_4_5"))
		c.Same("C 4 6", m.At(4, 6), c.Want("C_4_6"))
		j := checktest.Must[*Joint](t)(NewJoint(m, ownAlike(10, c.In("cb"))))
		targets := checktest.Alike(10, 100)
		for key, shares := range map[string][]float64{"spiral_one_pass": {1}, "spiral_30_70_100": {0.3, 0.7, 1}} {
			after := checktest.Must[[]AfterPass](t)(j.Loose().Work(stages(order, targets, shares...), nil))
			c.SameSpread(key, bounds.SpreadOf(after[len(after)-1].ForcesN), checktest.Find(t, c.Expect, key).(map[string]any))
		}
	}
}

// From the tables of the prototype behind checktest/checks.yaml: full-face
// flange, k 150, own 1.03e-6, C 0.696 and 0.210 µm/kN by finite elements; one
// pass around 80.2 / 90.5 / 100.0, SD 3.68; by the star 76.3 / 90.0 / 105.2, SD
// 12.58. They print one decimal of a point, and do not state the bore of 330
// mm: 0.1 points.
func TestFullFaceFlange(t *testing.T) {
	m := checktest.Must[*mat.SymDense](t)(annulus().Compliance(checktest.Circle16(450), 150))
	if a, b := 1e6*m.At(0, 0), 1e6*m.At(0, 1); math.Abs(a-0.696) > 0.002 || math.Abs(b-0.210) > 0.002 {
		t.Errorf("C is %.4f and %.4f µm/kN, want 0.696 and 0.210", a, b)
	}
	j := checktest.Must[*Joint](t)(NewJoint(m, ownAlike(16, 1.03e-6)))
	for _, c := range []struct {
		order []int
		want  bounds.Spread
	}{
		{checktest.InTurn(16), bounds.Spread{Min: 80.2, Mean: 90.5, Max: 100, SD: 3.68}},
		{[]int{0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15}, bounds.Spread{Min: 76.3, Mean: 90.0, Max: 105.2, SD: 12.58}},
	} {
		forces, holds, err := j.onePass(c.order, checktest.Alike(16, 100))
		if err != nil || !holds {
			t.Fatal(holds, err)
		}
		got := bounds.SpreadOf(forces)
		for _, pair := range [][2]float64{{got.Min, c.want.Min}, {got.Mean, c.want.Mean}, {got.Max, c.want.Max}, {got.SD, c.want.SD}} {
			if math.Abs(pair[0]-pair[1]) > 0.1 {
				t.Errorf("order %v: got %+v, want %+v", c.order, got, c.want)
			}
		}
	}
}

// First principles: compensation never slackens a nut.
func TestCompensationTurnsNoNutBack(t *testing.T) {
	nuts := fourBolts(t).Loose()
	for _, target := range []float64{2, 2} { // above the wanted force
		for i := range 4 {
			if err := nuts.Tighten(i, target); err != nil {
				t.Fatal(err)
			}
		}
	}
	before := nuts.travelsMm()
	checktest.Must[[]float64](t)(nuts.Compensated(checktest.InTurn(4), checktest.Alike(4, 1), math.Inf(1)))
	if !slices.Equal(before, nuts.travelsMm()) {
		t.Errorf("travels %v became %v", before, nuts.travelsMm())
	}
}

func TestBadJointsAreRefused(t *testing.T) {
	nan := math.NaN()
	if _, err := NewJoint(mat.NewSymDense(2, []float64{1, 3, 3, 1}), make([]stiffness.Resilience, 2)); err == nil {
		t.Error("a joint that gives energy away must be refused")
	}
	j := fourBolts(t)
	for _, order := range [][]int{{0, 1, 2}, {0, 1, 2, 2}, {0, 1, 2, 4}} {
		if _, _, err := j.onePass(order, checktest.Alike(4, 1)); err == nil {
			t.Errorf("the order %v must be refused", order)
		}
	}
	nuts := j.Loose()
	for _, err := range []error{nuts.Tighten(0, 0), nuts.Tighten(0, nan), nuts.Tighten(9, 1), nuts.Advance(0, nan), nuts.Remove(-1), nuts.Do(Action{Do: 77})} {
		if err == nil {
			t.Error("a step without sense must be refused")
		}
	}
}

func TestTwoBolts(t *testing.T) {
	c := checktest.CaseOf(t, "P07")
	j := jointOf(t, checktest.As[[][]float64](t, c.Inputs["M"]))
	order, targets := checktest.Ints(c.List("order")), checktest.Alike(2, 1)
	for i, after := range checktest.Must[[]AfterPass](t)(j.Loose().Work(stages(order, targets, 1, 1, 1, 1), nil)) {
		c.SameList("F", after.ForcesN, c.Rows("F_after_pass")[i])
	}
	c.Same("rate", checktest.Must[float64](t)(j.Rate(order)), c.Want("gs_rate"))
	c.SameList("targets", checktest.Must[[]float64](t)(j.onePassTargets(order, targets)), c.Wants("one_pass_targets_for_uniform"))
}

func TestOnePassOfFourBolts(t *testing.T) {
	c := checktest.CaseOf(t, "P08")
	j := fourBolts(t)
	order, targets := checktest.Ints(c.List("order")), checktest.Alike(4, 1)
	f := j.factorIn(order)
	c.SameList("d", f.d, c.Wants("d"))
	for i, want := range c.Rows("L_unit_lower_in_order") {
		c.SameList("L", f.row(i), want[:i])
	}
	a := j.Interaction(order)
	for i, want := range c.Rows("interaction_matrix_in_order") {
		c.SameList("interaction", a[i], want)
	}
	forces, holds, err := j.onePass(order, targets)
	if err != nil || !holds {
		t.Fatal(holds, err)
	}
	c.SameList("closed form", forces, c.Wants("F_one_pass"))
	c.SameList("step by step", checktest.Must[[]AfterPass](t)(j.Loose().Work(stages(order, targets, 1), nil))[0].ForcesN, c.Wants("F_one_pass"))
	c.SameList("targets", checktest.Must[[]float64](t)(j.onePassTargets(order, targets)), c.Wants("targets_for_uniform_one_pass"))
}

func TestStagedPasses(t *testing.T) {
	c := checktest.CaseOf(t, "P09")
	j := fourBolts(t)
	order, targets := checktest.Ints(c.List("order")), checktest.Alike(4, 1)
	nuts := j.Loose()
	for i, after := range checktest.Must[[]AfterPass](t)(nuts.Work(stages(order, targets, c.List("stages")...), nil)) {
		c.SameList("F", after.ForcesN, c.Rows("F_after_each_pass")[i])
	}
	c.SameList("u", nuts.travelsMm(), c.Wants("u_after_last_pass"))
	c.Same("rate", checktest.Must[float64](t)(j.Rate(order)), c.Want("gs_rate"))
	c.Same("work", checktest.Must[float64](t)(j.Loose().tightened(stages(order, targets, c.List("stages")...))), c.Want("wrench_work"))
	c.Same("energy", j.energyNmm(nuts.Forces()), c.Want("wrench_work"))
}

func TestContactLoss(t *testing.T) {
	c := checktest.CaseOf(t, "P10")
	m := square(4) // described in words in the case
	for i := range m {
		for k := range m {
			m[i][k] = 5
		}
		m[i][i] = 6
	}
	j := jointOf(t, m)
	order := checktest.Ints(c.List("order"))
	nuts := j.Loose()
	step := 0
	for _, after := range checktest.Must[[]AfterPass](t)(nuts.Work(stages(order, checktest.Alike(4, 1), c.List("stages")...), nil)) {
		for _, forces := range after.StepForcesN {
			c.SameList("F", forces, c.Rows("F_by_step")[step])
			step++
		}
	}
	c.SameList("u", nuts.travelsMm(), c.Wants("u_final"))
	if _, holds, err := j.onePass(order, checktest.Alike(4, 1)); holds || err != nil {
		t.Error("the closed form must say that it does not hold where bolts go slack", err)
	}
}

func TestGainAndClick(t *testing.T) {
	c := checktest.CaseOf(t, "P11")
	beam := checktest.InfiniteBeam{BendingNmm2: c.In("EI")}
	x := c.List("x")
	compliance := mat.NewSymDense(3, nil)
	for i := range 3 {
		for k := i; k < 3; k++ {
			compliance.SetSym(i, k, beam.At(x[k]-x[i], c.In("k_line")))
		}
	}
	c.Same("C01", compliance.At(0, 1), c.Want("C_offdiag_01"))
	j := checktest.Must[*Joint](t)(NewJoint(compliance, ownAlike(3, c.In("cb"))))
	step := 0
	for _, after := range checktest.Must[[]AfterPass](t)(j.Loose().Work(stages(checktest.Ints(c.List("order")), checktest.Alike(3, 1), c.List("stages")...), nil)) {
		for _, forces := range after.StepForcesN {
			c.SameList("F", forces, c.Rows("F_by_step")[step])
			step++
		}
	}
}

func TestHeadByTheInfinitePlate(t *testing.T) {
	c := checktest.CaseOf(t, "P12")
	j := infinitePlateHead(t)
	for _, row := range c.Expect["stats_percent"].([]any) {
		want := row.(map[string]any)
		order := checktest.Ints(c.Wants("order_" + want["order"].(string)))
		passes := stages(order, checktest.Alike(10, 100), checktest.As[[]float64](t, want["stages"])...)
		after := checktest.Must[[]AfterPass](t)(j.Loose().Work(passes, nil))
		c.SameSpread(want["order"].(string), bounds.SpreadOf(after[len(after)-1].ForcesN), want)
	}
	spiral := checktest.Ints(c.Wants("order_spiral"))
	forces, holds, err := j.onePass(spiral, checktest.Alike(10, 1))
	if err != nil || !holds {
		t.Fatal(holds, err)
	}
	c.SameList("closed form", forces, c.Wants("F_one_pass_spiral"))
	c.Same("rate", checktest.Must[float64](t)(j.Rate(spiral)), c.Want("gs_rate_spiral"))
	c.SameList("targets", checktest.Must[[]float64](t)(j.onePassTargets(spiral, checktest.Alike(10, 1))), c.Wants("targets_one_pass_spiral"))
}

func TestCompensatedLastPass(t *testing.T) {
	c := checktest.CaseOf(t, "P13")
	j := infinitePlateHead(t)
	spiral := checktest.Ints(checktest.CaseOf(t, "P12").Wants("order_spiral"))
	nuts := j.Loose()
	checktest.Must[[]AfterPass](t)(nuts.Work(stages(spiral, checktest.Alike(10, 1), c.List("stages_before")...), nil))
	c.SameList("targets", checktest.Must[[]float64](t)(nuts.Compensated(spiral, checktest.Alike(10, 1), math.Inf(1))), c.Wants("targets_last_pass"))
	c.SameList("F", nuts.Forces(), c.Wants("F_end"))
}

func TestAngleStep(t *testing.T) {
	c := checktest.CaseOf(t, "P14")
	j := fourBolts(t)
	for _, order := range [][]int{{2, 0, 3, 1}, {0, 1, 2, 3}, {3, 2, 1, 0}} {
		nuts := j.Loose()
		after := checktest.Must[[]AfterPass](t)(nuts.Work([]Pass{
			ToForces(checktest.Ints(c.List("snug_order")), checktest.Alike(4, 1), c.In("snug_stage")),
			byTravels(order, c.In("advance_each")),
		}, nil))
		c.SameList("snug", after[0].ForcesN, c.Wants("F_snug"))
		c.SameList("end", after[1].ForcesN, c.Wants("F_end"))
	}
}

func TestRaisedFaceWithContactLoss(t *testing.T) {
	c := checktest.CaseOf(t, "P16")
	j := raisedFaceJoint(t)
	star := checktest.Ints(c.List("order_star"))
	orders := map[string][]int{"around": checktest.InTurn(16), "star": star}
	for _, row := range c.Expect["results"].([]any) {
		want := row.(map[string]any)
		passes := stages(orders[want["order"].(string)], checktest.Alike(16, 1), checktest.As[[]float64](t, want["stages"])...)
		after := checktest.Must[[]AfterPass](t)(j.Loose().Work(passes, nil))
		end := after[len(after)-1].ForcesN
		c.SameSpread(want["order"].(string), bounds.SpreadOf(bounds.Percent(end, checktest.Alike(16, 1))), want)
		c.SameList("F", end, checktest.As[[]float64](t, want["F"]))
	}
	c.Same("rate", checktest.Must[float64](t)(j.Rate(checktest.InTurn(16))), c.Want("gs_rate_around"))
	most := 0.0
	for _, v := range checktest.Must[[]float64](t)(j.onePassTargets(star, checktest.Alike(16, 1))) {
		most = math.Max(most, v)
	}
	c.Same("largest target", most, c.Want("max_one_pass_target_star"))
}

func TestClosureMeasures(t *testing.T) {
	c := checktest.CaseOf(t, "P18")
	j := infinitePlateHead(t)
	orders := checktest.CaseOf(t, "P12")
	for key, shares := range map[string][]float64{"spiral_30_70_100": {0.3, 0.7, 1}, "zigzag_100": {1}} {
		name := "order_spiral"
		if key == "zigzag_100" {
			name = "order_zigzag"
		}
		passes := stages(checktest.Ints(orders.Wants(name)), checktest.Alike(10, c.In("target_newton")), shares...)
		var warp, uneven float64
		for _, after := range checktest.Must[[]AfterPass](t)(j.Loose().Work(passes, checktest.TwoByFive())) {
			warp, uneven = math.Max(warp, after.LargestWarpMm), math.Max(uneven, after.LargestUnevenMm)
		}
		c.Same(key, warp, c.Want(key+".peak_warp_mm"))
		c.Same(key, uneven, c.Want(key+".peak_spread_mm"))
	}
}

func TestCappedCompensation(t *testing.T) {
	c := checktest.CaseOf(t, "P19")
	nuts := raisedFaceJoint(t).Loose()
	star := checktest.Ints(checktest.CaseOf(t, "P16").List("order_star"))
	for p := range int(c.In("passes")) {
		targets := checktest.Must[[]float64](t)(nuts.Compensated(star, checktest.Alike(16, c.In("F_desired")), c.In("cap")))
		c.Same("least force", bounds.SpreadOf(nuts.Forces()).Min, c.Wants("min_F_after_pass")[p])
		c.Same("largest target", bounds.SpreadOf(targets).Max, c.Wants("max_target_in_pass")[p])
	}
	c.SameList("F", nuts.Forces(), c.Wants("F_final"))
}

func TestStickingBolts(t *testing.T) {
	c := checktest.CaseOf(t, "P20")
	spiral := checktest.Ints(checktest.CaseOf(t, "P12").Wants("order_spiral"))
	for _, row := range c.Expect["results"].([]any) {
		want := row.(map[string]any)
		nuts := infinitePlateHead(t).Loose()
		nuts.Stick = checktest.As[float64](t, want["stick"])
		after := checktest.Must[[]AfterPass](t)(nuts.Work(stages(spiral, checktest.Alike(10, 100), c.List("stages")...), nil))
		c.SameSpread("stick", bounds.SpreadOf(after[1].ForcesN), want)
	}
}

// First principles: the compression of the parts is C·F, whether bolts touch,
// have no contact or are not run up.
func TestClosureOfWhatTouches(t *testing.T) {
	j := infinitePlateHead(t)
	nuts := j.Loose()
	for step, i := range []int{0, 8, 4, 9, 2, 1, 3, 3, 8} {
		do := nuts.Tighten(i, 50_000+5_000*float64(step))
		if step == 8 {
			do = nuts.Remove(i)
		}
		if do != nil {
			t.Fatal(do)
		}
		got, want := nuts.closureMm(), j.ClosureMm(nuts.force)
		for k := range want {
			if math.Abs(got[k]-want[k]) > 1e-12*largest(want) {
				t.Errorf("step %d, bolt %d: closes by %g mm, want %g", step, k, got[k], want[k])
			}
		}
	}
}
