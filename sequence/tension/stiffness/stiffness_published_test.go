package stiffness

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/tensiontest"
)

var thirty = math.Tan(math.Pi / 6)

func metal(elastic float64, k strength.Family) strength.Material {
	return strength.Material{Elastic: unit.Stress(elastic), Family: k}
}

// The book prints 3 or 4 figures.
func TestMembersOfShigleyExample8_2(t *testing.T) {
	const example = "Shigley 8-2"
	steel, iron := metal(30*tensiontest.MillionPsi, strength.Steel), metal(14.5*tensiontest.MillionPsi, strength.GreyIron)
	tensiontest.Near(t, "steel frustum", float64(FrustumResilience(0.595*in, 0.75*in, 0.5*in, thirty, steel.Elastic).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "frustum steel"), 0.002)
	tensiontest.Near(t, "thin cast iron", float64(FrustumResilience(0.0775*in, 1.437*in, 0.5*in, thirty, iron.Elastic).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "cast iron thin"), 0.0005)
	tensiontest.Near(t, "cast iron", float64(FrustumResilience(0.6725*in, 0.75*in, 0.5*in, thirty, iron.Elastic).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "cast iron"), 0.0005)

	half := tensiontest.Thread(t, "1/2-20")
	stepped := completedGrip{layers: []layer{{0.095 * in, steel}, {0.5 * in, steel}, {0.75 * in, iron}}, reach: unit.Length(math.Inf(1))}
	tensiontest.Near(t, "members", float64(stepped.shigleyMembers(half).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members"), 0.0005)
	steelOnly := completedGrip{layers: []layer{{1.345 * in, steel}}, reach: unit.Length(math.Inf(1))}
	tensiontest.Near(t, "all steel", float64(steelOnly.shigleyMembers(half).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members all steel"), 0.0005)
	tensiontest.Near(t, "all steel, closed", float64(FrustaStiffness(steel.Elastic, 0.5*in, 1.345*in))/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members all steel"), 0.0005)
	tensiontest.Near(t, "all steel, exponential", float64(Exponential(steel, 0.5*in, 1.345*in))/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members all steel exponential"), 0.0005)

	// Printed 3.69; the shank is 1.5 − 1.25 = 0.25 in, the thread 1.095 in.
	area := math.Pi / 4 * 0.25 * in * in
	tensiontest.Near(t, "bolt", float64(ShankAndThreadStiffness(area, 0.1599*in*in, 0.25*in, 1.095*in, steel.Elastic))/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "bolt"), 0.002)
}

// Printed to 2 decimals, the share to 3.
func TestStiffnessOfShigleyTable8_12(t *testing.T) {
	for example, grip := range map[string]unit.Length{"Shigley 8-12 grip 2 in": 2 * in, "Shigley 8-12 grip 4 in": 4 * in} {
		j, err := Of(screw.Bolt{Thread: tensiontest.Thread(t, "1/2-13"), Class: "grade 5", Lubricant: "oil"}, Grip{
			Layers: []Layer{{grip, "30000 ksi"}}, BoltLength: grip + 0.5*in, BoltGPa: 30 * tensiontest.MillionPsi / 1000, Method: ThirtyDegrees,
		})
		if err != nil {
			t.Fatal(err)
		}
		tensiontest.Near(t, example+" bolt", float64(j.Bolt)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "bolt"), 0.005/1.37)
		tensiontest.Near(t, example+" members", float64(j.Members)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members"), 0.0005)
		tensiontest.Near(t, example+" share", j.LoadShare, tensiontest.Worked(t, example, "load share"), 0.0005/0.114)
	}
}

// Printed to 4 figures; the book takes areas of 113 and 84.3 mm².
func TestStiffnessOfSolutionManual8_22(t *testing.T) {
	const example = "manual 8-22"
	tensiontest.Near(t, "bolt by areas", float64(ShankAndThreadStiffness(113, 84.3, 30, 15, 207e3))/1000, tensiontest.Worked(t, example, "bolt"), 0.0005)
	tensiontest.Near(t, "steel", float64(FrustumResilience(20, 18, 12, thirty, 207e3).Stiffness())/1000, tensiontest.Worked(t, example, "frustum steel"), 0.0005)
	tensiontest.Near(t, "thin cast iron", float64(FrustumResilience(2.5, 41.09, 12, thirty, 100e3).Stiffness())/1000, tensiontest.Worked(t, example, "cast iron thin"), 0.0005)
	tensiontest.Near(t, "cast iron", float64(FrustumResilience(22.5, 18, 12, thirty, 100e3).Stiffness())/1000, tensiontest.Worked(t, example, "cast iron"), 0.0005)
	j, err := Of(screw.Bolt{Thread: tensiontest.Thread(t, "M12"), Class: "8.8", Lubricant: "oil"}, Grip{
		Layers: []Layer{{20, "207 GPa"}, {25, "100 GPa"}}, BoltLength: 60, BoltGPa: 207, Method: ThirtyDegrees,
	})
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "members", float64(j.Members)/1000, tensiontest.Worked(t, example, "members"), 0.0005)
	tensiontest.Near(t, "bolt", float64(j.Bolt)/1000, tensiontest.Worked(t, example, "bolt"), 0.001) // 113.1 mm² where the book has 113
	tensiontest.Near(t, "share", j.LoadShare, tensiontest.Worked(t, example, "load share"), 0.0005/0.253)
}

// Printed to 4 figures.
func TestExponentialOfSolutionManual8_20(t *testing.T) {
	const example = "manual 8-20"
	steel, iron := metal(207e3, strength.Steel), metal(100e3, strength.GreyIron)
	tensiontest.Near(t, "steel", float64(Exponential(steel, 12, 40))/1000, tensiontest.Worked(t, example, "all steel"), 0.0003)
	tensiontest.Near(t, "cast iron", float64(Exponential(iron, 12, 40))/1000, tensiontest.Worked(t, example, "all cast iron"), 0.0003)
	tensiontest.Near(t, "half and half", float64(exponentialOfLayers([]layer{{20, steel}, {20, iron}}, 12))/1000, tensiontest.Worked(t, example, "half and half"), 0.0004)
}

// Printed to 4 figures.
func TestBoltOfSolutionManual8_24(t *testing.T) {
	const example = "manual 8-24"
	diameter := func(areaIn2 float64) unit.Length { return unit.Length(math.Sqrt(areaIn2*4/math.Pi) * in) }
	shank := RodResilience(0.5*in, diameter(0.1963), 30*tensiontest.MillionPsi)
	threaded := RodResilience(0.72*in, diameter(0.1419), 30*tensiontest.MillionPsi)
	tensiontest.Near(t, "shank", float64(shank.Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "shank"), 0.0001)
	tensiontest.Near(t, "thread", float64(threaded.Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "thread"), 0.0001)
	tensiontest.Near(t, "bolt", float64((shank+threaded).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "bolt"), 0.0002)
}

// The share is printed to 2 decimals.
func TestLoadShareOfShigleyExample8_3(t *testing.T) {
	tensiontest.Near(t, "share", LoadShare(6.5*tensiontest.MillionLbfPerIn, 13.8*tensiontest.MillionLbfPerIn), tensiontest.Worked(t, "Shigley 8-3", "load share"), 0.005/0.32)
}
