package procedure

import (
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/checktest"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/tension/stiffness"
)

// jointOf returns a joint with the given matrix M.
func jointOf(t *testing.T, m [][]float64) *contact.Joint {
	t.Helper()
	c := mat.NewSymDense(len(m), nil)
	for i := range m {
		for k := i; k < len(m); k++ {
			c.SetSym(i, k, m[i][k])
		}
	}
	return checktest.Must[*contact.Joint](t)(contact.NewJoint(c, make([]stiffness.Resilience, len(m))))
}

func passesOf(order []int, targets []float64, shares ...float64) []contact.Pass {
	var passes []contact.Pass
	for _, share := range shares {
		passes = append(passes, contact.ToForces(order, targets, share))
	}
	return passes
}

func ownAlike(n int, mmPerN float64) []stiffness.Resilience {
	own := make([]stiffness.Resilience, n)
	for i := range own {
		own[i] = stiffness.Resilience(mmPerN)
	}
	return own
}

func infinitePlateHead(t *testing.T) *contact.Joint {
	t.Helper()
	c := checktest.CaseOf(t, "P12")
	d := checktest.CaseOf(t, "P02")
	plate := compliance.InfinitePlate{RigidityNmm: compliance.Part{Elastic: unit.Stress(d.In("E")), Poisson: d.In("nu"), Thickness: unit.Length(d.In("t"))}.RigidityNmm()}
	return checktest.Must[*contact.Joint](t)(contact.NewJoint(checktest.Must[*mat.SymDense](t)(plate.Compliance(checktest.TwoByFive(), c.In("k"))), ownAlike(10, c.In("cb"))))
}

// byTravels is a pass that turns each nut of the order by a travel.
func byTravels(order []int, travelMm float64) contact.Pass {
	pass := make(contact.Pass, len(order))
	for s, i := range order {
		pass[s] = contact.Action{Fastener: i, Do: contact.ByTravel, TravelMm: travelMm}
	}
	return pass
}

// inStages is one pass over all for each share of the targets.
func inStages(targets []float64, shares ...float64) ByOrder {
	return func(order []int) []contact.Pass {
		passes := make([]contact.Pass, len(shares))
		for k, share := range shares {
			passes[k] = contact.ToForces(order, targets, share)
		}
		return passes
	}
}

func ring16(t testing.TB) *contact.Joint {
	t.Helper()
	f := compliance.Flange{Part: compliance.Part{Elastic: 206000, Poisson: 0.3, Thickness: 42}, Outer: 515, Bore: 330, BoltCircle: 450, Pair: true}
	c, err := f.Compliance(checktest.Circle16(450), 150)
	if err != nil {
		t.Fatal(err)
	}
	j, err := contact.NewJoint(c, ownAlike(16, 1.03e-6))
	if err != nil {
		t.Fatal(err)
	}
	return j
}
