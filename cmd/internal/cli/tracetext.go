package cli

import (
	"fmt"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/trace"
	"drawdown/render/sheet/proof"
)

// printTrace prints what was found, then what the user should look at.
func (p *Program) printTrace(a job.TraceAnswer) {
	say := func(format string, args ...any) { fmt.Fprintf(p.Stdout, format+"\n", args...) }
	say("%s: %s", a.Title, proof.Counts(p.words, a.Found))
	say("scale %s; a pixel is %.4f mm", a.ScaleWords(), a.PixelMm)
	if len(a.Shapes) > 0 {
		say("  %-6s %9s %9s %8s %8s", "hole", "x mm", "y mm", "ø mm", "edge ±")
	}
	for _, s := range a.Shapes {
		if s.Role == trace.Spot {
			continue
		}
		mark := ""
		if len(s.Doubts) > 0 {
			mark = "  ?"
		}
		if !s.Round() {
			say("  %-6s %9.2f %9.2f %8s %8s%s", s.ID, tidy(s.At.X), tidy(s.At.Y), "opening", "", mark)
			continue
		}
		say("  %-6s %9.2f %9.2f %8.2f %8.3f%s", s.ID, tidy(s.At.X), tidy(s.At.Y), s.DiameterMm, s.ScatterMm, mark)
	}
	for _, line := range a.Taken {
		say("taken: %s", line)
	}
	p.printTraceDoubts(a)
	if a.Offer != nil {
		say("bolt holes lie within %.2f mm of %s", a.Offer.OffMm, a.Offer.Words())
	}
}

func (p *Program) printTraceDoubts(a job.TraceAnswer) {
	say := func(format string, args ...any) { fmt.Fprintf(p.Stdout, format+"\n", args...) }
	for _, d := range a.Doubts {
		say("in doubt: %s", d)
	}
	for _, s := range a.Shapes {
		for _, d := range s.Doubts {
			say("in doubt: %s: %s", s.ID, d)
		}
	}
	if a.Specks > 0 {
		say("%s from %.1f to %.1f mm left out; what is finer is taken for grain", counted(a.Specks, "speck"), a.SpeckMm, a.SmallestMm)
	}
	switch {
	case a.Levelled:
		say("turned %.2f° to lie level", tidy(a.TurnedDeg))
	case a.TurnedDeg == 0:
		say("not turned: no direction stands out, or --as-scanned")
	}
}
