// Package thread finds screw threads by name: ISO metric threads (ISO 261,
// coarse and fine, M1.6 to M100) and unified threads (ASME B1.1, UNC, UNF and
// 8-UN, No. 4 to 4 in). All lengths are in millimetres.
package thread

import "math"

// Series is a family of diameters with their pitches.
type Series string

const (
	MetricCoarse Series = "metric coarse"  // ISO 261
	MetricFine   Series = "metric fine"    // ISO 261
	UNC          Series = "UNC"            // ASME B1.1, coarse
	UNF          Series = "UNF"            // ASME B1.1, fine
	Special      Series = "metric special" // a pitch that is not in ISO 261
	UN           Series = "UN"             // ASME B1.1, constant pitch of 8 threads an inch
)

// Thread is a screw thread of a standard series.
type Thread struct {
	Name    string  // as printed on the sheets: M10×1.5, 3/8-16 UNC
	MajorMm float64 // nominal diameter
	PitchMm float64

	Series         Series
	ThreadsPerInch float64 // 0 for metric threads
}

// Unified reports whether the thread is an inch thread of ASME B1.1; others are
// ISO metric.
func (t Thread) Unified() bool { return t.ThreadsPerInch > 0 }

// PitchDiameterMm returns the basic pitch diameter d2.
func (t Thread) PitchDiameterMm() float64 {
	return t.MajorMm - 0.649519*t.PitchMm // ISO 724 and ASME B1.1: d − 3/4 H, H = √3/2 P
}

// InternalMinorDiameterMm returns the basic minor diameter of the nut d1 (D1).
func (t Thread) InternalMinorDiameterMm() float64 {
	return t.MajorMm - 1.082532*t.PitchMm // ISO 724 and ASME B1.1: d − 5/4 H
}

// MinorDiameterMm returns the minor diameter of the bolt d3, at the rounded root.
func (t Thread) MinorDiameterMm() float64 {
	if t.Unified() {
		return t.MajorMm - 1.190785*t.PitchMm // ASME B1.1, UNR: d − 11/8 H
	}
	return t.MajorMm - 1.226869*t.PitchMm // ISO 68-1 with ISO 898-1: d − 17/12 H
}

// StressDiameterMm returns the diameter of the circle with the stress area.
func (t Thread) StressDiameterMm() float64 {
	if t.Unified() {
		return t.MajorMm - 0.9743*t.PitchMm // ASME B1.1, appendix B: D − 0.9743/n
	}
	return (t.PitchDiameterMm() + t.MinorDiameterMm()) / 2 // ISO 898-1: (d2 + d3)/2
}

// StressAreaMm2 returns the nominal stress area As.
func (t Thread) StressAreaMm2() float64 {
	// ISO 898-1: π/4 ((d2 + d3)/2)²; ASME B1.1: 0.7854 (D − 0.9743/n)²
	return math.Pi / 4 * t.StressDiameterMm() * t.StressDiameterMm()
}
