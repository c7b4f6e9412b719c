package cli

import (
	"drawdown/cmd/internal/job"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// torqueOut is what torque --json prints. The plain numbers hold at nominal
// friction with the torque set; a range runs from the least over the nominal to
// the greatest value; at_friction has all by friction.
type torqueOut struct {
	Kind     string `json:"kind,omitempty"`
	Thread   string `json:"thread"`
	Class    string `json:"class"`
	Equation string `json:"equation"`
	Aim      string `json:"aim"`
	Tighten  string `json:"tighten,omitempty"` // snug torque and angle; torque_Nm and its figures are then by torque alone

	StressAreaMm2 figureOut `json:"stress_area_mm2"`
	ProofLoadN    figureOut `json:"proof_load_N"`
	YieldMPa      figureOut `json:"yield_stress_MPa"`
	TensileMPa    figureOut `json:"tensile_strength_MPa,omitempty"`

	TorqueNm      figureOut `json:"torque_Nm"`
	TorqueLbfFt   figureOut `json:"torque_lbf_ft"`
	FullTorqueNm  spanOut   `json:"full_torque_range_Nm"` // that uses the whole share of yield
	PreloadN      figureOut `json:"preload_N"`
	PreloadRangeN spanOut   `json:"preload_range_N"`
	LeastN        figureOut `json:"preload_least_N,omitempty"` // where the friction has no span: by the tightening factor
	Factor        figureOut `json:"tightening_factor,omitempty"`
	YieldUsed     figureOut `json:"yield_used,omitempty"`       // these three only where the bolt does not yield
	YieldRange    *spanOut  `json:"yield_used_range,omitempty"` // the same, at any friction
	YieldAllowed  figureOut `json:"yield_allowed"`
	ProofUsed     figureOut `json:"proof_used"`
	NutFactor     figureOut `json:"nut_factor"`
	Split         *splitOut `json:"split,omitempty"`

	Head        string    `json:"head"` // its form
	FaceMm      figureOut `json:"bearing_face_mm"`
	HoleMm      figureOut `json:"hole_mm"`
	EffectiveMm figureOut `json:"friction_diameter_mm"`

	AtFriction byFriction[atFrictionOut] `json:"at_friction"`
	turnedOut
	Joint     *jointOut     `json:"joint,omitempty"`
	Stripping *strippingOut `json:"stripping,omitempty"`
	Pressure  pressureOut   `json:"pressure"`

	WorkedOut   bool     `json:"worked_out"`
	Caution     string   `json:"caution"`
	Notes       []string `json:"notes"`
	Assumptions []string `json:"assumptions"`
	Sources     []string `json:"sources"`
}

type byFriction[T any] struct {
	Low     T `json:"low"`
	Nominal T `json:"nominal"`
	High    T `json:"high"`
}

func eachFriction[T, U any](low, nominal, high T, of func(T) U) byFriction[U] {
	return byFriction[U]{of(low), of(nominal), of(high)}
}

type splitOut struct {
	Stretch figureOut `json:"stretch"`
	Thread  figureOut `json:"thread"`
	Head    figureOut `json:"head"`
}

func splitJSON(s screw.TorqueSplit) *splitOut {
	return &splitOut{figureOut(s.Stretch), figureOut(s.Thread), figureOut(s.Head)}
}

type atFrictionOut struct {
	Thread       figureOut `json:"friction_thread"`
	Head         figureOut `json:"friction_head"`
	PreloadN     figureOut `json:"preload_N"`
	YieldUsed    figureOut `json:"yield_used,omitempty"`
	FullTorqueNm figureOut `json:"full_torque_Nm"`
	Split        *splitOut `json:"split,omitempty"`
	NutFactor    figureOut `json:"nut_factor"`
	YieldNm      figureOut `json:"torque_at_yield_Nm"`
	BreakNm      figureOut `json:"torque_at_breaking_Nm"`
	Yields       bool      `json:"yields"` // the preload is then that of the hardened bolt, without a share and a split
	Breaks       bool      `json:"breaks"` // the preload is then the greatest that it bore
}

func atFrictionJSON(f screw.AtFriction) atFrictionOut {
	out := atFrictionOut{
		Thread: figureOut(f.Thread), Head: figureOut(f.Head), PreloadN: figureOut(f.Borne), FullTorqueNm: figureOut(f.FullTorque), NutFactor: figureOut(f.NutFactor),
		YieldNm: figureOut(f.YieldTorque), BreakNm: figureOut(f.BreakTorque), Yields: f.Yields(), Breaks: f.Breaks(),
	}
	if !f.Yields() {
		out.YieldUsed, out.Split = figureOut(f.YieldShare), splitJSON(f.Split)
	}
	return out
}

// turnedOut is what a snug torque adds, and an angle after it.
type turnedOut struct {
	SnugNm                *figureOut                 `json:"snug_Nm,omitempty"`
	AngleDeg              *figureOut                 `json:"angle_deg,omitempty"`
	PreloadAfterAngleN    *figureOut                 `json:"preload_after_angle_N,omitempty"`
	PreloadAfterAngleSpan *spanOut                   `json:"preload_after_angle_range_N,omitempty"`
	AimN                  *figureOut                 `json:"aim_N,omitempty"`
	AngleToAimDeg         *figureOut                 `json:"angle_to_aim_deg,omitempty"`
	AngleToAimSpan        *spanOut                   `json:"angle_to_aim_range_deg,omitempty"`
	AfterAngle            *byFriction[afterAngleOut] `json:"after_angle,omitempty"`
}

type afterAngleOut struct {
	Thread             figureOut  `json:"friction_thread"`
	Head               figureOut  `json:"friction_head"`
	SnugPreloadN       figureOut  `json:"snug_preload_N"`
	PreloadN           *figureOut `json:"preload_N,omitempty"` // these not where the bolt breaks
	TorqueNm           *figureOut `json:"torque_Nm,omitempty"`
	YieldUsed          *figureOut `json:"yield_used,omitempty"`
	LastingMm          *figureOut `json:"lasting_mm,omitempty"`
	StretchMm          *figureOut `json:"stretch_mm,omitempty"`
	AngleToAimDeg      *figureOut `json:"angle_to_aim_deg,omitempty"` // these not where the snug torque breaks it
	AngleToYieldDeg    *figureOut `json:"angle_to_yield_deg,omitempty"`
	AngleToGreatestDeg *figureOut `json:"angle_to_greatest_deg,omitempty"`
	AngleToBreakDeg    *figureOut `json:"angle_to_break_deg,omitempty"`
	Reusable           bool       `json:"reusable"`
	Breaks             bool       `json:"breaks"`
}

func afterAngleJSON(f stiffness.AfterAngle) afterAngleOut {
	out := afterAngleOut{Thread: figureOut(f.Thread), Head: figureOut(f.Head), SnugPreloadN: figureOut(f.Snug), Reusable: f.Reusable && !f.Breaks, Breaks: f.Breaks}
	if !f.Breaks {
		out.PreloadN, out.TorqueNm, out.YieldUsed, out.LastingMm, out.StretchMm = number(f.Preload), number(f.Torque), number(f.YieldUsed), number(f.Lasting), number(f.Stretch)
	}
	if !f.BreaksBySnug() {
		out.AngleToAimDeg, out.AngleToYieldDeg, out.AngleToGreatestDeg, out.AngleToBreakDeg = number(f.AngleToAim), number(f.AngleToYield), number(f.AngleToGreatest), number(f.AngleToBreak)
	}
	return out
}

type jointOut struct {
	BoltNPerMm    figureOut  `json:"bolt_stiffness_N_per_mm"`
	MembersNPerMm figureOut  `json:"members_stiffness_N_per_mm"`
	LoadShare     figureOut  `json:"load_share"`
	GripMm        figureOut  `json:"grip_mm"`
	ConeDeg       figureOut  `json:"cone_angle_deg"`          // from the axis
	ReachMm       figureOut  `json:"cone_reach_mm,omitempty"` // D′A
	SettlementUm  *figureOut `json:"settlement_um,omitempty"` // not where the bolt breaks
	LossN         *figureOut `json:"settlement_loss_N,omitempty"`
}

type strippingOut struct {
	BoltBreaksN  figureOut `json:"bolt_breaks_N"`
	BoltStripsN  figureOut `json:"bolt_strips_N,omitempty"`
	PartStripsN  figureOut `json:"part_strips_N,omitempty"`
	First        string    `json:"first,omitempty"`
	Margin       figureOut `json:"margin,omitempty"`                  // over the greatest preload
	EffectiveMm  figureOut `json:"engagement_effective_mm,omitempty"` // that carries
	Dilation     figureOut `json:"C1"`
	BoltBending  figureOut `json:"C2"`
	PartBending  figureOut `json:"C3"`
	ShearRatio   figureOut `json:"bolt_shear_ratio"`
	ForBoltMm    figureOut `json:"engagement_for_bolt_mm"`
	ForPreloadMm figureOut `json:"engagement_for_preload_mm"`
}

type pressureOut struct {
	PreloadN    figureOut `json:"at_preload_N"` // the greatest of the span
	PressureMPa figureOut `json:"pressure_MPa"`
	LimitMPa    figureOut `json:"limit_MPa,omitempty"`
	Used        figureOut `json:"used,omitempty"`
}

func torqueJSON(a job.TorqueAnswer) torqueOut {
	r := a.Result
	l, n, h := r.Low, r.Nominal, r.High
	out := torqueOut{
		Kind: a.Kind, Thread: a.Bolt.Thread.Name, Class: r.Strength.Name, Equation: equationName(a), Aim: aimWords(a),
		StressAreaMm2: figureOut(r.StressAreaMm2), ProofLoadN: figureOut(r.ProofLoad), YieldMPa: figureOut(r.Strength.Yield), TensileMPa: figureOut(r.Strength.Tensile),
		TorqueNm: figureOut(r.Torque), TorqueLbfFt: figureOut(r.Torque.In(unit.PoundForceFoot)), FullTorqueNm: spanJSON(l.FullTorque, n.FullTorque, h.FullTorque),
		PreloadN: figureOut(n.Borne), PreloadRangeN: spanJSON(l.Borne, n.Borne, h.Borne), LeastN: figureOut(a.Least), Factor: figureOut(a.Alpha),
		YieldAllowed: figureOut(r.YieldShare),
		ProofUsed:    figureOut(a.ProofUsed), NutFactor: figureOut(n.NutFactor),
		Head: string(r.HeadForm), FaceMm: figureOut(r.Face), HoleMm: figureOut(r.Hole), EffectiveMm: figureOut(r.Effective),
		AtFriction: eachFriction(l, n, h, atFrictionJSON), turnedOut: turnedJSON(a),
		Stripping: strippingJSON(a), WorkedOut: true, Caution: precedence,
		Pressure: pressureOut{figureOut(a.Greatest), figureOut(a.Pressure.Pressure), figureOut(a.Pressure.Limit), figureOut(a.Pressure.Used)},
		Notes:    listed(a.Notes), Assumptions: listed(a.Assumptions), Sources: listed(a.Sources),
	}
	out.shares(l, n, h)
	if a.Turned != nil {
		out.Tighten = snugWords(a)
	}
	if j := a.Joint; j != nil {
		out.Joint = &jointOut{
			BoltNPerMm: figureOut(j.Bolt), MembersNPerMm: figureOut(j.Members), LoadShare: figureOut(j.LoadShare), GripMm: figureOut(j.Grip),
			ConeDeg: figureOut(j.ConeAngle), ReachMm: figureOut(j.ConeReach),
		}
	}
	if s := a.Settlement; s != nil {
		out.Joint.SettlementUm, out.Joint.LossN = number(s.Micrometres), number(s.Loss)
	}
	return out
}

// shares fills in what has a meaning up to yield only.
func (out *torqueOut) shares(l, n, h screw.AtFriction) {
	if !n.Yields() {
		out.YieldUsed, out.Split = figureOut(n.YieldShare), splitJSON(n.Split)
	}
	if !l.Yields() && !n.Yields() && !h.Yields() {
		span := spanJSON(l.YieldShare, n.YieldShare, h.YieldShare)
		out.YieldRange = &span
	}
}

func equationName(a job.TorqueAnswer) string {
	if a.Bolt.NutFactor != 0 {
		return "nut factor"
	}
	return string(a.Result.Equation)
}

func turnedJSON(a job.TorqueAnswer) turnedOut {
	t := a.Turned
	if t == nil {
		return turnedOut{}
	}
	toAim := spanJSON(t.Low.AngleToAim, t.Nominal.AngleToAim, t.High.AngleToAim)
	by := eachFriction(t.Low, t.Nominal, t.High, afterAngleJSON)
	out := turnedOut{SnugNm: number(a.Snug), AimN: number(t.Aim), AfterAngle: &by}
	if !t.Low.BreaksBySnug() && !t.Nominal.BreaksBySnug() && !t.High.BreaksBySnug() {
		out.AngleToAimDeg, out.AngleToAimSpan = number(t.Nominal.AngleToAim), &toAim
	}
	if !a.ByAngle() {
		return out
	}
	out.AngleDeg = number(a.Angle)
	if !t.Nominal.Breaks {
		out.PreloadAfterAngleN = number(t.Nominal.Preload)
	}
	if !t.Low.Breaks && !t.Nominal.Breaks && !t.High.Breaks {
		span := spanJSON(t.Low.Preload, t.Nominal.Preload, t.High.Preload)
		out.PreloadAfterAngleSpan = &span
	}
	return out
}

func number[T ~float64](v T) *figureOut {
	plain := figureOut(v)
	return &plain
}

func strippingJSON(a job.TorqueAnswer) *strippingOut {
	s := a.Stripping
	if s == nil {
		return nil
	}
	out := &strippingOut{
		BoltBreaksN: figureOut(s.BoltBreaks), ForBoltMm: figureOut(s.ForBolt), ForPreloadMm: figureOut(s.ForPreload), ShearRatio: figureOut(s.ShearRatio),
		Dilation: figureOut(s.Factors.Dilation), BoltBending: figureOut(s.Factors.BoltBending), PartBending: figureOut(s.Factors.PartBending),
	}
	if a.Engaged > 0 {
		out.EffectiveMm = figureOut(s.Effective)
		out.BoltStripsN, out.PartStripsN, out.First, out.Margin = figureOut(s.BoltStrips), figureOut(s.PartStrips), string(s.First), figureOut(s.Margin)
	}
	return out
}

// listed keeps an empty list a list.
func listed(lines []string) []string { return append([]string{}, lines...) }

type torqueFileOut struct {
	Title string      `json:"title"`
	Kinds []torqueOut `json:"kinds"`
}

func torqueFileJSON(title string, answers []job.TorqueAnswer) torqueFileOut {
	out := torqueFileOut{Title: title}
	for _, a := range answers {
		out.Kinds = append(out.Kinds, torqueJSON(a))
	}
	return out
}
