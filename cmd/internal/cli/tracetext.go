package cli

import (
	"fmt"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/render/sheet/proof"
)

// printTrace prints what was found, then what the user should look at.
func (p *Program) printTrace(a job.TraceAnswer) {
	say := func(format string, args ...any) { fmt.Fprintf(p.Stdout, format+"\n", args...) }
	sayAll := func(label string, found []finding.Finding) {
		for _, one := range p.words.SayAll(found) {
			say("%s: %s", label, one)
		}
	}
	say("%s: %s", a.Title, proof.Counts(p.words, a.Found))
	say("scale %s; a pixel is %.4f mm", p.words.Say(a.Scale), a.PixelMm)
	if len(a.Shapes) > 0 {
		say("  %-6s %9s %9s %8s %8s", "hole", "x mm", "y mm", "ø mm", "edge ±")
	}
	for _, s := range a.Shapes {
		if s.Role == trace.Spot {
			continue
		}
		size, mark := fmt.Sprintf("%8.2f %8.3f", s.DiameterMm, s.ScatterMm), ""
		if !s.Round() {
			size = fmt.Sprintf("%8s %8s", "opening", "")
		}
		if len(s.Doubts) > 0 {
			mark = "  ?"
		}
		say("  %-6s %9.2f %9.2f %s%s", s.ID, tidy(s.At.X), tidy(s.At.Y), size, mark)
	}
	sayAll("taken", a.Taken)
	sayAll("in doubt", a.Doubts)
	for _, s := range a.Shapes {
		sayAll("in doubt: "+s.ID, s.Doubts)
	}
	if a.Specks > 0 {
		say("%s from %.1f to %.1f mm left out; what is finer is taken for grain", counted(a.Specks, "speck"), a.SpeckMm, a.SmallestMm)
	}
	switch {
	case a.Straightened:
		say("turned %.2f° to lie level", tidy(a.TurnedDeg))
	case a.TurnedDeg == 0:
		say("not turned: no direction stands out, or --as-scanned")
	}
	if a.Offer != nil {
		say("bolt holes lie within %.2f mm of %s", a.Offer.OffMm, a.Offer.Words())
	}
}
