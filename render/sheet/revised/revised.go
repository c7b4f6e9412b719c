// Package revised lays out what differs between two revisions of a joint: the
// part with a letter at each difference, and the differences in words. It may
// import plans, revisions, lettered drawings, words and what sheets share.
package revised

import (
	"fmt"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/revision"
)

// pageName is the name of the pages in file names.
const pageName = "differences"

// Document draws the newer revision. A fastener that was removed has its letter
// where it was. The notes say what did not fit.
func Document(before, after plan.Plan, ask sheet.Request) (scene.Document, []string) {
	w := ask.Words
	foot := sheet.Foot{Sign: []string{w.Sheet.CheckedBy, w.Sheet.Date}}
	heading := sheet.PlanHeading(after, w, w.Revised.Badge, func(k plan.Kind) string { return k.Name })
	run := sheet.NewRun(ask.Paper, w, heading, foot)
	was := map[string]geometry.Point{}
	for _, f := range before.Joint.Fasteners {
		was[f.ID] = f.At
	}
	var spots []lettered.Spot
	var lines []string
	letters := 0
	for _, d := range revision.Between(before, after) {
		line := w.Say(d)
		if len(d.At.IDs) > 0 {
			letter := lettered.Letter(letters)
			letters++
			line = letter + "  " + line
			if d.Code != revision.Removed {
				spots = append(spots, lettered.Spot{Letter: letter, IDs: d.At.IDs})
			} else {
				for _, id := range d.At.IDs {
					spots = append(spots, lettered.Spot{Letter: letter, Point: &[2]float64{was[id].X, was[id].Y}})
				}
			}
		}
		lines = append(lines, line)
	}
	if len(lines) == 0 {
		lines = []string{w.Say(finding.Noted(revision.Nothing, nil))}
	}
	reading := *w // the letters have another meaning here than in a record
	reading.Record.Drawing = w.Revised.Letters
	ask.Words = &reading
	notes := lettered.Draw(run, fmt.Sprintf(w.Revised.Since, words.Row(before.Title, sheet.Identity(before, w))), after, spots, ask)
	for _, line := range lines {
		run.Sentence(line)
	}
	return sheet.Document(after, ask, run.Pages(pageName)), notes
}
