package thread

import "math"

// Limits are the diameters of the usual fit at which a bolt and a nut overlap
// least: 6g in 6H (ISO 965-1) for metric threads, 2A in 2B (ASME B1.1) for
// unified ones.
type Limits struct {
	BoltMajorMm float64 // least outer diameter of the bolt
	BoltPitchMm float64 // least pitch diameter of the bolt
	NutPitchMm  float64 // greatest pitch diameter of the nut
	NutMinorMm  float64 // greatest inner diameter of the nut
}

// Limits returns the limits of size for the usual fit.
func (t Thread) Limits() Limits {
	if t.Unified() {
		return t.unifiedLimits()
	}
	return t.metricLimits()
}

func (t Thread) metricLimits() Limits {
	p := t.PitchMm
	pitch := preferred(90 * math.Pow(p, 0.4) * math.Pow(meanDiameterMm(t.MajorMm), 0.1)) // ISO 965-1, clause 13: Td2(6), µm
	major := preferred(180*math.Pow(p, 2./3) - 3.15/math.Sqrt(p))                        // ISO 965-1, clause 13: Td(6), µm
	gap := 15 + 11*p                                                                     // ISO 965-1, clause 13: es of position g, µm
	return Limits{
		BoltMajorMm: t.MajorMm - (gap+major)/1000,
		BoltPitchMm: t.PitchDiameterMm() - (gap+pitch)/1000,
		NutPitchMm:  t.PitchDiameterMm() + preferredAbove(1.32*pitch)/1000, // ISO 965-1, clause 13: TD2(6) = 1.32 Td2(6)
		NutMinorMm:  t.InternalMinorDiameterMm() + preferred(metricMinorTolerance(p))/1000,
	}
}

// metricMinorTolerance returns TD1(6) in µm.
func metricMinorTolerance(pitchMm float64) float64 {
	if pitchMm < 1 {
		return 433*pitchMm - 190*math.Pow(pitchMm, 1.22) // ISO 965-1, clause 13, 0.2 to 0.8 mm
	}
	return 230 * math.Pow(pitchMm, 0.7) // ISO 965-1, clause 13, from 1 mm
}

// diameterSteps are the ranges of diameters that share their tolerances in ISO
// 965-1.
var diameterSteps = []float64{1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180}

// meanDiameterMm returns the geometric mean of a diameter's range.
func meanDiameterMm(majorMm float64) float64 {
	for i := 1; i < len(diameterSteps); i++ {
		if majorMm <= diameterSteps[i] {
			return math.Sqrt(diameterSteps[i-1] * diameterSteps[i])
		}
	}
	return majorMm
}

// renard40 are the preferred numbers to which ISO 965-1 rounds tolerances (ISO
// 3, R40, as in the tables of the standard).
var renard40 = []float64{
	1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3,
	3.15, 3.35, 3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5, 10,
}

// preferred rounds to the nearest preferred number by ratio.
func preferred(v float64) float64 {
	decade := math.Pow(10, math.Floor(math.Log10(v)))
	best := renard40[0]
	for _, n := range renard40 {
		if math.Abs(math.Log(n*decade/v)) < math.Abs(math.Log(best*decade/v)) {
			best = n
		}
	}
	return best * decade
}

// preferredAbove rounds up, but down by up to half a per cent: this reproduces
// the tolerances of nuts in the tables of ISO 965-1.
func preferredAbove(v float64) float64 {
	decade := math.Pow(10, math.Floor(math.Log10(v)))
	for _, n := range renard40 {
		if n*decade >= 0.995*v {
			return n * decade
		}
	}
	return 10 * decade
}

func (t Thread) unifiedLimits() Limits {
	const inch = 25.4
	d, p := t.MajorMm/inch, t.PitchMm/inch
	engaged := d                                                                       // ASME B1.1, section 5.8: coarse and fine series, one diameter
	pitch := 0.0015*math.Cbrt(d) + 0.0015*math.Sqrt(engaged) + 0.015*math.Pow(p, 2./3) // ASME B1.1, section 5.8: class 2A, in
	major := 0.060 * math.Pow(p, 2./3)                                                 // ASME B1.1, section 5.8: class 2A, in
	gap := 0.3 * pitch                                                                 // ASME B1.1, section 5.8: allowance of 2A
	return Limits{
		BoltMajorMm: t.MajorMm - (gap+major)*inch,
		BoltPitchMm: t.PitchDiameterMm() - (gap+pitch)*inch,
		NutPitchMm:  t.PitchDiameterMm() + 1.3*pitch*inch,                                                          // ASME B1.1, section 5.8: class 2B
		NutMinorMm:  math.Round((t.InternalMinorDiameterMm()/inch+unifiedMinorTolerance(d, p))*1000) / 1000 * inch, // ASME B1.1, section 5.8: rounded to 0.001 in
	}
}

// unifiedMinorTolerance returns the tolerance of the inner diameter of a 2B nut,
// in inches.
func unifiedMinorTolerance(d, p float64) float64 {
	if d < 0.25 {
		// ASME B1.1, section 5.8: 0.05 ∛P² + 0.03 P/D − 0.002, at least 0.25 P − 0.4 P², at most 0.394 P
		return math.Min(math.Max(0.05*math.Pow(p, 2./3)+0.03*p/d-0.002, 0.25*p-0.4*p*p), 0.394*p)
	}
	return 0.25*p - 0.4*p*p // ASME B1.1, section 5.8, finer than 4 threads an inch as all threads here are
}
