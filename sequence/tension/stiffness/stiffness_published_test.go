package stiffness

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/tensiontest"
)

var thirty = math.Tan(math.Pi / 6)

func metal(elastic float64) strength.Material {
	return strength.Material{Elastic: unit.Stress(elastic)}
}

// The book prints 3 or 4 figures.
func TestMembersOfShigleyExample8_2(t *testing.T) {
	const example = "Shigley 8-2"
	steel, iron := metal(30*tensiontest.MillionPsi), metal(14.5*tensiontest.MillionPsi)
	tensiontest.Near(t, "steel frustum", float64(FrustumResilience(0.595*in, 0.75*in, 0.5*in, thirty, steel.Elastic).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "frustum steel"), 0.002)
	tensiontest.Near(t, "thin cast iron", float64(FrustumResilience(0.0775*in, 1.437*in, 0.5*in, thirty, iron.Elastic).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "cast iron thin"), 0.0005)
	tensiontest.Near(t, "cast iron", float64(FrustumResilience(0.6725*in, 0.75*in, 0.5*in, thirty, iron.Elastic).Stiffness())/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "cast iron"), 0.0005)

	stepped := shigleyMembers(0.5*in, layer{0.095 * in, steel}, layer{0.5 * in, steel}, layer{0.75 * in, iron})
	tensiontest.Near(t, "members", float64(stepped)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members"), 0.0005)
	all := shigleyMembers(0.5*in, layer{1.345 * in, steel})
	tensiontest.Near(t, "all steel", float64(all)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members all steel"), 0.0005)
	tensiontest.Near(t, "all steel, closed", tensiontest.Frusta(float64(steel.Elastic), 0.5*in, 1.345*in)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members all steel"), 0.0005)
	tensiontest.Near(t, "all steel, exponential", tensiontest.Exponential("steel", float64(steel.Elastic), 0.5*in, 1.345*in)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members all steel exponential"), 0.0005)

	// Printed 3.69; the shank is 1.5 − 1.25 = 0.25 in, the thread 1.095 in.
	area := math.Pi / 4 * 0.25 * in * in
	tensiontest.Near(t, "bolt", tensiontest.ShankAndThread(area, 0.1599*in*in, 0.25*in, 1.095*in, float64(steel.Elastic))/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "bolt"), 0.002)
}

// Printed to 2 decimals, the share to 3. The bolt is the grip and half an inch
// long, with 1.25 in of thread.
func TestStiffnessOfShigleyTable8_12(t *testing.T) {
	half := tensiontest.Thread(t, "1/2-13")
	steel := metal(30 * tensiontest.MillionPsi)
	for example, grip := range map[string]unit.Length{"Shigley 8-12 grip 2 in": 2 * in, "Shigley 8-12 grip 4 in": 4 * in} {
		plain := grip + 0.5*in - 1.25*in
		bolt := (RodResilience(plain, 0.5*in, steel.Elastic) + RodResilience(grip-plain, unit.Length(half.StressDiameterMm()), steel.Elastic)).Stiffness()
		members := shigleyMembers(0.5*in, layer{grip, steel})
		tensiontest.Near(t, example+" bolt", float64(bolt)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "bolt"), 0.005/1.37)
		tensiontest.Near(t, example+" members", float64(members)/tensiontest.MillionLbfPerIn, tensiontest.Worked(t, example, "members"), 0.0005)
		tensiontest.Near(t, example+" share", LoadShare(bolt, members), tensiontest.Worked(t, example, "load share"), 0.0005/0.114)
	}
}

// Printed to 4 figures; the book uses areas of 113 and 84.3 mm².
func TestStiffnessOfSolutionManual8_22(t *testing.T) {
	const example = "manual 8-22"
	tensiontest.Near(t, "bolt by areas", tensiontest.ShankAndThread(113, 84.3, 30, 15, 207e3)/1000, tensiontest.Worked(t, example, "bolt"), 0.0005)
	tensiontest.Near(t, "steel", float64(FrustumResilience(20, 18, 12, thirty, 207e3).Stiffness())/1000, tensiontest.Worked(t, example, "frustum steel"), 0.0005)
	tensiontest.Near(t, "thin cast iron", float64(FrustumResilience(2.5, 41.09, 12, thirty, 100e3).Stiffness())/1000, tensiontest.Worked(t, example, "cast iron thin"), 0.0005)
	tensiontest.Near(t, "cast iron", float64(FrustumResilience(22.5, 18, 12, thirty, 100e3).Stiffness())/1000, tensiontest.Worked(t, example, "cast iron"), 0.0005)
	members := shigleyMembers(12, layer{20, metal(207e3)}, layer{25, metal(100e3)})
	tensiontest.Near(t, "members", float64(members)/1000, tensiontest.Worked(t, example, "members"), 0.0005)
	bolt := Stiffness(tensiontest.ShankAndThread(113, 84.3, 30, 15, 207e3))
	tensiontest.Near(t, "share", LoadShare(bolt, members), tensiontest.Worked(t, example, "load share"), 0.0005/0.253)
}

// Printed to 4 figures.
func TestExponentialOfSolutionManual8_20(t *testing.T) {
	const example = "manual 8-20"
	tensiontest.Near(t, "steel", tensiontest.Exponential("steel", 207e3, 12, 40)/1000, tensiontest.Worked(t, example, "all steel"), 0.0003)
	tensiontest.Near(t, "cast iron", tensiontest.Exponential("grey cast iron", 100e3, 12, 40)/1000, tensiontest.Worked(t, example, "all cast iron"), 0.0003)
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
