package meaning

import (
	"maps"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
)

// turned is how often stages turn a kind by an angle, and the sum of the
// angles.
type turned struct {
	stages int
	angle  unit.Angle
}

// overriddenStages reports stages that are replaced whole by fewer, or lose a
// wait or an angle. Without its angle a joint stays at the torque before it.
func (r *reader) overriddenStages(side string, top, base *nodes.Node) {
	over, under := listOf(top, side, "stages"), listOf(base, side, "stages")
	if over == nil || under == nil {
		return
	}
	at := top.Get(side).KeyNode("stages")
	now, before := angles(over), angles(under)
	lost := slices.DeleteFunc(slices.Sorted(maps.Keys(before)), func(kind string) bool {
		left := now.of(kind)
		return left.stages >= before[kind].stages || left.angle >= before[kind].angle
	})
	if len(lost) > 0 && !otherSource(top.Get(side), base.Get(side)) {
		for _, kind := range lost {
			r.Warn(at, AngleLost, finding.Values{
				"file": under.File.Name, "kind": kind, "angle": before[kind].angle, "left": now.of(kind).angle,
			})
		}
		return
	}
	waits := count(under, plan.Wait) - count(over, plan.Wait)
	if fewer := len(over.Items) < len(under.Items); fewer || waits > 0 || len(lost) > 0 {
		r.Note(at, StagesReplaced, finding.Values{
			"side": side, "file": under.File.Name, "before": len(under.Items), "now": len(over.Items), "waits": max(waits, 0),
		})
	}
}

// listOf returns a list of a map in a file, or nil if there is none.
func listOf(file *nodes.Node, key, of string) *nodes.Node {
	if at := file.Get(key); at != nil {
		if list := at.Get(of); list != nil && list.Shape == nodes.List {
			return list
		}
	}
	return nil
}

// otherSource reports whether the stages above have their own source: they are
// then no part of those below.
func otherSource(top, base *nodes.Node) bool {
	own, below := top.Get("source"), base.Get("source")
	return own != nil && (below == nil || own.Text != below.Text)
}

func count(stages *nodes.Node, do plan.Action) (n int) {
	for _, item := range stages.Items {
		if item.Get(string(do)) != nil {
			n++
		}
	}
	return n
}

// byKind holds the turns by angle of each kind; "" is for stages of all kinds.
type byKind map[string]turned

func (b byKind) of(kind string) turned {
	own, all := b[kind], b[""]
	if kind == "" {
		return all
	}
	return turned{own.stages + all.stages, own.angle + all.angle}
}

func angles(stages *nodes.Node) byKind {
	all := byKind{}
	for _, item := range stages.Items {
		at := item.Get(string(plan.Advance))
		if at == nil {
			continue
		}
		angle, err := unit.ParseAngle(at.Text)
		if err != nil {
			continue // reported when it is read
		}
		kinds := []string{""}
		if of := item.Get("of"); of != nil {
			kinds = texts(of)
		}
		for _, kind := range kinds {
			all[kind] = turned{all[kind].stages + 1, all[kind].angle + angle}
		}
	}
	return all
}

// texts returns a single text, or those of a list.
func texts(n *nodes.Node) []string {
	if n.Shape == nodes.Scalar {
		return []string{n.Text}
	}
	var all []string
	for _, item := range n.Items {
		all = append(all, item.Text)
	}
	return all
}
