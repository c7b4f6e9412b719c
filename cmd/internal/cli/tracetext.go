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
	say("%s: %s", a.Title, proof.Counts(a.Found))
	say("scale %s; a pixel is %.4f mm", a.ScaleWords, a.PixelMm)
	if len(a.Shapes) > 0 {
		say("  %-6s %9s %9s %8s %8s", "hole", "x mm", "y mm", "ø mm", "edge ±")
	}
	for _, s := range a.Shapes {
		if s.Role == trace.Port || s.Role == trace.Spot {
			continue
		}
		mark := ""
		if len(s.Doubts) > 0 {
			mark = "  ?"
		}
		say("  %-6s %9.2f %9.2f %8.2f %8.3f%s", s.ID, tidy(s.At.X), tidy(s.At.Y), s.DiameterMm, s.ScatterMm, mark)
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
		say("%s smaller than the smallest hole left out", counted(a.Specks, "speck"))
	}
	switch {
	case a.Levelled:
		say("turned %.2f° to lie level", tidy(a.TurnedDeg))
	case a.TurnedDeg == 0:
		say("not turned: no direction stands out, or --as-scanned")
	}
}
