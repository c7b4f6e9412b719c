package wrench

import (
	"fmt"
	"math"
	"strings"
)

// muchRounding is the share from which on rounding to the scale is worth a word:
// the tolerance of the wrench itself.
const muchRounding = 0.04

func (w Work) notes(r Result) []string {
	var lines []string
	if r.Wrench != nil && math.Abs(r.RoundingShare) > muchRounding {
		lines = append(lines, fmt.Sprintf("the scale of %s is coarse here: set to %s the fastener gets %.1f N·m, %+.0f %%", r.Wrench.Name, r.Scale, float64(r.Given), r.RoundingShare*100))
	}
	if w.Adapter > 0 {
		lines = append(lines, "hold the wrench at the middle of its grip, where its length was measured from")
	}
	if len(r.Skipped) > 0 {
		lines = append(lines, "left out, as the list gives them no length for the adapter: "+strings.Join(r.Skipped, ", "))
	}
	if w.Again {
		lines = append(lines, breakaway)
	}
	return lines
}

// breakaway is the note for a fastener that stands: static friction is above
// the friction it turns against (common practice, no source for a figure).
const breakaway = "a fastener that stands needs more torque to start than to turn on: a click before it moves says nothing about its preload; slacken it by a quarter turn and tighten it in one steady pull, or read the torque while it turns"

func (w Work) assumptions(r Result) []string {
	line := fmt.Sprintf("adjustable click wrench, ±%.0f %% (ISO 6789), assumed", r.ToleranceShare*100)
	if r.Wrench == nil {
		if r.ToleranceShare > Tolerance(math.Inf(1)) {
			line = fmt.Sprintf("adjustable click wrench whose scale ends at 10 N·m or below, ±%.0f %% (ISO 6789), assumed", r.ToleranceShare*100)
		}
		return []string{line}
	}
	lines := []string{line}
	if least := LeastUsable * r.Wrench.Max; r.Wrench.Min < least {
		lines = append(lines, fmt.Sprintf("%s usable from %.4g %s on, a fifth of its maximum (ISO 6789), assumed", r.Wrench.Name, least, r.Wrench.Unit))
	}
	return lines
}
