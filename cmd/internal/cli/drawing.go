package cli

import (
	"fmt"
	"strings"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/holes"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
)

// drawing says how a drawing is to be read.
func (q *quantities) drawing() drawn.Options {
	ask := drawn.Options{Holes: q.holeRule()}
	ask.Layers = q.layers()
	ask.Unit, _ = oneOf(q, "units", dxf.Units)
	return ask
}

// holeRule reads which diameters are whose.
func (q *quantities) holeRule() holes.Rule {
	var rule holes.Rule
	rule.Fasteners, _ = read(q, "bolts", holes.ParseRange)
	rule.Dowels, _ = read(q, "dowels", holes.ParseRange)
	rule.Bores, _ = read(q, "bores", holes.ParseRange)
	if q.err == nil {
		if err := rule.Check(); err != nil {
			q.fail(err)
		}
	}
	return rule
}

func (q *quantities) layers() []string {
	names, err := q.flags.GetStringArray("layer")
	if err != nil {
		q.fail(err)
	}
	for i, name := range names {
		if names[i] = strings.TrimSpace(name); names[i] == "" {
			q.fail(misuse("--layer is empty: name a layer of the drawing"))
		}
	}
	return names
}

// writeDrawing writes the places of a pattern as a drawing.
func (p *Program) writeDrawing(name, folder string) Status {
	made, status, ok := p.loadPlaces(name, "", "")
	if !ok {
		return status
	}
	data, asPoints := job.DrawingOf(made)
	if len(asPoints) > 0 {
		fmt.Fprintf(p.Stderr, "drawdown: no hole is stated for %s: drawn as points\n", strings.Join(asPoints, ", "))
	}
	status = p.printOrWrite(folder, made.Name+".dxf", data)
	const lacks = "not in the drawing: title, front, order, threads, stages and torques, numbers cast or marked on the part"
	if folder == "" {
		fmt.Fprintln(p.Stderr, "drawdown: "+lacks) // standard output is the drawing
	} else if status == Done {
		fmt.Fprintln(p.Stdout, lacks)
	}
	return status
}
