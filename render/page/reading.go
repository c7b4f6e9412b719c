package page

import (
	"fmt"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/measure"
)

// readLine says what was read and what it comes to.
func (f Frame) readLine(value, unit string, r measure.Result) string {
	t := f.Text().Seen
	if unit == "" {
		unit = string(r.Read.Unit)
	}
	limits, outside := "", ""
	if r.Limits != "" {
		limits = fmt.Sprintf(t.Limits, f.Words.Figure(r.Limits))
	}
	if r.Verdict.Outside() {
		outside = t.Outside
	}
	shim := ""
	for _, found := range r.Findings() {
		if found.Code != measure.Outside {
			shim = f.Words.Say(found)
		}
	}
	return words.Row(f.Words.Figure(strings.TrimSpace(value+" "+unit)), outside, limits, shim)
}
