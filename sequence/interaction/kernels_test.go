package interaction

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/tensiontest"
)

func mm(v float64) unit.Length  { return unit.Length(v) }
func mpa(v float64) unit.Stress { return unit.Stress(v) }

func TestKeiOfTheCheckCase(t *testing.T) {
	c := checkCase(t, "P01")
	for i, x := range c.list("x") {
		c.same("kei", Kei(x), c.wants("kei")[i])
	}
}

// First principles: one function, so both series must agree where they meet.
func TestKeiSeriesMeet(t *testing.T) {
	if gap := math.Abs(keiSeries(10) - keiAsymptotic(10)); gap > 1e-11 {
		t.Errorf("the series are %g apart at 10", gap)
	}
	if !math.IsNaN(Kei(-1)) || !math.IsNaN(Kei(math.NaN())) {
		t.Error("kei below 0 must not be a number")
	}
}

func TestInfinitePlate(t *testing.T) {
	c := checkCase(t, "P02")
	d := Part{mpa(c.in("E")), c.in("nu"), mm(c.in("t"))}.RigidityNmm()
	// The case prints D and l with 9 figures.
	c.same("D", d, c.want("D"))
	c.same("l", CharacteristicLengthMm(d, c.in("k")), c.want("l"))
	for i, r := range c.list("r") {
		c.same("C", InfinitePlate{d}.At(r, c.in("k")), c.wants("C")[i])
	}
}

func TestInfiniteBeam(t *testing.T) {
	c := checkCase(t, "P03")
	c.same("λ", beamLambda(c.in("EI"), c.in("k_line")), c.want("lambda"))
	for i, x := range c.list("x") {
		c.same("C", infiniteBeam{c.in("EI")}.At(x, c.in("k_line")), c.wants("C")[i])
	}
}

func TestFiniteBeam(t *testing.T) {
	c := checkCase(t, "P04")
	a := must[*mat.SymDense](t)(Beam{c.in("EI"), c.in("k_line_A"), c.in("length_A")}.Compliance([]float64{50, 0}))
	c.same("centre load", a.At(0, 0), c.want("A_center_load_C"))
	c.same("end load", a.At(1, 1), c.want("A_end_load_C"))

	b := must[*mat.SymDense](t)(Beam{c.in("EI"), c.in("k_line_B"), c.in("length_B")}.Compliance(c.list("x_B")))
	for i, row := range c.rows("B_C_matrix") {
		c.sameList("row", mat.Row(nil, i, b), row)
	}
}

// First principles: Hetényi, section 10, free ends: a load at the end of a long
// beam sinks 2Pλ/k, four times as far as in the middle.
func TestTheEndOfALongRowIsFourTimesAsSoft(t *testing.T) {
	row := Row{BendingNmm2: 4.5e7, WidthMm: 10, LengthMm: 400, StartMm: 0}
	c := must[*mat.SymDense](t)(row.Compliance([]geometry.Point{{X: 7, Y: 3}, {X: 207, Y: 3}}, 300))
	if ratio := c.At(0, 0) / c.At(1, 1); math.Abs(ratio-4) > 1e-4 {
		t.Errorf("got %.6f times, want 4", ratio)
	}
}

func TestRingWithoutOffsets(t *testing.T) {
	c := checkCase(t, "P05")
	ring := Ring{RadiusMm: c.in("R"), BendingNmm2: c.in("EI"), TorsionNmm2: c.in("GJ"), Harmonics: int(c.in("nmax"))}
	coefficients := must[[]float64](t)(ring.coefficients(c.in("k_line")))
	c.sameList("c_n", coefficients[:7], c.wants("c_n_0_to_6"))
	m := must[*mat.SymDense](t)(ring.Compliance(anglesOf(circle16(450), geometry.Point{}), c.in("k_line")))
	c.sameList("row 0", mat.Row(nil, 0, m), c.wants("C_row0"))
}

func TestRaisedFaceFlange(t *testing.T) {
	c := checkCase(t, "P06")
	f := raisedFace(t)
	one := f
	one.Pair = false
	ring, line, err := one.Ring(c.in("k"))
	if err != nil {
		t.Fatal(err)
	}
	for what, got := range map[string]float64{
		"R": ring.RadiusMm, "EI_one": ring.BendingNmm2, "GJ_one": ring.TorsionNmm2, "kphi_one": ring.TwistN,
		"k_line": line, "e_b": ring.BoltOffsetMm, "e_g": ring.GasketOffsetMm,
	} {
		c.same(what, got, c.want(what))
	}
	m := must[*mat.SymDense](t)(f.Compliance(circle16(450), c.in("k")))
	c.sameList("row 0", mat.Row(nil, 0, m), c.wants("C_row0"))
}

func TestStiffnessHelpers(t *testing.T) {
	c := checkCase(t, "P15")
	bolt := boltResilience(mpa(c.in("bolt.E")), mm(c.in("bolt.d")), c.in("bolt.As"), mm(c.in("bolt.l_shank")), mm(c.in("bolt.l_thread")))
	c.same("kb", float64(bolt.Stiffness()), c.want("kb"))
	aluminium := must[strength.Material](t)(strength.ParseMaterial("wrought aluminium"))
	if float64(aluminium.Elastic) != c.in("member.E") {
		t.Fatalf("the case is for E = %g", c.in("member.E"))
	}
	members := stiffness.Stiffness(tensiontest.Exponential("aluminium", float64(aluminium.Elastic), c.in("member.d"), c.in("member.L")))
	c.same("km", float64(members), c.want("km"))
	c.same("cb", float64(bolt+members.Resilience()), c.want("cb"))
	plate := Part{mpa(c.in("plate.E")), c.in("plate.nu"), mm(c.in("plate.t"))}
	block := BlockMPaPerMm(plate.RigidityNmm(), Part{Elastic: mpa(c.in("block.E0")), Poisson: c.in("block.nu0")})
	c.same("block", block, c.want("k_halfspace"))
	c.same("in series", InSeries(c.in("k_gasket"), block), c.want("k_series_with_gasket"))
	c.same("facing", Facing(c.in("D1"), c.in("D2")), c.want("D_eff_two_flexible_parts"))
}

func pointsOf(rows [][]float64) (at []geometry.Point) {
	for _, r := range rows {
		at = append(at, geometry.Point{X: r[0], Y: r[1]})
	}
	return at
}

func TestFinitePlate(t *testing.T) {
	c := checkCase(t, "P17")
	size := c.list("size")
	box := geometry.Box{Max: geometry.Point{X: size[0], Y: size[1]}}

	rigid := Plate{RigidityNmm: c.in("rigid.D"), Poisson: c.in("rigid.nu"), Box: box}
	m := must[*mat.SymDense](t)(rigid.Compliance(pointsOf(table(t, find(t, c.Inputs, "rigid.points"))), c.in("rigid.k")))
	for i, want := range c.wants("rigid_C_times_kA_row0") {
		c.same("rigid", m.At(0, i)*c.in("rigid.k")*size[0]*size[1], want)
	}

	d := Part{mpa(c.in("flexible.E")), c.in("flexible.nu"), mm(c.in("flexible.t"))}.RigidityNmm()
	flexible := Plate{RigidityNmm: d, Poisson: c.in("flexible.nu"), Box: box, MeshMm: 10}
	m = must[*mat.SymDense](t)(flexible.Compliance(pointsOf(table(t, find(t, c.Inputs, "flexible.points"))), c.in("flexible.k")))
	c.sameList("flexible row 0", mat.Row(nil, 0, m), c.wants("flexible_C_row0"))
	c.sameList("flexible row 1", mat.Row(nil, 1, m), c.wants("flexible_C_row1"))

	masked := flexible
	masked.Gasket = func(p geometry.Point) bool { return !(p.X > 20 && p.X < 180 && p.Y > 20 && p.Y < 80) }
	m = must[*mat.SymDense](t)(masked.Compliance(pointsOf(table(t, find(t, c.Inputs, "masked.points"))), c.in("flexible.k")))
	c.sameList("masked row 0", mat.Row(nil, 0, m), c.wants("masked_C_row0"))
	c.sameList("masked row 1", mat.Row(nil, 1, m), c.wants("masked_C_row1"))

	// The mesh that is chosen where none is stated must meet the converged rows.
	flexible.MeshMm = 0
	m = must[*mat.SymDense](t)(flexible.Compliance(pointsOf(table(t, find(t, c.Inputs, "flexible.points"))), c.in("flexible.k")))
	loose := c
	loose.RelTol, loose.AbsTol = c.OtherTol, c.OtherTol*m.At(0, 0)
	loose.sameList("converged", mat.Row(nil, 0, m), c.wants("converged_flexible_C_row0"))
}

func headPlate(t *testing.T) (Plate, check) {
	c := checkCase(t, "P21")
	o := c.list("outline")
	var bores []geometry.Bore
	for i := range 4 {
		bores = append(bores, geometry.Bore{Centre: geometry.Point{X: 47.5 + 95*float64(i), Y: 45}, Diameter: 80})
	}
	return Plate{
		RigidityNmm: Part{mpa(c.in("E")), c.in("nu"), mm(c.in("t"))}.RigidityNmm(), Poisson: c.in("nu"),
		Box:    geometry.Box{Min: geometry.Point{X: o[0], Y: o[2]}, Max: geometry.Point{X: o[1], Y: o[3]}},
		Gasket: Region(nil).Without(Bores(bores)),
	}, c
}

func TestHeadWithBoresCutOut(t *testing.T) {
	plate, c := headPlate(t)
	order := ints(checkCase(t, "P12").wants("order_spiral"))
	for _, mesh := range []float64{0, 10, 5} { // the case: mesh-converged values differ by less than 1 %
		plate.MeshMm = mesh
		m := must[*mat.SymDense](t)(plate.Compliance(twoByFive(), c.in("k")))
		c.same("C 0 0", m.At(0, 0), c.want("C_0_0"))
		c.same("C 4 4", m.At(4, 4), c.want("C_4_4"))
		c.same("C 4 5", m.At(4, 5), c.want("C_4_5"))
		c.same("C 4 6", m.At(4, 6), c.want("C_4_6"))
		j := must[*Joint](t)(NewJoint(m, ownAlike(10, c.in("cb"))))
		targets := alike(10, 100)
		for key, shares := range map[string][]float64{"spiral_one_pass": {1}, "spiral_30_70_100": {0.3, 0.7, 1}} {
			after := must[[]AfterPass](t)(j.Loose().Work(stages(order, targets, shares...), nil))
			c.sameSpread(key, SpreadOf(after[len(after)-1].ForcesN), find(t, c.Expect, key).(map[string]any))
		}
	}
}

// First principles: a plate on a large foundation is the infinite plate.
func TestAFineLargePlateIsTheInfiniteOne(t *testing.T) {
	const k = 105.4
	d := Part{70000, 0.33, 60}.RigidityNmm()
	plate := Plate{RigidityNmm: d, Poisson: 0.33, Box: geometry.Box{Max: geometry.Point{X: 880, Y: 880}}, MeshMm: 20}
	m := must[*mat.SymDense](t)(plate.Compliance([]geometry.Point{{X: 440, Y: 440}, {X: 540, Y: 440}}, k))
	if got, want := m.At(0, 0), (InfinitePlate{d}).At(0, k); math.Abs(got/want-1) > 2e-3 { // h = l/3, measured 1.5e-3
		t.Errorf("under the load: got %g, want %g", got, want)
	}
	if got, want := m.At(0, 1), (InfinitePlate{d}).At(100, k); math.Abs(got/want-1) > 1e-3 {
		t.Errorf("beside it: got %g, want %g", got, want)
	}
}

// First principles: a narrow plate is a beam, but for its anticlastic bending.
func TestANarrowPlateIsABeam(t *testing.T) {
	const width, length, k = 6.0, 200.0, 20.0
	part := Part{70000, 0, 8}
	plate := Plate{RigidityNmm: part.RigidityNmm(), Box: geometry.Box{Max: geometry.Point{X: length, Y: width}}}
	m := must[*mat.SymDense](t)(plate.Compliance([]geometry.Point{{X: 30, Y: width / 2}, {X: 90, Y: width / 2}}, k))
	b := must[*mat.SymDense](t)(Beam{part.BendingNmm2(width), k * width, length}.Compliance([]float64{30, 90}))
	for i := range 2 {
		if got, want := m.At(0, i), b.At(0, i); math.Abs(got-want) > 4e-3*b.At(0, 0) {
			t.Errorf("C 0 %d: got %g, want %g", i, got, want)
		}
	}
}
