package report

import (
	"drawdown/geometry/family"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// OrderJSON gives the plan as data; what was assumed stands in the words of c.
func OrderJSON(c *words.Catalogue, p plan.Plan) object {
	var groups []object
	for _, g := range p.Groups {
		groups = append(groups, object{
			{"kinds", g.Kinds}, {"way", string(g.Way)}, {"turn", string(g.Turn)}, {"family", familyJSON(p, g.Seen)}, {"ids", p.IDs(g.Members)},
		})
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
		{"groups", groups},
		{"tighten", p.IDs(p.Tighten.Order)},
		{"loosen", p.IDs(p.Loosen.Order)},
		{"steps", stepsJSON(p.Steps(p.Tighten))},
		{"loosen_steps", stepsJSON(p.Steps(p.Loosen))},
		{"cautions", given(p.CautionsFor(plan.CautionBoth))},
	}
}

// familyJSON says as what a layout was seen and what decided. What a family does
// not have is left out.
func familyJSON(p plan.Plan, s family.Seen) object {
	grid := s.Family == family.Grid
	return object{
		{"name", string(s.Family)},
		{"named", given(s.Named)}, // by the file
		{"spacing_mm", s.SpacingMm},
		{"off_mm", s.OffMm}, // how far places lie off the shape at the most
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

// stepsJSON lists actions, each on one fastener; a wait names none. A figure
// stands as a number, and as its source gives it.
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
	case plan.Wait:
		return field{"wait_min", float64(s.Wait)}, s.Wait.String()
	}
	return field{}, ""
}
