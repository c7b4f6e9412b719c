package contact

import (
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/checktest"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/tension/stiffness"
)

// Circle is the region inside a circle.
func Circle(centre geometry.Point, diameter float64) compliance.Region {
	return func(p geometry.Point) bool { return p.Distance(centre) < diameter/2 }
}

// jointOf returns a joint with the given matrix M.
func jointOf(t *testing.T, m [][]float64) *Joint {
	t.Helper()
	c := mat.NewSymDense(len(m), nil)
	for i := range m {
		for k := i; k < len(m); k++ {
			c.SetSym(i, k, m[i][k])
		}
	}
	return checktest.Must[*Joint](t)(NewJoint(c, make([]stiffness.Resilience, len(m))))
}

func stages(order []int, targets []float64, shares ...float64) []Pass {
	var passes []Pass
	for _, share := range shares {
		passes = append(passes, ToForces(order, targets, share))
	}
	return passes
}

func fourBolts(t *testing.T) *Joint {
	return jointOf(t, checktest.As[[][]float64](t, checktest.CaseOf(t, "P08").Inputs["M"]))
}

func ownAlike(n int, mmPerN float64) []stiffness.Resilience {
	own := make([]stiffness.Resilience, n)
	for i := range own {
		own[i] = stiffness.Resilience(mmPerN)
	}
	return own
}

func infinitePlateHead(t *testing.T) *Joint {
	t.Helper()
	c := checktest.CaseOf(t, "P12")
	d := checktest.CaseOf(t, "P02")
	plate := compliance.InfinitePlate{RigidityNmm: compliance.Part{Elastic: unit.Stress(d.In("E")), Poisson: d.In("nu"), Thickness: unit.Length(d.In("t"))}.RigidityNmm()}
	return checktest.Must[*Joint](t)(NewJoint(checktest.Must[*mat.SymDense](t)(plate.Compliance(checktest.TwoByFive(), c.In("k"))), ownAlike(10, c.In("cb"))))
}

func raisedFace(t *testing.T) compliance.Flange {
	c := checktest.CaseOf(t, "P06")
	return compliance.Flange{
		Part:  compliance.Part{Elastic: unit.Stress(c.In("E")), Poisson: c.In("nu"), Thickness: unit.Length(c.In("t"))},
		Outer: unit.Length(c.In("OD")), Bore: unit.Length(c.In("bore")), BoltCircle: unit.Length(c.In("bolt_circle")),
		GasketInner: unit.Length(c.In("gasket_id")), GasketOuter: unit.Length(c.In("gasket_od")),
		PipeWall: unit.Length(c.In("pipe_t")), PipeRadius: unit.Length(c.In("pipe_r")), Pair: true,
	}
}

func raisedFaceJoint(t *testing.T) *Joint {
	t.Helper()
	c := checktest.Must[*mat.SymDense](t)(raisedFace(t).Compliance(checktest.Circle16(450), checktest.CaseOf(t, "P06").In("k")))
	return checktest.Must[*Joint](t)(NewJoint(c, ownAlike(16, checktest.CaseOf(t, "P16").In("cb"))))
}

// byTravels is a pass that turns each nut of the order by a travel.
func byTravels(order []int, travelMm float64) Pass {
	pass := make(Pass, len(order))
	for s, i := range order {
		pass[s] = Action{Fastener: i, Do: ByTravel, TravelMm: travelMm}
	}
	return pass
}

func headPlate(t *testing.T) (compliance.Plate, checktest.Case) {
	c := checktest.CaseOf(t, "P21")
	o := c.List("outline")
	var bores []geometry.Bore
	for i := range 4 {
		bores = append(bores, geometry.Bore{Centre: geometry.Point{X: 47.5 + 95*float64(i), Y: 45}, Diameter: 80})
	}
	return compliance.Plate{
		RigidityNmm: compliance.Part{Elastic: unit.Stress(c.In("E")), Poisson: c.In("nu"), Thickness: unit.Length(c.In("t"))}.RigidityNmm(), Poisson: c.In("nu"),
		Box:    geometry.Box{Min: geometry.Point{X: o[0], Y: o[2]}, Max: geometry.Point{X: o[1], Y: o[3]}},
		Gasket: compliance.Region(nil).Without(compliance.Bores(bores)),
	}, c
}

// annulus is the flange pair of ring16 as finite elements.
func annulus() compliance.Plate {
	o := geometry.Point{}
	return compliance.Plate{
		RigidityNmm: compliance.Facing(compliance.Part{Elastic: 206000, Poisson: 0.3, Thickness: 42}.RigidityNmm(), compliance.Part{Elastic: 206000, Poisson: 0.3, Thickness: 42}.RigidityNmm()), Poisson: 0.3,
		Box:    geometry.Box{Min: geometry.Point{X: -257.5, Y: -257.5}, Max: geometry.Point{X: 257.5, Y: 257.5}},
		Part:   Circle(o, 515).Without(Circle(o, 330)),
		MeshMm: 10,
	}
}
