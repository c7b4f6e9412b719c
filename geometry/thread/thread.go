// Package thread knows screw threads by their names.
package thread

// Thread is a screw thread of a standard series.
type Thread struct {
	Name    string  // as the sheets print it: M10×1.5, 3/8-16 UNC
	MajorMm float64 // nominal diameter
	PitchMm float64
}
