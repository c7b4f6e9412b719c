package cli

import (
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/wrench"
)

// wrenchOut is what wrench --json prints.
type wrenchOut struct {
	TorqueNm       figureOut `json:"torque_Nm"`
	SettingNm      figureOut `json:"setting_Nm"` // exact
	SettingLbfFt   figureOut `json:"setting_lbf_ft"`
	SettingOnScale scaleOut  `json:"setting_on_scale"`
	Wrench         string    `json:"wrench,omitempty"`
	Usable         *bool     `json:"usable,omitempty"` // without a list of wrenches nothing can be said
	UsableReason   string    `json:"usable_reason"`
	LengthMm       figureOut `json:"length_mm,omitempty"`   // of the wrench, with an adapter
	LengthFrom     string    `json:"length_from,omitempty"` // as stated, or from the list
	Skipped        []string  `json:"skipped,omitempty"`     // of the list, for want of a length
	UsableFromNm   figureOut `json:"usable_from_Nm"`        // without a list: where the scale of a wrench may end
	UsableToNm     figureOut `json:"usable_to_Nm"`

	FastenerNm     figureOut `json:"fastener_Nm"` // with the setting on the scale
	FastenerRange  spanOut   `json:"fastener_range_Nm"`
	RoundingShare  figureOut `json:"rounding"`
	ToleranceShare figureOut `json:"tolerance"`

	Notes       []string `json:"notes"`
	Assumptions []string `json:"assumptions"`
	Sources     []string `json:"sources"`
}

type scaleOut struct {
	Value figureOut `json:"value"`
	Unit  string    `json:"unit"`
}

func scaleJSON(g unit.GivenTorque) scaleOut { return scaleOut{figureOut(g.Value), g.Unit.String()} }

func wrenchJSON(c *words.Catalogue, work wrench.Work, a wrench.Result) wrenchOut {
	out := wrenchOut{
		TorqueNm: figureOut(work.Torque), SettingNm: figureOut(a.Setting), SettingLbfFt: figureOut(a.Setting.In(unit.PoundForceFoot)),
		SettingOnScale: scaleJSON(a.Scale), UsableReason: usableWords(a),
		LengthMm: figureOut(a.Length), LengthFrom: c.Term(a.LengthFrom), Skipped: a.Skipped,
		UsableFromNm: figureOut(a.Least), UsableToNm: figureOut(a.Most),
		FastenerNm: figureOut(a.Given), FastenerRange: spanJSON(a.Low, a.Given, a.High),
		RoundingShare: figureOut(a.RoundingShare), ToleranceShare: figureOut(a.ToleranceShare),
		Notes: listed(c.SayAll(a.Notes)), Assumptions: listed(c.SayAll(a.Assumptions)), Sources: listed(a.Sources),
	}
	if a.Wrench != nil {
		usable := true // a wrench that is not usable is not taken: that is an error
		out.Wrench, out.Usable = a.Wrench.Name, &usable
	}
	return out
}
