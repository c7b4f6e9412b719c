package report

import (
	"fmt"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/geometry/unit"
	"drawdown/render/sheet/proof"
)

// Trace prints what was found, then what the user should look at.
func (r Report) Trace(a job.TraceAnswer) {
	fmt.Fprintf(r.To, r.Words.Sheet.Named+"\n", a.Title, proof.Counts(r.Words, a.Found))
	r.line("", TracedAt, finding.Values{"scale": a.Scale, "pixel": unit.Length(a.PixelMm)})
	columns := Columns{-8, 9, 9, 8, 8, -3}
	if len(a.Shapes) > 0 {
		columns.Row(r.To, "  "+r.say(HoleColumn, nil), "x mm", "y mm", "ø mm", r.say(EdgeColumn, nil))
	}
	for _, s := range a.Shapes {
		if s.Role == trace.Spot {
			continue
		}
		size, edge, mark := r.say(OpeningCell, nil), "", ""
		switch {
		case s.Role == trace.Candidate:
			size = r.hundredth(s.DiameterMm)
		case s.Round():
			size, edge = r.hundredth(s.DiameterMm), r.Words.Figure(fmt.Sprintf("%.3f", s.ScatterMm))
		}
		if len(s.Doubts) > 0 {
			mark = " ?"
		}
		columns.Row(r.To, "  "+s.ID, r.hundredth(s.At.X), r.hundredth(s.At.Y), size, edge, mark)
	}
	for _, size := range a.Sizes() {
		r.line("", SizeFound, finding.Values{"holes": size.Holes, "diameter": unit.Length(size.DiameterMm), "role": string(size.Role)})
	}
	r.each(TakenFor, "", a.Taken)
	r.each(InDoubt, "", a.Found.Doubts)
	for _, s := range a.Shapes {
		r.each(InDoubt, s.ID, slices.DeleteFunc(slices.Clone(s.Doubts), func(f finding.Finding) bool { return f.Code == trace.SizeOpen }))
	}
	if a.InDoubt() {
		r.line("", CorrectIn, finding.Values{"file": a.FixesFile, "take": "bolts: [C1]", "drop": "drop: [F3]"})
	}
	if a.Specks > 0 {
		r.line("", SpecksLeftOut, finding.Values{"specks": a.Specks, "from": unit.Length(a.SpeckMm), "to": unit.Length(a.SmallestMm)})
	}
	switch {
	case a.Straightened:
		r.line("", TurnedLevel, finding.Values{"by": unit.Angle(tidy(a.TurnedDeg))})
	case a.TurnedDeg == 0:
		r.line("", NotTurned, nil)
	}
	if a.Offer != nil {
		r.line("", BoltHolesNear, finding.Values{"off": unit.Length(a.Offer.OffMm), "layout": a.Offer.Named()})
	}
}

// each prints findings behind a label, of a hole where one is named.
func (r Report) each(label finding.Code, id string, found []finding.Finding) {
	for _, one := range found {
		r.line("", label, finding.Values{"id": id, "found": one})
	}
}
