package interaction

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func TestTwoBolts(t *testing.T) {
	c := checkCase(t, "P07")
	j := jointOf(t, table(t, c.Inputs["M"]))
	order, targets := ints(c.list("order")), alike(2, 1)
	for i, after := range must[[]AfterPass](t)(j.Loose().Work(stages(order, targets, 1, 1, 1, 1), nil)) {
		c.sameList("F", after.ForcesN, c.rows("F_after_pass")[i])
	}
	c.same("rate", must[float64](t)(j.Rate(order)), c.want("gs_rate"))
	c.sameList("targets", must[[]float64](t)(j.onePassTargets(order, targets)), c.wants("one_pass_targets_for_uniform"))
}

func TestOnePassOfFourBolts(t *testing.T) {
	c := checkCase(t, "P08")
	j := fourBolts(t)
	order, targets := ints(c.list("order")), alike(4, 1)
	f := j.factorIn(order)
	c.sameList("d", f.d, c.wants("d"))
	for i, want := range c.rows("L_unit_lower_in_order") {
		c.sameList("L", f.row(i), want[:i])
	}
	a := must[*mat.TriDense](t)(j.Interaction(order))
	for i, want := range c.rows("interaction_matrix_in_order") {
		c.sameList("interaction", mat.Row(nil, i, a), want)
	}
	forces, holds, err := j.onePass(order, targets)
	if err != nil || !holds {
		t.Fatal(holds, err)
	}
	c.sameList("closed form", forces, c.wants("F_one_pass"))
	c.sameList("step by step", must[[]AfterPass](t)(j.Loose().Work(stages(order, targets, 1), nil))[0].ForcesN, c.wants("F_one_pass"))
	c.sameList("targets", must[[]float64](t)(j.onePassTargets(order, targets)), c.wants("targets_for_uniform_one_pass"))
}

func TestStagedPasses(t *testing.T) {
	c := checkCase(t, "P09")
	j := fourBolts(t)
	order, targets := ints(c.list("order")), alike(4, 1)
	nuts := j.Loose()
	for i, after := range must[[]AfterPass](t)(nuts.Work(stages(order, targets, c.list("stages")...), nil)) {
		c.sameList("F", after.ForcesN, c.rows("F_after_each_pass")[i])
	}
	c.sameList("u", nuts.travelsMm(), c.wants("u_after_last_pass"))
	c.same("rate", must[float64](t)(j.Rate(order)), c.want("gs_rate"))
	c.same("work", nuts.workNmm(), c.want("wrench_work"))
	c.same("energy", j.energyNmm(nuts.Forces()), c.want("wrench_work"))
}

func TestContactLoss(t *testing.T) {
	c := checkCase(t, "P10")
	m := square(4) // stated in words in the case
	for i := range m {
		for k := range m {
			m[i][k] = 5
		}
		m[i][i] = 6
	}
	j := jointOf(t, m)
	order := ints(c.list("order"))
	nuts := j.Loose()
	step := 0
	for _, after := range must[[]AfterPass](t)(nuts.Work(stages(order, alike(4, 1), c.list("stages")...), nil)) {
		for _, forces := range after.StepForcesN {
			c.sameList("F", forces, c.rows("F_by_step")[step])
			step++
		}
	}
	c.sameList("u", nuts.travelsMm(), c.wants("u_final"))
	if _, holds, err := j.onePass(order, alike(4, 1)); holds || err != nil {
		t.Error("the closed form must say that it does not hold where bolts go slack", err)
	}
}

func TestGainAndClick(t *testing.T) {
	c := checkCase(t, "P11")
	beam := infiniteBeam{c.in("EI")}
	x := c.list("x")
	compliance := mat.NewSymDense(3, nil)
	for i := range 3 {
		for k := i; k < 3; k++ {
			compliance.SetSym(i, k, beam.At(x[k]-x[i], c.in("k_line")))
		}
	}
	c.same("C01", compliance.At(0, 1), c.want("C_offdiag_01"))
	j := must[*Joint](t)(NewJoint(compliance, ownAlike(3, c.in("cb"))))
	step := 0
	for _, after := range must[[]AfterPass](t)(j.Loose().Work(stages(ints(c.list("order")), alike(3, 1), c.list("stages")...), nil)) {
		for _, forces := range after.StepForcesN {
			c.sameList("F", forces, c.rows("F_by_step")[step])
			step++
		}
	}
}

func TestHeadByTheInfinitePlate(t *testing.T) {
	c := checkCase(t, "P12")
	j := infinitePlateHead(t)
	for _, row := range c.Expect["stats_percent"].([]any) {
		want := row.(map[string]any)
		order := ints(c.wants("order_" + want["order"].(string)))
		passes := stages(order, alike(10, 100), numbers(t, want["stages"])...)
		after := must[[]AfterPass](t)(j.Loose().Work(passes, nil))
		c.sameSpread(want["order"].(string), SpreadOf(after[len(after)-1].ForcesN), want)
	}
	spiral := ints(c.wants("order_spiral"))
	forces, holds, err := j.onePass(spiral, alike(10, 1))
	if err != nil || !holds {
		t.Fatal(holds, err)
	}
	c.sameList("closed form", forces, c.wants("F_one_pass_spiral"))
	c.same("rate", must[float64](t)(j.Rate(spiral)), c.want("gs_rate_spiral"))
	c.sameList("targets", must[[]float64](t)(j.onePassTargets(spiral, alike(10, 1))), c.wants("targets_one_pass_spiral"))
}

func TestCompensatedLastPass(t *testing.T) {
	c := checkCase(t, "P13")
	j := infinitePlateHead(t)
	spiral := ints(checkCase(t, "P12").wants("order_spiral"))
	nuts := j.Loose()
	must[[]AfterPass](t)(nuts.Work(stages(spiral, alike(10, 1), c.list("stages_before")...), nil))
	c.sameList("targets", must[[]float64](t)(nuts.Compensated(spiral, alike(10, 1), math.Inf(1))), c.wants("targets_last_pass"))
	c.sameList("F", nuts.Forces(), c.wants("F_end"))
}

func TestAngleStep(t *testing.T) {
	c := checkCase(t, "P14")
	j := fourBolts(t)
	for _, order := range [][]int{{2, 0, 3, 1}, {0, 1, 2, 3}, {3, 2, 1, 0}} {
		nuts := j.Loose()
		after := must[[]AfterPass](t)(nuts.Work([]Pass{
			ToForces(ints(c.list("snug_order")), alike(4, 1), c.in("snug_stage")),
			byTravels(order, c.in("advance_each")),
		}, nil))
		c.sameList("snug", after[0].ForcesN, c.wants("F_snug"))
		c.sameList("end", after[1].ForcesN, c.wants("F_end"))
	}
}

func TestRaisedFaceWithContactLoss(t *testing.T) {
	c := checkCase(t, "P16")
	j := raisedFaceJoint(t)
	star := ints(c.list("order_star"))
	orders := map[string][]int{"around": identity(16), "star": star}
	for _, row := range c.Expect["results"].([]any) {
		want := row.(map[string]any)
		passes := stages(orders[want["order"].(string)], alike(16, 1), numbers(t, want["stages"])...)
		after := must[[]AfterPass](t)(j.Loose().Work(passes, nil))
		end := after[len(after)-1].ForcesN
		c.sameSpread(want["order"].(string), SpreadOf(Percent(end, alike(16, 1))), want)
		c.sameList("F", end, numbers(t, want["F"]))
	}
	c.same("rate", must[float64](t)(j.Rate(identity(16))), c.want("gs_rate_around"))
	most := 0.0
	for _, v := range must[[]float64](t)(j.onePassTargets(star, alike(16, 1))) {
		most = math.Max(most, v)
	}
	c.same("largest target", most, c.want("max_one_pass_target_star"))
}

func TestClosureMeasures(t *testing.T) {
	c := checkCase(t, "P18")
	j := infinitePlateHead(t)
	orders := checkCase(t, "P12")
	for key, shares := range map[string][]float64{"spiral_30_70_100": {0.3, 0.7, 1}, "zigzag_100": {1}} {
		name := "order_spiral"
		if key == "zigzag_100" {
			name = "order_zigzag"
		}
		passes := stages(ints(orders.wants(name)), alike(10, c.in("target_newton")), shares...)
		var warp, uneven float64
		for _, after := range must[[]AfterPass](t)(j.Loose().Work(passes, twoByFive())) {
			warp, uneven = math.Max(warp, after.LargestWarpMm), math.Max(uneven, after.LargestUnevenMm)
		}
		c.same(key, warp, c.want(key+".peak_warp_mm"))
		c.same(key, uneven, c.want(key+".peak_spread_mm"))
	}
}

func TestCappedCompensation(t *testing.T) {
	c := checkCase(t, "P19")
	nuts := raisedFaceJoint(t).Loose()
	star := ints(checkCase(t, "P16").list("order_star"))
	for p := range int(c.in("passes")) {
		targets := must[[]float64](t)(nuts.Compensated(star, alike(16, c.in("F_desired")), c.in("cap")))
		c.same("least force", SpreadOf(nuts.Forces()).Min, c.wants("min_F_after_pass")[p])
		c.same("largest target", SpreadOf(targets).Max, c.wants("max_target_in_pass")[p])
	}
	c.sameList("F", nuts.Forces(), c.wants("F_final"))
}

func TestStickingBolts(t *testing.T) {
	c := checkCase(t, "P20")
	spiral := ints(checkCase(t, "P12").wants("order_spiral"))
	for _, row := range c.Expect["results"].([]any) {
		want := row.(map[string]any)
		nuts := infinitePlateHead(t).Loose()
		nuts.Stick = number(t, want["stick"])
		after := must[[]AfterPass](t)(nuts.Work(stages(spiral, alike(10, 100), c.list("stages")...), nil))
		c.sameSpread("stick", SpreadOf(after[1].ForcesN), want)
	}
}
