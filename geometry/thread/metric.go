package thread

import (
	"strconv"

	"drawdown/geometry/finding"
)

// metricSize is one diameter of ISO 261 with its pitches, the coarse first.
type metricSize struct {
	diameterMm float64
	pitchesMm  []float64
}

// metricSizes holds the first and second choice diameters of ISO 261 (including
// the bolt sizes of ISO 262) from M1.6 to M100, and M9 and M11 of the third
// choice, which are used in cylinder heads. Above M68 the standard has no
// coarse pitch: its greatest, 6 mm, is used.
var metricSizes = []metricSize{
	{1.6, []float64{0.35, 0.2}},
	{1.8, []float64{0.35, 0.2}},
	{2, []float64{0.4, 0.25}},
	{2.2, []float64{0.45, 0.25}},
	{2.5, []float64{0.45, 0.35}},
	{3, []float64{0.5, 0.35}},
	{3.5, []float64{0.6, 0.35}},
	{4, []float64{0.7, 0.5}},
	{4.5, []float64{0.75, 0.5}},
	{5, []float64{0.8, 0.5}},
	{6, []float64{1, 0.75}},
	{7, []float64{1, 0.75}},
	{8, []float64{1.25, 1, 0.75}},
	{9, []float64{1.25, 1, 0.75}},
	{10, []float64{1.5, 1.25, 1, 0.75}},
	{11, []float64{1.5, 1, 0.75}},
	{12, []float64{1.75, 1.5, 1.25, 1}},
	{14, []float64{2, 1.5, 1.25, 1}},
	{16, []float64{2, 1.5, 1}},
	{18, []float64{2.5, 2, 1.5, 1}},
	{20, []float64{2.5, 2, 1.5, 1}},
	{22, []float64{2.5, 2, 1.5, 1}},
	{24, []float64{3, 2, 1.5, 1}},
	{27, []float64{3, 2, 1.5, 1}},
	{30, []float64{3.5, 3, 2, 1.5, 1}},
	{33, []float64{3.5, 3, 2, 1.5}},
	{36, []float64{4, 3, 2, 1.5}},
	{39, []float64{4, 3, 2, 1.5}},
	{42, []float64{4.5, 4, 3, 2, 1.5}},
	{45, []float64{4.5, 4, 3, 2, 1.5}},
	{48, []float64{5, 4, 3, 2, 1.5}},
	{52, []float64{5, 4, 3, 2, 1.5}},
	{56, []float64{5.5, 4, 3, 2, 1.5}},
	{60, []float64{5.5, 4, 3, 2, 1.5}},
	{64, []float64{6, 4, 3, 2, 1.5}},
	{68, []float64{6, 4, 3, 2, 1.5}},
	{72, []float64{6, 4, 3, 2, 1.5}},
	{76, []float64{6, 4, 3, 2, 1.5}},
	{80, []float64{6, 4, 3, 2, 1.5}},
	{85, []float64{6, 4, 3, 2}},
	{90, []float64{6, 4, 3, 2}},
	{95, []float64{6, 4, 3, 2}},
	{100, []float64{6, 4, 3, 2}},
}

// thread returns the thread of the size with its pitch number i.
func (m metricSize) thread(i int) Thread {
	series := MetricFine
	if i == 0 {
		series = MetricCoarse
	}
	return m.with(m.pitchesMm[i], series)
}

func (m metricSize) with(pitchMm float64, series Series) Thread {
	name := "M" + decimal(m.diameterMm) + "×" + decimal(pitchMm)
	return Thread{Name: name, MajorMm: m.diameterMm, PitchMm: pitchMm, Series: series}
}

// metric finds a thread by its diameter and pitch in millimetres; an empty
// pitch means the coarse one.
func metric(diameter, pitch string) (Thread, error) {
	var names []string
	for _, size := range metricSizes {
		if same(size.diameterMm, diameter) {
			return size.find(pitch)
		}
		names = append(names, "M"+decimal(size.diameterMm))
	}
	return Thread{}, finding.Failed(NoMetricSize, finding.Values{"size": diameter, "allowed": names})
}

func (m metricSize) find(pitch string) (Thread, error) {
	if pitch == "" {
		return m.thread(0), nil
	}
	var fine []string
	for i, p := range m.pitchesMm {
		if same(p, pitch) {
			return m.thread(i), nil
		}
		fine = append(fine, decimal(p))
	}
	return Thread{}, m.unlisted(pitch, fine[1:])
}

// UnlistedPitchError reports that no standard has this pitch for the diameter.
// If the pitch could be real, because makers do cut such threads, Thread has
// it.
type UnlistedPitchError struct {
	Thread Thread // the zero thread if the pitch cannot be real
	finding.Finding
}

// Unwrap returns the finding, which lists the pitches that exist.
func (e *UnlistedPitchError) Unwrap() error { return e.Finding }

// unlisted judges a pitch that is not in ISO 261. A real one is between a
// quarter of the coarse pitch and a third above it (common practice, no
// source).
func (m metricSize) unlisted(pitch string, fine []string) *UnlistedPitchError {
	coarse := m.pitchesMm[0]
	e := &UnlistedPitchError{Finding: finding.Failed(NoSuchPitch, finding.Values{
		"pitch": pitch, "size": decimal(m.diameterMm), "coarse": decimal(coarse), "fine": fine,
	})}
	if p, err := strconv.ParseFloat(pitch, 64); err == nil && p >= coarse/4 && p <= coarse*4/3 {
		e.Thread = m.with(p, Special)
	}
	return e
}

// same reports whether text is the number v, with any number of zeros.
func same(v float64, text string) bool {
	n, err := strconv.ParseFloat(text, 64)
	return err == nil && n == v
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
