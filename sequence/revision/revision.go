// Package revision compares two revisions of a joint: fasteners that moved, came
// or went, other figures, another order. It may import plan and its units.
package revision

import (
	"fmt"
	"reflect"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// stillMm is the distance up to which a fastener counts as unmoved: places are
// written to a thousandth.
const stillMm = 0.0005

// Between lists the differences between two plans: places first, then kinds,
// stages, orders and the heading. It is empty if there are none.
func Between(before, after plan.Plan) []finding.Finding {
	c := &comparison{before: before, after: after}
	c.fasteners()
	c.part()
	c.kinds()
	c.sides()
	c.heading()
	return c.found
}

type comparison struct {
	before, after plan.Plan
	found         []finding.Finding
}

func (c *comparison) note(code finding.Code, values finding.Values, ids ...string) {
	c.found = append(c.found, finding.Noted(code, values).About(finding.Place{IDs: ids}))
}

func (c *comparison) fasteners() {
	was, is := byID(c.before), byID(c.after)
	var gone []string
	added := map[string][]string{}
	for _, f := range c.before.Joint.Fasteners {
		if _, still := is[f.ID]; !still {
			gone = append(gone, f.ID)
		}
	}
	for _, f := range c.after.Joint.Fasteners {
		old, known := was[f.ID]
		if !known {
			added[f.Kind] = append(added[f.Kind], f.ID)
			continue
		}
		if by := old.At.Distance(f.At); by > stillMm {
			c.note(Moved, finding.Values{"id": f.ID, "by": unit.Length(by), "x": unit.Length(f.At.X), "y": unit.Length(f.At.Y)}, f.ID)
		}
		if old.Kind != f.Kind {
			c.note(OtherKind, finding.Values{"id": f.ID, "before": old.Kind, "after": f.Kind}, f.ID)
		}
		if old.Cast != f.Cast || old.Mark != f.Mark {
			c.note(OtherCast, finding.Values{"id": f.ID, "before": castOf(old), "after": castOf(f)}, f.ID)
		}
	}
	for _, k := range c.after.Kinds {
		if ids := added[k.Name]; len(ids) > 0 {
			c.note(Added, finding.Values{"ids": ids, "kind": k.Name}, ids...)
		}
	}
	if len(gone) > 0 {
		c.note(Removed, finding.Values{"ids": gone}, gone...)
	}
}

func byID(p plan.Plan) map[string]geometry.Fastener {
	all := map[string]geometry.Fastener{}
	for _, f := range p.Joint.Fasteners {
		all[f.ID] = f
	}
	return all
}

func castOf(f geometry.Fastener) string {
	if f.Cast > 0 {
		return fmt.Sprint(f.Cast)
	}
	return f.Mark
}

// part compares what else is on the part.
func (c *comparison) part() {
	a, b := c.before.Joint, c.after.Joint
	for _, one := range []struct {
		what          string
		before, after any
	}{
		{"outline", a.Outline, b.Outline}, {"bores", a.Bores, b.Bores}, {"dowels", a.Dowels, b.Dowels}, {"labels", a.Labels, b.Labels},
		{"stations", a.Stations, b.Stations}, {"clusters", a.Clusters, b.Clusters}, {"front", a.Front, b.Front},
	} {
		if !reflect.DeepEqual(one.before, one.after) && fmt.Sprint(one.before) != fmt.Sprint(one.after) {
			c.note(OtherPart, finding.Values{"what": one.what})
		}
	}
}

// kinds compares what is stated of each kind.
func (c *comparison) kinds() {
	for _, k := range c.before.Kinds {
		if !hasKind(c.after, k.Name) {
			c.note(KindGone, finding.Values{"kind": k.Name})
		}
	}
	for _, k := range c.after.Kinds {
		if !hasKind(c.before, k.Name) {
			c.note(NewKind, finding.Values{"kind": k.Name})
			continue
		}
		was, is := stated(kindOf(c.before, k.Name)), stated(k)
		for i, s := range is {
			if was[i].value != s.value {
				c.note(KindData, finding.Values{"kind": k.Name, "what": s.key, "before": was[i].value, "after": s.value})
			}
		}
	}
}

func kindOf(p plan.Plan, name string) plan.Kind {
	return p.Kinds[slices.IndexFunc(p.Kinds, func(k plan.Kind) bool { return k.Name == name })]
}

func hasKind(p plan.Plan, name string) bool {
	return slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool { return k.Name == name })
}

// statement is a key of a kind and its value as written; empty if not stated.
type statement struct{ key, value string }

func stated(k plan.Kind) []statement {
	length := func(l unit.Length) string {
		if l == 0 {
			return ""
		}
		return l.String()
	}
	thread, friction := "", ""
	if k.Thread != nil {
		thread = k.Thread.Name
	}
	if k.Friction != nil {
		friction = fmt.Sprint(*k.Friction)
	}
	if k.NutFactor > 0 {
		friction = fmt.Sprintf("K %v ± %v", k.NutFactor, k.NutFactorSpread)
	}
	head := length(k.HeadAcross)
	if k.HeadForm != "" {
		head = string(k.HeadForm)
	}
	washer := length(k.WasherFace)
	if k.Washer != "" {
		washer = string(k.Washer)
	}
	return []statement{
		{"thread", thread}, {"class", k.Class}, {"length", length(k.Length)}, {"thread length", length(k.Threaded)}, {"shank", length(k.Shank)}, {"grip", length(k.Grip)},
		{"into", k.Into}, {"engagement", length(k.Engagement)}, {"boss", length(k.Boss)}, {"lubricant", k.Lubricant}, {"friction", friction}, {"head", head},
		{"nut", length(k.NutAcross)}, {"washer", washer}, {"hole", length(k.Hole)}, {"reuse", string(k.Reuse)}, {"inspect", length(k.ReusedTo)},
	}
}

// sides compares the stages of each kind and the orders.
func (c *comparison) sides() {
	for _, side := range []struct {
		name          string
		before, after plan.Side
	}{{"tighten", c.before.Tighten, c.after.Tighten}, {"loosen", c.before.Loosen, c.after.Loosen}} {
		for _, k := range c.after.Kinds {
			if hasKind(c.before, k.Name) {
				c.stages(k.Name, side.name, stagesOf(side.before, k.Name), stagesOf(side.after, k.Name))
			}
		}
		was, is := c.before.IDs(side.before.Order), c.after.IDs(side.after.Order)
		if both := common(was, is); !slices.Equal(both, common(is, was)) {
			c.note(OtherOrder, finding.Values{"side": side.name, "before": was, "after": is})
		}
	}
}

// common returns the ids that the other list has too.
func common(ids, others []string) []string {
	return slices.DeleteFunc(slices.Clone(ids), func(id string) bool { return !slices.Contains(others, id) })
}

func stagesOf(s plan.Side, kind string) []plan.Stage {
	return slices.DeleteFunc(slices.Clone(s.Stages), func(st plan.Stage) bool { return st.Kinds != nil && !slices.Contains(st.Kinds, kind) })
}

// stages compares figure by figure if the stages are of the same sorts, and the
// lists otherwise.
func (c *comparison) stages(kind, side string, before, after []plan.Stage) {
	was, is := geometry.Mapped(before, figure), geometry.Mapped(after, figure)
	if reflect.DeepEqual(was, is) {
		return
	}
	sorts := func(all []plan.Stage) []plan.Action {
		return geometry.Mapped(all, func(s plan.Stage) plan.Action { return s.Do })
	}
	if side == "loosen" || !slices.Equal(sorts(before), sorts(after)) {
		c.note(OtherStages, finding.Values{"kind": kind, "side": side, "before": was, "after": is})
		return
	}
	for i := range was {
		if !was[i].Same(is[i]) {
			c.note(OtherFigure, finding.Values{"kind": kind, "stage": after[i].Number, "before": was[i], "after": is[i]})
		}
	}
}

func figure(s plan.Stage) finding.Finding {
	values := finding.Values{"do": string(s.Do)}
	switch s.Do {
	case plan.Tighten:
		values["torque"] = s.Torque
	case plan.Advance, plan.BackOff, plan.TurnBack:
		values["angle"] = s.Angle
	case plan.Wait:
		values["wait"] = s.Wait
	}
	return finding.Noted(Figure, values)
}

func (c *comparison) heading() {
	a, b := c.before, c.after
	for _, one := range []struct{ what, before, after string }{
		{"title", a.Title, b.Title}, {"machine", a.Machine, b.Machine}, {"revision", a.Revision, b.Revision}, {"date", a.Date, b.Date}, {"view", a.View, b.View},
		{"source", a.Source, b.Source}, {"cautions", fmt.Sprint(a.Cautions), fmt.Sprint(b.Cautions)},
	} {
		switch {
		case one.before == one.after:
		case one.what == "cautions":
			c.note(OtherPart, finding.Values{"what": one.what})
		default:
			c.note(OtherHeading, finding.Values{"what": one.what, "before": one.before, "after": one.after})
		}
	}
}
