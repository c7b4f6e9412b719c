package meaning

import (
	"cmp"

	"drawdown/patterns/meant"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// Places records where the parts of a pattern are in their files, so that later
// findings about them are reported there. A part may be in an extended file.
type Places struct {
	file     string
	stages   []*nodes.Node
	loosened []*nodes.Node
	measures []*nodes.Node
	kinds    map[string]*nodes.Node
	groups   map[string]*nodes.Node // of the order, by kind; "" for all kinds
	meant    []meant.Entry
	cautions *nodes.Node
	title    *nodes.Node
	machine  *nodes.Node
	view     *nodes.Node
	joint    *nodes.Node // its gasket, or the whole of it
	mirror   *nodes.Node
	source   *nodes.Node // of the figures
}

// Title returns the place of the title.
func (p Places) Title() problem.Problem { return p.of(p.title) }

// View returns the place of the view, or of the mirror that a file lays over
// it.
func (p Places) View() problem.Problem {
	if p.mirror != nil && p.view != nil && p.mirror.File.Level < p.view.File.Level {
		return p.of(p.mirror)
	}
	return p.of(p.view)
}

// Machine returns the place of the machine.
func (p Places) Machine() problem.Problem { return p.of(p.machine) }

// Source returns the place of the source of the figures.
func (p Places) Source() problem.Problem { return p.of(p.source) }

// Meant returns the warnings that the file acknowledges.
func (p Places) Meant() []meant.Entry { return p.meant }

func (r *reader) places() Places {
	groups := map[string]*nodes.Node{}
	for i, g := range r.input.Groups {
		for _, kind := range append(g.Kinds, "") {
			if groups[kind] == nil {
				groups[kind] = r.groups[i]
			}
		}
	}
	return Places{file: r.Source.File, stages: r.stages, loosened: r.loosened, measures: r.measures, kinds: r.kinds.at, groups: groups, meant: r.meant, cautions: r.cautions, title: r.title, machine: r.machine, view: r.viewAt, joint: r.jointAt, mirror: r.mirror, source: r.source}
}

// Stage returns the place of a tightening stage, counted from 1. Any other
// number means the whole file, with line 0. The caller sets Severity and What.
func (p Places) Stage(n int) problem.Problem { return p.in(p.stages, n) }

// LoosenStage returns the place of a stage of loosening, counted from 1.
func (p Places) LoosenStage(n int) problem.Problem { return p.in(p.loosened, n) }

// Measure returns the place of a value to measure, counted from 1.
func (p Places) Measure(n int) problem.Problem { return p.in(p.measures, n) }

func (p Places) in(list []*nodes.Node, n int) problem.Problem {
	if n < 1 || n > len(list) {
		return p.of(nil)
	}
	return p.of(list[n-1])
}

// Caution returns the place of a caution, counted from 1.
func (p Places) Caution(n int) problem.Problem {
	if p.cautions == nil || n < 1 || n > len(p.cautions.Items) {
		return p.of(p.cautions)
	}
	return p.of(p.cautions.Items[n-1])
}

// At returns the place of a figure of a kind at a stage: the stage, or the kind
// if no stage is named or a file above that of the stage changes the kind. A
// figure of neither is one of the gasket.
func (p Places) At(kind string, stage int) problem.Problem {
	if kind == "" && stage == 0 {
		return p.of(p.joint)
	}
	if stage < 1 || stage > len(p.stages) {
		return p.of(p.kinds[kind])
	}
	if of := p.kinds[kind]; of != nil && of.File.Level < p.stages[stage-1].File.Level {
		return p.of(of)
	}
	return p.of(p.stages[stage-1])
}

// Order returns the place of the order of a kind; if the kind has no order of
// its own, that of the first one in the file. The caller sets Severity and
// What.
func (p Places) Order(kind string) problem.Problem { return p.of(cmp.Or(p.groups[kind], p.groups[""])) }

func (p Places) of(at *nodes.Node) problem.Problem {
	if at == nil {
		return problem.Problem{File: p.file}
	}
	return at.Place()
}
