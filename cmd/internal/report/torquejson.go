package report

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/figures"
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

	StressAreaMm2 Figure `json:"stress_area_mm2"`
	ProofLoadN    Figure `json:"proof_load_N"`
	YieldMPa      Figure `json:"yield_stress_MPa"`
	TensileMPa    Figure `json:"tensile_strength_MPa,omitempty"`

	TorqueNm      Figure    `json:"torque_Nm"`
	TorqueLbfFt   Figure    `json:"torque_lbf_ft"`
	FullTorqueNm  Span      `json:"full_torque_range_Nm"` // that uses the whole share of yield
	PreloadN      Figure    `json:"preload_N"`
	PreloadRangeN Span      `json:"preload_range_N"`
	LeastN        Figure    `json:"preload_least_N,omitempty"` // where the friction has no span: by the tightening factor
	Factor        Figure    `json:"tightening_factor,omitempty"`
	YieldUsed     Figure    `json:"yield_used,omitempty"`       // these three only where the bolt does not yield
	YieldRange    *Span     `json:"yield_used_range,omitempty"` // the same, at any friction
	YieldAllowed  Figure    `json:"yield_allowed"`
	ProofUsed     Figure    `json:"proof_used"`
	NutFactor     Figure    `json:"nut_factor"`
	Split         *splitOut `json:"split,omitempty"`

	Head        string `json:"head"` // its form
	FaceMm      Figure `json:"bearing_face_mm"`
	HoleMm      Figure `json:"hole_mm"`
	EffectiveMm Figure `json:"friction_diameter_mm"`

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
	Stretch Figure `json:"stretch"`
	Thread  Figure `json:"thread"`
	Head    Figure `json:"head"`
}

func splitJSON(s screw.TorqueSplit) *splitOut {
	return &splitOut{Figure(s.Stretch), Figure(s.Thread), Figure(s.Head)}
}

type atFrictionOut struct {
	Thread       Figure    `json:"friction_thread"`
	Head         Figure    `json:"friction_head"`
	PreloadN     Figure    `json:"preload_N"`
	YieldUsed    Figure    `json:"yield_used,omitempty"`
	FullTorqueNm Figure    `json:"full_torque_Nm"`
	Split        *splitOut `json:"split,omitempty"`
	NutFactor    Figure    `json:"nut_factor"`
	YieldNm      Figure    `json:"torque_at_yield_Nm"`
	BreakNm      Figure    `json:"torque_at_breaking_Nm"`
	Yields       bool      `json:"yields"` // the preload is then that of the hardened bolt, without a share and a split
	Breaks       bool      `json:"breaks"` // the preload is then the greatest that it bore
}

func atFrictionJSON(f screw.AtFriction) atFrictionOut {
	out := atFrictionOut{
		Thread: Figure(f.Thread), Head: Figure(f.Head), PreloadN: Figure(f.Borne), FullTorqueNm: Figure(f.FullTorque), NutFactor: Figure(f.NutFactor),
		YieldNm: Figure(f.YieldTorque), BreakNm: Figure(f.BreakTorque), Yields: f.Yields(), Breaks: f.Breaks(),
	}
	if !f.Yields() {
		out.YieldUsed, out.Split = Figure(f.YieldShare), splitJSON(f.Split)
	}
	return out
}

// turnedOut is what a snug torque adds, and an angle after it.
type turnedOut struct {
	SnugNm                *Figure                    `json:"snug_Nm,omitempty"`
	AngleDeg              *Figure                    `json:"angle_deg,omitempty"`
	PreloadAfterAngleN    *Figure                    `json:"preload_after_angle_N,omitempty"`
	PreloadAfterAngleSpan *Span                      `json:"preload_after_angle_range_N,omitempty"`
	AimN                  *Figure                    `json:"aim_N,omitempty"`
	AngleToAimDeg         *Figure                    `json:"angle_to_aim_deg,omitempty"`
	AngleToAimSpan        *Span                      `json:"angle_to_aim_range_deg,omitempty"`
	AfterAngle            *byFriction[afterAngleOut] `json:"after_angle,omitempty"`
}

type afterAngleOut struct {
	Thread             Figure  `json:"friction_thread"`
	Head               Figure  `json:"friction_head"`
	SnugPreloadN       Figure  `json:"snug_preload_N"`
	PreloadN           *Figure `json:"preload_N,omitempty"` // these not where the bolt breaks
	TorqueNm           *Figure `json:"torque_Nm,omitempty"`
	YieldUsed          *Figure `json:"yield_used,omitempty"`
	LastingMm          *Figure `json:"lasting_mm,omitempty"`
	StretchMm          *Figure `json:"stretch_mm,omitempty"`
	AngleToAimDeg      *Figure `json:"angle_to_aim_deg,omitempty"` // these not where the snug torque breaks it
	AngleToYieldDeg    *Figure `json:"angle_to_yield_deg,omitempty"`
	AngleToGreatestDeg *Figure `json:"angle_to_greatest_deg,omitempty"`
	AngleToBreakDeg    *Figure `json:"angle_to_break_deg,omitempty"`
	Reusable           bool    `json:"reusable"`
	Breaks             bool    `json:"breaks"`
}

func afterAngleJSON(f stiffness.AfterAngle) afterAngleOut {
	out := afterAngleOut{Thread: Figure(f.Thread), Head: Figure(f.Head), SnugPreloadN: Figure(f.Snug), Reusable: f.Reusable && !f.Breaks, Breaks: f.Breaks}
	if !f.Breaks {
		out.PreloadN, out.TorqueNm, out.YieldUsed, out.LastingMm, out.StretchMm = Stated(f.Preload), Stated(f.Torque), Stated(f.YieldUsed), Stated(f.Lasting), Stated(f.Stretch)
	}
	if !f.BreaksBySnug() {
		out.AngleToAimDeg, out.AngleToYieldDeg, out.AngleToGreatestDeg, out.AngleToBreakDeg = Stated(f.AngleToAim), Stated(f.AngleToYield), Stated(f.AngleToGreatest), Stated(f.AngleToBreak)
	}
	return out
}

type jointOut struct {
	BoltNPerMm    Figure  `json:"bolt_stiffness_N_per_mm"`
	MembersNPerMm Figure  `json:"members_stiffness_N_per_mm"`
	LoadShare     Figure  `json:"load_share"`
	GripMm        Figure  `json:"grip_mm"`
	ConeDeg       Figure  `json:"cone_angle_deg"`          // from the axis
	ReachMm       Figure  `json:"cone_reach_mm,omitempty"` // D′A
	SettlementUm  *Figure `json:"settlement_um,omitempty"` // not where the bolt breaks
	LossN         *Figure `json:"settlement_loss_N,omitempty"`
}

type strippingOut struct {
	BoltBreaksN  Figure `json:"bolt_breaks_N"`
	BoltStripsN  Figure `json:"bolt_strips_N,omitempty"`
	PartStripsN  Figure `json:"part_strips_N,omitempty"`
	First        string `json:"first,omitempty"`
	Margin       Figure `json:"margin,omitempty"`                  // over the greatest preload
	EffectiveMm  Figure `json:"engagement_effective_mm,omitempty"` // that carries
	Dilation     Figure `json:"C1"`
	BoltBending  Figure `json:"C2"`
	PartBending  Figure `json:"C3"`
	ShearRatio   Figure `json:"bolt_shear_ratio"`
	ForBoltMm    Figure `json:"engagement_for_bolt_mm"`
	ForPreloadMm Figure `json:"engagement_for_preload_mm"`
}

type pressureOut struct {
	PreloadN    Figure `json:"at_preload_N"` // the greatest of the span
	PressureMPa Figure `json:"pressure_MPa"`
	LimitMPa    Figure `json:"limit_MPa,omitempty"`
	Used        Figure `json:"used,omitempty"`
}

func TorqueJSON(c *words.Catalogue, a figures.Answer) torqueOut {
	r := a.Result
	l, n, h := r.Low, r.Nominal, r.High
	out := torqueOut{
		Kind: a.Kind, Thread: a.Bolt.Bolt.Thread.Name, Class: c.What(r.Strength.Named()), Equation: equationName(a), Aim: aimWords(a),
		StressAreaMm2: Figure(r.StressAreaMm2), ProofLoadN: Figure(r.ProofLoad), YieldMPa: Figure(r.Strength.Yield), TensileMPa: Figure(r.Strength.Tensile),
		TorqueNm: Figure(r.Torque), TorqueLbfFt: Figure(r.Torque.In(unit.PoundForceFoot)), FullTorqueNm: SpanOf(l.FullTorque, n.FullTorque, h.FullTorque),
		PreloadN: Figure(n.Borne), PreloadRangeN: SpanOf(l.Borne, n.Borne, h.Borne), LeastN: Figure(a.Least), Factor: Figure(a.Alpha),
		YieldAllowed: Figure(r.YieldShare),
		ProofUsed:    Figure(a.ProofUsed), NutFactor: Figure(n.NutFactor),
		Head: string(r.HeadForm), FaceMm: Figure(r.Face), HoleMm: Figure(r.Hole), EffectiveMm: Figure(r.Effective),
		AtFriction: eachFriction(l, n, h, atFrictionJSON), turnedOut: turnedJSON(a),
		Stripping: strippingJSON(c, a), WorkedOut: true, Caution: precedence,
		Pressure: pressureOut{Figure(a.Greatest), Figure(a.Pressure.Pressure), Figure(a.Pressure.Limit), Figure(a.Pressure.Used)},
		Notes:    Listed(c.SayAll(a.Notes)), Assumptions: Listed(c.SayAll(a.Assumptions)), Sources: Listed(a.Sources),
	}
	out.shares(l, n, h)
	if a.Turned != nil {
		out.Tighten = snugWords(a)
	}
	if j := a.Joint; j != nil {
		out.Joint = &jointOut{
			BoltNPerMm: Figure(j.Bolt), MembersNPerMm: Figure(j.Members), LoadShare: Figure(j.LoadShare), GripMm: Figure(j.Grip),
			ConeDeg: Figure(j.ConeAngle), ReachMm: Figure(j.ConeReach),
		}
	}
	if s := a.Settlement; s != nil {
		out.Joint.SettlementUm, out.Joint.LossN = Stated(s.Micrometres), Stated(s.Loss)
	}
	return out
}

// shares fills in what has a meaning up to yield only.
func (out *torqueOut) shares(l, n, h screw.AtFriction) {
	if !n.Yields() {
		out.YieldUsed, out.Split = Figure(n.YieldShare), splitJSON(n.Split)
	}
	if !l.Yields() && !n.Yields() && !h.Yields() {
		span := SpanOf(l.YieldShare, n.YieldShare, h.YieldShare)
		out.YieldRange = &span
	}
}

func equationName(a figures.Answer) string {
	if a.Bolt.Bolt.NutFactor != 0 {
		return "nut factor"
	}
	return string(a.Result.Equation)
}

func turnedJSON(a figures.Answer) turnedOut {
	t := a.Turned
	if t == nil {
		return turnedOut{}
	}
	toAim := SpanOf(t.Low.AngleToAim, t.Nominal.AngleToAim, t.High.AngleToAim)
	by := eachFriction(t.Low, t.Nominal, t.High, afterAngleJSON)
	out := turnedOut{SnugNm: Stated(a.Snug), AimN: Stated(t.Aim), AfterAngle: &by}
	if !t.Low.BreaksBySnug() && !t.Nominal.BreaksBySnug() && !t.High.BreaksBySnug() {
		out.AngleToAimDeg, out.AngleToAimSpan = Stated(t.Nominal.AngleToAim), &toAim
	}
	if !a.ByAngle() {
		return out
	}
	out.AngleDeg = Stated(a.Angle)
	if !t.Nominal.Breaks {
		out.PreloadAfterAngleN = Stated(t.Nominal.Preload)
	}
	if !t.Low.Breaks && !t.Nominal.Breaks && !t.High.Breaks {
		span := SpanOf(t.Low.Preload, t.Nominal.Preload, t.High.Preload)
		out.PreloadAfterAngleSpan = &span
	}
	return out
}

func strippingJSON(c *words.Catalogue, a figures.Answer) *strippingOut {
	s := a.Stripping
	if s == nil {
		return nil
	}
	out := &strippingOut{
		BoltBreaksN: Figure(s.BoltBreaks), ForBoltMm: Figure(s.ForBolt), ForPreloadMm: Figure(s.ForPreload), ShearRatio: Figure(s.ShearRatio),
		Dilation: Figure(s.Factors.Dilation), BoltBending: Figure(s.Factors.BoltBending), PartBending: Figure(s.Factors.PartBending),
	}
	if a.Engaged > 0 {
		out.EffectiveMm = Figure(s.Effective)
		out.BoltStripsN, out.PartStripsN, out.First, out.Margin = Figure(s.BoltStrips), Figure(s.PartStrips), c.Term(finding.Term(s.First)), Figure(s.Margin)
	}
	return out
}

type torqueFileOut struct {
	Title string      `json:"title"`
	Kinds []torqueOut `json:"kinds"`
}

func TorqueFileJSON(c *words.Catalogue, title string, answers []figures.Answer) torqueFileOut {
	out := torqueFileOut{Title: title}
	for _, a := range answers {
		out.Kinds = append(out.Kinds, TorqueJSON(c, a))
	}
	return out
}
