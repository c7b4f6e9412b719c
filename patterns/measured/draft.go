package measured

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/writing"
)

// Draft returns the pattern file of a survey: the holes that are fixed, the
// others as comments and as a caution on the card, and a regular layout if the
// holes are close to one.
func (s Survey) Draft(solved survey.Solution) writing.Draft {
	report := s.Report(solved)
	d := writing.Draft{Title: s.Title, Machine: s.Machine, HolesMm: map[string]float64{}, Notes: []finding.Finding{
		finding.Noted(Surveyed, finding.Values{"readings": len(s.Network.Readings), "holes": len(s.IDs), "agreement": report.Agreement()}),
		finding.Noted(writing.HoldCard, nil),
	}}
	for _, doubt := range slices.Concat(report.DoubtDiameters(), report.Suspects(), report.LooseHoles(), report.Side(), report.Doubts()) {
		d.Notes = append(d.Notes, finding.Noted(writing.Look, finding.Values{"found": doubt}))
	}
	missing := map[int]bool{}
	caution := func(code finding.Code, values finding.Values) {
		d.Cautions = append(d.Cautions, finding.Noted(code, values))
	}
	for _, l := range solved.Loose {
		switch id := s.IDs[l.Hole]; l.Why {
		case survey.Free:
			missing[l.Hole] = true
			caution(HoleMissing, finding.Values{"id": id})
		case survey.TwoPlaces:
			caution(HoleElsewhere, finding.Values{"id": id})
		case survey.Weak, survey.Disputed:
			caution(HoleWeak, finding.Values{"id": id, "error": unit.Length(solved.ErrorsMm[l.Hole])})
		}
	}
	if solved.Mirrored {
		caution(MayBeMirrored, nil)
	}
	for i, id := range s.IDs {
		if missing[i] {
			continue
		}
		kind := form.ImpliedKind
		if diameter := s.Network.Diameters[i]; diameter > 0 {
			kind = "hole " + writing.Number(diameter)
			d.HolesMm[kind] = diameter
		}
		f := geometry.Fastener{ID: id, Kind: kind, At: solved.Points[i]}
		if len([]rune(id)) <= form.MostMark {
			f.Mark = id // as chalked on the part
		}
		d.Joint.Fasteners = append(d.Joint.Fasteners, f)
	}
	d.Offer = s.Offer(solved)
	return d
}

// Report describes the solution of the survey.
func (s Survey) Report(solved survey.Solution) survey.Report {
	return survey.Report{Network: s.Network, Solution: solved, IDs: s.IDs}
}

// Offer returns the regular layout close to the holes; nil if there is none, or
// if a hole is not fixed.
func (s Survey) Offer(solved survey.Solution) *writing.Layout {
	if len(solved.Loose) > 0 {
		return nil
	}
	steps := survey.MillimetreSteps
	if s.Inches {
		steps = survey.InchSteps
	}
	const nearMm = 0.3 // further off, a layout would claim more than was measured
	near := max(nearMm, 5*solved.ScatterMm)
	regular, ok := survey.Recognise(solved.Points, near, solved.ScatterMm, steps)
	if !ok {
		return nil
	}
	layout := &writing.Layout{Regular: regular, ID: writing.RegularIDs[regular.Shape]}
	one := s.Network.Diameters[0]
	if slices.ContainsFunc(s.Network.Diameters, func(d float64) bool { return d != one }) {
		return nil // a layout has one kind
	}
	if one > 0 {
		layout.Kind = "hole " + writing.Number(one)
	}
	return layout
}
