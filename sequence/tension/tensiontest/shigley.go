package tensiontest

import "math"

// The formulas in this file are from Shigley, Mechanical Engineering Design,
// 9th edition (2011). Tests compare the calculated figures with them. Lengths
// in mm, stresses in MPa, stiffness in N/mm.

// exponential holds A and B of Wileman, Choudhury and Green (1991): table 8-8.
var exponential = map[string][2]float64{
	"steel": {0.78715, 0.62873}, "aluminium": {0.79670, 0.63816}, "grey cast iron": {0.77871, 0.61616},
}

// Exponential returns the stiffness of members of one material, fitted to finite
// elements.
func Exponential(material string, elastic, diameter, grip float64) float64 {
	fit := exponential[material]
	return elastic * diameter * fit[0] * math.Exp(fit[1]*diameter/grip) // Eq. (8-23): km = E d A exp(B d/l)
}

// Frusta returns the stiffness of members of one material, compressed in two
// cones of 30° from washer faces of 1.5 d.
func Frusta(elastic, d, l float64) float64 {
	return 0.5774 * math.Pi * elastic * d / (2 * math.Log(5*(0.5774*l+0.5*d)/(0.5774*l+2.5*d))) // Eq. (8-22)
}

// ShankAndThread returns the stiffness of a bolt from its two areas in mm² within
// the grip.
func ShankAndThread(shank, thread, shankMm, threadMm, elastic float64) float64 {
	return shank * thread * elastic / (shank*threadMm + thread*shankMm) // Eq. (8-17): kb = Ad At E/(Ad lt + At ld)
}
