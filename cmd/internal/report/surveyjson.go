package report

import (
	"math"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/patterns/writing"
	"drawdown/render/words"
)

// surveyOut is the output of survey --json. Lengths are in mm.
type surveyOut struct {
	Title string `json:"title"`
	// Points does not include the holes that can move.
	Points map[string][2]float64 `json:"points"`
	Errors map[string]float64    `json:"errors_mm"`
	RMSMm  float64               `json:"rms_mm"`
	// OneReadingMm is the standard deviation of a reading used for the errors.
	OneReadingMm float64                `json:"one_reading_mm"`
	Suspect      [][2]string            `json:"suspect"`
	SuspectOne   bool                   `json:"suspect_one_of,omitempty"` // the last ones cannot be told apart
	Loose        []string               `json:"loose"`
	Why          map[string]string      `json:"why_loose,omitempty"`
	Other        map[string][2]float64  `json:"other_places,omitempty"`
	Measure      map[string][][2]string `json:"measure_next,omitempty"`
	Mirrored     bool                   `json:"mirror_fits_too,omitempty"`
	Straight     bool                   `json:"straight,omitempty"`
	Unchecked    [][2]string            `json:"unchecked,omitempty"`
	Readings     []surveyReadingOut     `json:"readings"`
	Layout       *layoutOut             `json:"layout,omitempty"`
	File         string                 `json:"file,omitempty"`
	Findings     []Found                `json:"findings"`
}

type surveyReadingOut struct {
	From       string  `json:"from"`
	To         string  `json:"to"`
	CentreMm   float64 `json:"centre_mm"`
	ResidualMm float64 `json:"residual_mm"` // reading minus calculated distance
	LeftOut    bool    `json:"left_out,omitempty"`
}

// layoutOut is a regular layout close to the holes.
type layoutOut struct {
	Shape    string     `json:"shape"`
	Columns  int        `json:"columns,omitempty"`
	Rows     int        `json:"rows,omitempty"`
	Count    int        `json:"count,omitempty"`
	PitchMm  []float64  `json:"pitch_mm,omitempty"`
	SizeMm   []float64  `json:"size_mm,omitempty"`
	Diameter float64    `json:"diameter_mm,omitempty"`
	CentreMm [2]float64 `json:"centre_mm"` // of a row its first place
	AngleDeg float64    `json:"angle_deg,omitempty"`
	WithinMm float64    `json:"within_mm"`
}

// SurveyJSON returns a survey as data, with the name of the file written.
func SurveyJSON(c *words.Catalogue, a job.SurveyAnswer, file string) surveyOut {
	out := surveyOut{
		Title: a.Title, Points: map[string][2]float64{}, Errors: map[string]float64{}, RMSMm: micro(a.RMSMm), OneReadingMm: micro(a.ScatterMm),
		Suspect: pairsOut(a, a.Suspect), SuspectOne: a.Rivals, Loose: []string{}, Mirrored: a.Mirrored, Straight: a.Straight,
		Unchecked: pairsOut(a, a.Solution.Unchecked), Layout: layoutJSON(a.Offer), File: file,
		Findings: foundJSON(c, slices.Concat(a.DoubtDiameters(), a.Suspects(), a.LooseHoles(), a.Side(), a.Doubts())...),
	}
	why := looseness(a)
	for i, id := range a.IDs {
		if why[i] != survey.Free {
			out.Points[id], out.Errors[id] = xy(a.Points[i]), micro(a.ErrorsMm[i])
		}
	}
	out.loose(a)
	for i, r := range a.Readings {
		out.Readings = append(out.Readings, surveyReadingOut{a.IDs[r.From], a.IDs[r.To], micro(r.Distance), micro(a.Residuals[i]), a.Out[i]})
	}
	return out
}

var whyLoose = map[finding.Code]string{survey.Free: "free", survey.Weak: "weak", survey.TwoPlaces: "two places", survey.Disputed: "disputed"}

func (out *surveyOut) loose(a job.SurveyAnswer) {
	if len(a.Loose) == 0 {
		return
	}
	out.Why, out.Other, out.Measure = map[string]string{}, map[string][2]float64{}, map[string][][2]string{}
	for _, l := range a.Loose {
		id := a.IDs[l.Hole]
		out.Loose = append(out.Loose, id)
		out.Why[id] = whyLoose[l.Why]
		if l.Why == survey.TwoPlaces {
			out.Other[id] = xy(l.Other)
		}
		for _, p := range l.Next {
			out.Measure[id] = append(out.Measure[id], [2]string{a.IDs[p[0]], a.IDs[p[1]]})
		}
	}
}

func pairsOut(a job.SurveyAnswer, readings []int) [][2]string {
	pairs := [][2]string{}
	for _, i := range readings {
		r := a.Readings[i]
		pairs = append(pairs, [2]string{a.IDs[r.From], a.IDs[r.To]})
	}
	return pairs
}

func layoutJSON(l *writing.Layout) *layoutOut {
	if l == nil {
		return nil
	}
	out := &layoutOut{
		Shape: string(l.Shape), Columns: l.Columns, Rows: l.Rows, Count: l.Count,
		CentreMm: xy(l.Centre), AngleDeg: micro(l.AngleDeg), WithinMm: micro(l.OffMm),
	}
	switch l.Shape {
	case survey.Grid:
		out.PitchMm = []float64{micro(l.X), micro(l.Y)}
	case survey.Rectangle:
		out.SizeMm = []float64{micro(l.X), micro(l.Y)}
	case survey.Circle:
		out.Diameter = micro(l.X)
	case survey.Row:
		out.PitchMm = []float64{micro(l.X)}
	}
	return out
}

func xy(p geometry.Point) [2]float64 { return [2]float64{micro(p.X), micro(p.Y)} }

// micro rounds to a hundredth of a micrometre, finer than any reading, so that
// the output does not depend on the machine's rounding.
func micro(v float64) float64 { return math.Round(v*1e5)/1e5 + 0 }
