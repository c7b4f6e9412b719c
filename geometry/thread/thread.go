// Package thread knows screw threads by their names: ISO metric threads
// (ISO 261, coarse and fine, M3 to M64) and unified threads (ASME B1.1, UNC,
// UNF and 8-UN, No. 4 to 2 in). All lengths are in millimetres.
package thread

// Series is a family of diameters with their pitches.
type Series string

const (
	MetricCoarse Series = "metric coarse"  // ISO 261
	MetricFine   Series = "metric fine"    // ISO 261
	UNC          Series = "UNC"            // ASME B1.1, coarse
	UNF          Series = "UNF"            // ASME B1.1, fine
	Special      Series = "metric special" // a pitch that ISO 261 does not have
	UN           Series = "UN"             // ASME B1.1, constant pitch of 8 threads an inch
)

// Thread is a screw thread of a standard series.
type Thread struct {
	Name    string  // as the sheets print it: M10×1.5, 3/8-16 UNC
	MajorMm float64 // nominal diameter
	PitchMm float64

	Series         Series
	ThreadsPerInch float64 // 0 for metric threads
}

// Unified says that the thread is an inch thread of ASME B1.1; others are ISO
// metric.
func (t Thread) Unified() bool { return t.ThreadsPerInch > 0 }
