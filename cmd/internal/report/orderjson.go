package report

import (
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

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
