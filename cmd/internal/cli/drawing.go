package cli

import (
	"fmt"
	"strings"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
)

// drawing says how a drawing is to be read.
func (q *quantities) drawing() drawn.Options {
	ask := drawn.Options{Holes: q.holeRule()}
	ask.Layers = q.layers()
	ask.Unit, _ = flag.OneOf(q, "units", dxf.Units)
	return ask
}

// holeRule reads which diameters are whose.
func (q *quantities) holeRule() holes.Rule {
	var rule holes.Rule
	rule.Fasteners, _ = flag.Read(q, "bolts", holes.ParseRange)
	rule.Dowels, _ = flag.Read(q, "dowels", holes.ParseRange)
	rule.Bores, _ = flag.Read(q, "bores", holes.ParseRange)
	if q.Err == nil {
		if err := rule.Check(); err != nil {
			q.Fail(err)
		}
	}
	return rule
}

func (q *quantities) layers() []string {
	names, err := q.Flags.GetStringArray("layer")
	if err != nil {
		q.Fail(err)
	}
	for i, name := range names {
		if names[i] = strings.TrimSpace(name); names[i] == "" {
			q.Fail(flag.Misusef("--layer is empty: name a layer of the drawing"))
		}
	}
	return names
}

// writeDrawing writes the places of a pattern as a drawing.
func (p *Program) writeDrawing(name, folder string) Status {
	made, status := p.loadPlaces(name, "", "")
	if status != Done {
		return status
	}
	data, asPoints := job.DrawingOf(made)
	if len(asPoints) > 0 {
		p.fail(Done, finding.Noted(DrawnAsPoints, finding.Values{"kinds": asPoints}))
	}
	status = p.printOrWrite(folder, made.Name+".dxf", data)
	lacks := finding.Noted(NotInDrawing, nil)
	if folder == "" {
		p.fail(Done, lacks) // standard output is the drawing
	} else if status == Done {
		fmt.Fprintln(p.Stdout, p.words.Say(lacks))
	}
	return status
}
