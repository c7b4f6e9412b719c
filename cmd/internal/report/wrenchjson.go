package report

import (
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/wrench"
)

// wrenchOut is what wrench --json prints.
type wrenchOut struct {
	TorqueNm       Figure   `json:"torque_Nm"`
	SettingNm      Figure   `json:"setting_Nm"` // exact
	SettingLbfFt   Figure   `json:"setting_lbf_ft"`
	SettingOnScale scaleOut `json:"setting_on_scale"`
	Wrench         string   `json:"wrench,omitempty"`
	Usable         *bool    `json:"usable,omitempty"` // without a list of wrenches nothing can be said
	UsableReason   string   `json:"usable_reason"`
	LengthMm       Figure   `json:"length_mm,omitempty"`   // of the wrench, with an adapter
	LengthFrom     string   `json:"length_from,omitempty"` // as stated, or from the list
	Skipped        []string `json:"skipped,omitempty"`     // of the list, for want of a length
	UsableFromNm   Figure   `json:"usable_from_Nm"`        // without a list: where the scale of a wrench may end
	UsableToNm     Figure   `json:"usable_to_Nm"`

	FastenerNm     Figure `json:"fastener_Nm"` // with the setting on the scale
	FastenerRange  Span   `json:"fastener_range_Nm"`
	RoundingShare  Figure `json:"rounding"`
	ToleranceShare Figure `json:"tolerance"`

	Notes       []string `json:"notes"`
	Assumptions []string `json:"assumptions"`
	Sources     []string `json:"sources"`
}

type scaleOut struct {
	Value Figure `json:"value"`
	Unit  string `json:"unit"`
}

func scaleJSON(g unit.GivenTorque) scaleOut { return scaleOut{Figure(g.Value), g.Unit.String()} }

func WrenchJSON(c *words.Catalogue, work wrench.Work, a wrench.Result) wrenchOut {
	out := wrenchOut{
		TorqueNm: Figure(work.Torque), SettingNm: Figure(a.Setting), SettingLbfFt: Figure(a.Setting.In(unit.PoundForceFoot)),
		SettingOnScale: scaleJSON(a.Scale), UsableReason: usableWords(a),
		LengthMm: Figure(a.Length), LengthFrom: c.Term(a.LengthFrom), Skipped: a.Skipped,
		UsableFromNm: Figure(a.Least), UsableToNm: Figure(a.Most),
		FastenerNm: Figure(a.Given), FastenerRange: SpanOf(a.Low, a.Given, a.High),
		RoundingShare: Figure(a.RoundingShare), ToleranceShare: Figure(a.ToleranceShare),
		Notes: Listed(c.SayAll(a.Notes)), Assumptions: Listed(c.SayAll(a.Assumptions)), Sources: Listed(a.Sources),
	}
	if a.Wrench != nil {
		usable := true // a wrench that is not usable is not taken: that is an error
		out.Wrench, out.Usable = a.Wrench.Name, &usable
	}
	return out
}
