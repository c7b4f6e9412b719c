package report

import (
	"drawdown/geometry/family"
	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// OrderJSON returns the plan as data, for one side or both; the assumptions are
// in the words of c.
func OrderJSON(c *words.Catalogue, p plan.Plan, side plan.CautionSide) object {
	tighten, loosen := side != plan.CautionLoosen, side != plan.CautionTighten
	var basis []finding.Finding
	if tighten {
		basis = append(basis, p.Tighten.Basis...)
	}
	if loosen {
		basis = append(basis, p.Loosen.Basis...)
	}
	return object{
		{"title", p.Title},
		{"machine", given(p.Machine)},
		{"revision", given(p.Revision)},
		{"date", given(p.Date)},
		{"fingerprint", p.Fingerprint},
		{"source", p.Source},
		{"worked_out", p.WorkedOut()},
		{"assumptions", given(c.SayAll(p.Assumptions))},
		{"basis", given(c.SayAll(basis))},
		{"groups", groupsJSON(p)},
		{"clusters", given(clustersJSON(p))},
		{"tighten", when(tighten, p.IDs(p.Tighten.Order))},
		{"loosen", when(loosen, p.IDs(p.Loosen.Order))},
		{"steps", when(tighten, stepsJSON(p.Steps(p.Tighten)))},
		{"loosen_steps", when(loosen, stepsJSON(p.Steps(p.Loosen)))},
		{"measure", given(p.Measures)},
		{"cautions", given(p.CautionsFor(side))},
	}
}

func groupsJSON(p plan.Plan) []object {
	var groups []object
	for _, g := range p.Groups {
		groups = append(groups, object{
			{"kinds", g.Kinds}, {"way", string(g.Way)}, {"turn", string(g.Turn)}, {"family", familyJSON(p, g.Seen)},
			{"sprung", given(g.Sprung)}, {"ids", p.IDs(g.Members)},
		})
	}
	return groups
}

// clustersJSON lists the clusters, and whether springs push against each.
func clustersJSON(p plan.Plan) []object {
	var clusters []object
	for _, c := range p.Joint.Clusters {
		clusters = append(clusters, object{{"name", c.Name}, {"ids", c.Of}, {"loaded", !c.Unloaded}})
	}
	return clusters
}

// familyJSON returns the recognized family of a layout and what decided it.
// Fields that do not apply to a family are left out.
func familyJSON(p plan.Plan, s family.Seen) object {
	grid := s.Family == family.Grid
	return object{
		{"name", string(s.Family)},
		{"named", given(s.Named)}, // in the file
		{"spacing_mm", s.SpacingMm},
		{"off_mm", s.OffMm}, // largest distance of a place from the shape
		{"columns", when(grid, s.Layout.Columns)},
		{"rows", when(grid, s.Layout.Rows)},
		{"missing", given(s.Missing)},
		{"circles", given(idLists(p, s.Rings))},
		{"edge", given(p.IDs(s.Edge))},
		{"corners", given(p.IDs(s.Corners))},
		{"inside", given(p.IDs(s.Inner))},
		{"flanges", given(idLists(p, s.Parts))},
	}
}

func idLists(p plan.Plan, lists [][]int) [][]string {
	var all [][]string
	for _, list := range lists {
		all = append(all, p.IDs(list))
	}
	return all
}

// stepsJSON lists actions, each on one fastener; a wait has none. A figure is
// given as a number, and as in its source.
func stepsJSON(steps []plan.Step) []object {
	out := []object{}
	for _, s := range steps {
		id := ""
		if s.Fastener != nil {
			id = s.Fastener.ID
		}
		figure, asGiven := figureJSON(s.Stage)
		out = append(out, object{
			{"pass", s.Stage.Number},
			{"do", string(s.Stage.Do)},
			{"id", given(id)},
			figure,
			{"percent", given(s.Stage.Percent)},
			{"given", given(asGiven)},
			{"source", given(s.Stage.Source)},
			{"worked_out", given(s.Stage.WorkedOut)},
			{"by_turns_deg", given(float64(s.Stage.ByTurns))},
			{"release_mm", given(float64(s.Stage.Release))},
			{"until", given(s.Stage.Until)},
			{"at_once", given(s.Stage.AtOnce)},
			{"note", given(s.Stage.Note)},
		})
	}
	return out
}

func figureJSON(s *plan.Stage) (figure field, asGiven string) {
	switch s.Do {
	case plan.Tighten:
		return field{"torque_Nm", float64(s.Torque.Nm())}, s.Torque.String()
	case plan.Advance, plan.BackOff, plan.TurnBack:
		return field{"angle_deg", float64(s.Angle)}, s.Angle.String()
	case plan.Lengthen:
		return field{"stretch_mm", float64(s.Stretch)}, s.Stretch.String()
	case plan.Wait:
		return field{"wait_min", float64(s.Wait)}, s.Wait.String()
	}
	return field{}, ""
}
