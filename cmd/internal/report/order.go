package report

import (
	"fmt"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Order prints the order of a plan and its stages, both ways.
func (r Report) Order(made plan.Plan) {
	sheet := &r.Words.Sheet
	r.heading(made)
	fmt.Fprintf(r.To, sheet.Card+"\n", made.Fingerprint)
	if made.Asked != (plan.Asked{}) {
		asked := strings.TrimSpace(sheet.Ways[string(made.Asked.Way)] + " " + sheet.Turns[string(made.Asked.Turn)])
		fmt.Fprintf(r.To, sheet.Asked+"\n", asked)
	}
	r.line("\n", OrderTighten, nil)
	first := 1
	for _, g := range made.Groups {
		r.group(g)
		fmt.Fprintf(r.To, "    %s\n", numbered(made, g.Members, first))
		first += len(g.Members)
	}
	r.stages(made, made.Tighten)
	r.line("\n", OrderLoosen, nil)
	fmt.Fprintf(r.To, "    %s\n", numbered(made, made.Loosen.Order, 1))
	r.stages(made, made.Loosen)
	r.source(made)
}

func (r Report) group(g plan.Group) {
	code, known := map[sequence.Way]finding.Code{sequence.List: GroupMakers, sequence.Cast: GroupCast, sequence.RowWay: GroupRow}[g.Way]
	if !known {
		code = GroupTurning
	}
	r.line("  ", code, finding.Values{
		"kinds": g.Kinds, "way": r.Words.Sheet.Ways[string(g.Way)], "turn": r.Words.Sheet.Turns[string(g.Turn)],
	})
}

// numbered writes ids behind the numbers that the card gives them.
func numbered(made plan.Plan, fasteners []int, first int) string {
	ids := made.IDs(fasteners)
	for k := range ids {
		ids[k] = fmt.Sprintf("%d:%s", first+k, ids[k])
	}
	return strings.Join(ids, " ")
}

func (r Report) stages(made plan.Plan, side plan.Side) {
	for i := range side.Stages {
		s := &side.Stages[i]
		v := finding.Values{"n": s.Number, "does": Stage(r.Words, s), "kinds": s.Kinds, "note": s.Note}
		if s.Way != "" {
			v["ids"] = strings.Join(made.IDs(s.Fasteners), " ")
		}
		r.line("  ", StageLine, v)
	}
}

// Stage gives the figure of a stage, marked where it was worked out.
func Stage(c *words.Catalogue, s *plan.Stage) string {
	code, v := StageOut, finding.Values{"workedout": s.WorkedOut}
	switch s.Do {
	case plan.Tighten:
		code, v["torque"], v["other"], v["share"] = StageTorque, s.Torque, s.Torque.Other(), s.Percent
	case plan.Advance:
		code, v["angle"] = StageAngle, s.Angle
	case plan.BackOff:
		code, v["angle"] = StageBackOff, s.Angle
	case plan.TurnBack:
		code, v["angle"] = StageTurnBack, s.Angle
	case plan.Wait:
		code, v["wait"] = StageWait, s.Wait
	}
	return c.Say(finding.Noted(code, v))
}

func (r Report) source(made plan.Plan) {
	if len(made.Tighten.Stages) == 0 {
		return // there are no figures to have a source
	}
	r.line("\n", FiguresFrom, finding.Values{"source": made.Source})
	if made.WorkedOut() && made.Source != "" {
		r.line("", WorkedOut, nil)
	}
	for _, a := range made.Assumptions {
		fmt.Fprintf(r.To, "  ≈ %s\n", r.Words.Say(a))
	}
}

// Sound says that a file can be used, and what is in it.
func (r Report) Sound(file string, made plan.Plan, warnings int) {
	if file == "-" {
		file = ""
	}
	r.line("", CheckSound, finding.Values{
		"file": file, "warnings": warnings, "fasteners": len(made.Joint.Fasteners), "kinds": len(made.Kinds),
		"tighten": len(made.Tighten.Stages), "loosen": len(made.Loosen.Stages),
	})
}

// orderOut is what order --json prints: the plan as data.
type orderOut struct {
	Title       string     `json:"title"`
	Machine     string     `json:"machine,omitempty"`
	Revision    string     `json:"revision,omitempty"`
	Date        string     `json:"date,omitempty"`
	Fingerprint string     `json:"fingerprint"`
	Source      string     `json:"source"`
	WorkedOut   bool       `json:"worked_out"`
	Assumptions []string   `json:"assumptions,omitempty"`
	Groups      []groupOut `json:"groups"`
	Tighten     []string   `json:"tighten"`
	Loosen      []string   `json:"loosen"`
	Steps       []stepOut  `json:"steps"`
	LoosenSteps []stepOut  `json:"loosen_steps"`
	Cautions    []string   `json:"cautions,omitempty"`
}

type groupOut struct {
	Kinds []string `json:"kinds"`
	Way   string   `json:"way"`
	Turn  string   `json:"turn"`
	IDs   []string `json:"ids"`
}

// stepOut is one action on one fastener; a wait names none.
type stepOut struct {
	Pass      int      `json:"pass"`
	Do        string   `json:"do"`
	ID        string   `json:"id,omitempty"`
	TorqueNm  *float64 `json:"torque_Nm,omitempty"`
	AngleDeg  *float64 `json:"angle_deg,omitempty"`
	WaitMin   *float64 `json:"wait_min,omitempty"`
	Percent   *float64 `json:"percent,omitempty"`
	Given     string   `json:"given,omitempty"` // the figure as its source gives it
	Source    string   `json:"source,omitempty"`
	WorkedOut bool     `json:"worked_out,omitempty"`
	Note      string   `json:"note,omitempty"`
}

// OrderJSON gives the plan as data.
func OrderJSON(p plan.Plan) orderOut {
	out := orderOut{
		Title: p.Title, Machine: p.Machine, Revision: p.Revision, Date: p.Date, Fingerprint: p.Fingerprint,
		Source: p.Source, WorkedOut: p.WorkedOut(), Cautions: p.CautionsFor(plan.CautionBoth),
		Tighten: p.IDs(p.Tighten.Order), Loosen: p.IDs(p.Loosen.Order),
		Steps: stepsJSON(p.Steps(p.Tighten)), LoosenSteps: stepsJSON(p.Steps(p.Loosen)),
	}
	for _, a := range p.Assumptions {
		out.Assumptions = append(out.Assumptions, words.English().Say(a))
	}
	for _, g := range p.Groups {
		out.Groups = append(out.Groups, groupOut{g.Kinds, string(g.Way), string(g.Turn), p.IDs(g.Members)})
	}
	return out
}

func stepsJSON(steps []plan.Step) []stepOut {
	out := make([]stepOut, 0, len(steps))
	for _, s := range steps {
		o := stepOut{Pass: s.Stage.Number, Do: string(s.Stage.Do), Source: s.Stage.Source, WorkedOut: s.Stage.WorkedOut, Note: s.Stage.Note}
		if s.Fastener != nil {
			o.ID = s.Fastener.ID
		}
		o.figures(s.Stage)
		out = append(out, o)
	}
	return out
}

func (o *stepOut) figures(s *plan.Stage) {
	switch s.Do {
	case plan.Tighten:
		o.TorqueNm, o.Given = new(float64(s.Torque.Nm())), s.Torque.String()
	case plan.Advance, plan.BackOff, plan.TurnBack:
		o.AngleDeg, o.Given = new(float64(s.Angle)), s.Angle.String()
	case plan.Wait:
		o.WaitMin, o.Given = new(float64(s.Wait)), s.Wait.String()
	}
	if s.Percent > 0 {
		o.Percent = new(s.Percent)
	}
}
