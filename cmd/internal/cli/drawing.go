package cli

import (
	"fmt"
	"strings"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
)

func (q *quantities) drawing() drawn.Options {
	unit, _ := oneOf(q, "units", dxf.Units)
	return drawn.Options{Options: dxf.Options{Layers: q.layers(), Unit: unit}, Holes: q.holeRule()}
}

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
	names, _ := q.flags.GetStringArray("layer")
	for i, name := range names {
		if names[i] = strings.TrimSpace(name); names[i] == "" {
			q.fail(misuse("--layer is empty: name a layer of the drawing"))
		}
	}
	return names
}

func (p *Program) writeDrawing(name, folder string) Status {
	made, status, ok := p.loadPlaces(name, "", "")
	if !ok {
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
