package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/wrench"
)

var (
	threeClasses = []string{"8.8", "10.9", "A2-70"}
	someMetals   = []string{"steel", "grey cast iron"}
	aluminium    = finding.Term("cast aluminium")
	classNamed   = finding.Noted(strength.ClassNamed, finding.Values{"name": "10.9", "sort": "property"})
)

var _ = exampleOf(map[finding.Code]finding.Values{
	strength.NoClass:            {"thread": "M10×1.5", "allowed": threeClasses},
	strength.NoSuchClass:        {"written": "11", "thread": "M10×1.5", "allowed": threeClasses},
	strength.ClassNotInSize:     {"written": "9.8", "thread": "M20×2.5", "standard": "ISO 898-1:2013, table 3", "inch": false, "smallest": "M3", "largest": "M16", "allowed": threeClasses},
	strength.NoBoltsProofStress: {"written": "8 MPa", "stress": unit.Stress(8), "least": unit.Stress(100), "most": unit.Stress(2000)},
	strength.NoSuchMaterial:     {"written": "cheese", "allowed": someMetals},
	strength.NoPartsModulus:     {"written": "100 MPa", "modulus": unit.Stress(100), "least": unit.Stress(1e3), "most": unit.Stress(700e3)},
	strength.ShearUnknown:       {"material": finding.Term("70 GPa"), "allowed": someMetals},
	strength.NoTappedPart:       {"allowed": someMetals},
	strength.EngagementRange:    {"engagement": unit.Length(0), "thread": "M10×1.5", "most": unit.Length(100)},
	strength.BossTooThin:        {"boss": unit.Length(12), "thread": "M10×1.5", "least": unit.Length(14)},
	strength.InsertRange:        {"insert": unit.Length(9), "thread": "M10×1.5", "least": unit.Length(10), "most": unit.Length(30)},
	strength.InsertPitchRange:   {"pitch": unit.Length(-1), "insert": unit.Length(12), "most": unit.Length(3)},
	strength.NoPreload:          {"preload": unit.Force(-5)},
	strength.ClassNamed:         {"name": "10.9", "sort": "property"},
	strength.TensileAssumed:     {"tensile": unit.Stress(913), "ratio": 1.1},
	strength.ShearAssumed:       {"material": aluminium, "shear": unit.Stress(110), "source": finding.Term("VDI 2230-1:2015, table A9, AC-AlSi9Cu3")},
	strength.BossAssumed:        {},
	strength.InsertPitchAssumed: {"pitch": unit.Length(1.25)},
	strength.IdleTurnsAssumed:   {"length": unit.Length(1.2), "turns": 0.8},
	strength.YieldAssumed:       {"yield": unit.Stress(830)},
	strength.ProofAssumed:       {"standard": "ISO 3506-1", "share": 0.85},

	head.NoSuchForm:       {"written": "round", "allowed": []string{"hexagon", "socket", "flange"}},
	head.NoHexagon:        {"thread": "M9×1.25"},
	head.NoSocket:         {"thread": "M7×1", "allowed": []string{"M3", "M4", "M5"}},
	head.NoHeadOfForm:     {"thread": "M20×2.5", "form": finding.Term("flange"), "standard": "ISO 4162", "allowed": []string{"M5", "M6", "M8"}},
	head.SizeRange:        {"what": finding.Term("hole"), "size": unit.Length(50), "thread": "M10×1.5", "least": unit.Length(10), "most": unit.Length(40)},
	head.FaceNotWider:     {"face": unit.Length(14.63), "thread": "M10×1.5", "hole": unit.Length(15)},
	head.AcrossTellsNone:  {"across": unit.Length(16), "form": finding.Term("socket"), "hexagon": finding.Term("hexagon")},
	head.NoSuchWasher:     {"written": "wide", "allowed": []string{"none", "normal"}},
	head.NoStandardWasher: {"thread": "3/8-16 UNC"},
	head.LimitUnknown:     {"material": finding.Term("70 GPa"), "allowed": someMetals},
	head.NoPreload:        {"preload": unit.Force(0)},
	head.FaceAssumed:      {"face": unit.Length(14.63), "standard": "ISO 4014"},
	head.FaceOfAcross:     {"face": unit.Length(14.63), "across": unit.Length(16)},
	head.HoleAssumed:      {"hole": unit.Length(11), "standard": "ISO 273"},
	head.WasherAssumed:    {"outer": unit.Length(20), "thickness": unit.Length(2), "hole": unit.Length(10.5), "standard": "ISO 7089 M10", "hardness": "300 HV", "beyond": true},
	head.LimitAssumed:     {"material": aluminium, "limit": unit.Stress(220), "source": finding.Term("common practice")},

	screw.NoThread:           {},
	screw.SeveralAims:        {},
	screw.ProofShareRange:    {"share": 1.2},
	screw.YieldShareRange:    {"share": -0.1},
	screw.AimTooHigh:         {"preload": unit.Force(60e3), "thread": "M10×1.5", "class": classNamed, "most": unit.Force(48.2e3), "friction": 0.12},
	screw.NoAim:              {"preload": unit.Force(-1)},
	screw.NoTorque:           {"torque": unit.Torque(0)},
	screw.NoSuchEquation:     {"written": "long", "allowed": []string{"exact", "linear"}},
	screw.FactorWithFriction: {"factor": 0.2},
	screw.FactorRange:        {"factor": 0.01, "thread": "M10×1.5", "least": 0.024, "most": 1},
	screw.FactorUnreadable:   {"written": "much", "most": 1, "usual": 0.2},
	screw.ShareUnreadable:    {"written": "110%"},
	screw.FrictionUnreadable: {"written": "oil"},
	screw.FrictionRange:      {"low": 0.1, "high": 3., "span": true, "where": finding.Term("thread"), "least": unit.Written("0.01"), "most": unit.Written("1")},
	screw.FrictionFalls:      {"low": 0.2, "nominal": 0.1, "high": 0.3, "where": finding.Term("head")},
	screw.NoSuchLubricant:    {"written": "honey", "allowed": []string{"engine oil", "grease"}},
	screw.NoSuchMethod:       {"written": "guess", "allowed": []string{"torque", "angle"}},
	screw.YieldShareAssumed:  {"share": 0.9},
	screw.FrictionAssumed:    {"low": 0.08, "high": 0.16, "lubricant": finding.Term("engine oil"), "standard": "VDI 2230"},
	screw.AnyFrictionAssumed: {"low": 0.08, "high": 0.24},
	screw.ExactFriction:      {},
	screw.FrictionOfFactor:   {"friction": 0.133, "factor": 0.18},

	stiffness.NoGrip:             {},
	stiffness.LayerRange:         {"layer": 1, "thickness": unit.Length(0)},
	stiffness.LayerUnreadable:    {"written": "steel"},
	stiffness.LayerOfUnknown:     {"layer": 2, "why": finding.Failed(strength.NoSuchMaterial, finding.Values{"written": "cheese", "allowed": someMetals})},
	stiffness.TappedOfUnknown:    {"why": finding.Failed(strength.NoSuchMaterial, finding.Values{"written": "cheese", "allowed": someMetals})},
	stiffness.TooManyLayers:      {"layers": 61, "most": 50},
	stiffness.GripTooLong:        {"grip": unit.Length(9000), "thread": "M10×1.5", "most": unit.Length(2000)},
	stiffness.EngagementAlone:    {"engagement": unit.Length(15)},
	stiffness.EngagementNegative: {"engagement": unit.Length(-1)},
	stiffness.PartsTooNarrow:     {"reach": unit.Length(10), "hole": unit.Length(11)},
	stiffness.ThreadFromTooFar:   {"length": unit.Length(45), "from": unit.Length(23), "grip": unit.Length(14)},
	stiffness.BoltTooShort:       {"length": unit.Length(30), "grip": unit.Length(40)},
	stiffness.ShankDiameter:      {"section": 1, "diameter": unit.Length(3), "thread": "M10×1.5", "least": unit.Length(5), "most": unit.Length(20)},
	stiffness.ShankLength:        {"section": 1, "length": unit.Length(0)},
	stiffness.ShankTooLong:       {"shank": unit.Length(50), "grip": unit.Length(40)},
	stiffness.SnugRange:          {"snug": unit.Torque(-1)},
	stiffness.AngleRange:         {"angle": unit.Angle(4000), "most": unit.Angle(3600)},
	stiffness.NoPreload:          {"preload": unit.Force(0)},
	stiffness.WasherOnGrip:       {"thickness": unit.Length(2)},
	stiffness.LayerOfSteel:       {"layer": 1},
	stiffness.ModulusAssumed:     {"modulus": unit.Stress(205e3)},
	stiffness.WideAssumed:        {},
	stiffness.BoltAssumed:        {"length": unit.Length(120), "threaded": unit.Length(26), "free": unit.Length(1), "standard": "ISO 4014"},
	stiffness.FullThreadAssumed:  {"length": unit.Length(45), "from": unit.Length(23)},
	stiffness.EvenStretchAssumed: {"strain": 0.045},
	stiffness.SurfacesAssumed:    {},
	stiffness.LoadAlongAssumed:   {},

	wrench.NoTorque:          {"torque": unit.Torque(0)},
	wrench.AdapterRange:      {"adapter": unit.Length(9000), "most": unit.Length(3000)},
	wrench.AdapterAngleRange: {"angle": unit.Angle(400)},
	wrench.NoLength:          {"adapter": unit.Length(60), "most": unit.Length(3000)},
	wrench.LengthRange:       {"length": unit.Length(-5), "adapter": unit.Length(60), "most": unit.Length(3000)},
	wrench.LeverTooShort:     {"adapter": unit.Length(390), "angle": unit.Angle(180), "lever": unit.Length(10), "length": unit.Length(400)},
	wrench.NoneHasLength:     {"adapter": unit.Length(60), "names": []string{"small", "long"}},
	wrench.OfWrench:          {"name": "small", "why": finding.Failed(wrench.AdapterAngleRange, finding.Values{"angle": unit.Angle(400)})},
	wrench.RangeFalls:        {"name": "odd", "min": 50., "max": unit.GivenTorque{Value: 10}},
	wrench.DivisionRange:     {"name": "odd", "division": unit.GivenTorque{Value: 100}},
	wrench.NoneFits: {"torque": unit.Torque(400), "skipped": []string{"short"}, "least": 400., "most": unit.GivenTorque{Value: 2000}, "ranges": []finding.Finding{
		finding.Noted(wrench.OutOfRange, finding.Values{"name": "small", "least": unit.GivenTorque{Value: 12}, "most": unit.GivenTorque{Value: 60}, "setting": unit.GivenTorque{Value: 400}}),
	}},
	wrench.OutOfRange:    {"name": "small", "least": unit.GivenTorque{Value: 12}, "most": unit.GivenTorque{Value: 60}, "setting": unit.GivenTorque{Value: 400}},
	wrench.CoarseScale:   {"name": "long", "scale": unit.GivenTorque{Value: 10}, "torque": unit.Torque(11.5), "rounding": 0.15},
	wrench.HoldAtGrip:    {},
	wrench.LeftOut:       {"names": []string{"short"}},
	wrench.Breakaway:     {},
	wrench.ClickAssumed:  {"tolerance": 0.06, "small": true},
	wrench.PullTooGreat:  {"length": unit.Length(38), "torque": unit.GivenTorque{Value: 100}, "force": unit.Force(2632), "limit": unit.Force(1000)},
	wrench.LengthShort:   {"length": unit.Length(50), "torque": unit.GivenTorque{Value: 25}, "force": unit.Force(500), "limit": unit.Length(100)},
	wrench.LengthLong:    {"length": unit.Length(2400), "torque": unit.GivenTorque{Value: 25}, "force": unit.Force(10.4), "limit": unit.Length(1000)},
	wrench.UsableAssumed: {"name": "long", "least": unit.GivenTorque{Value: 68}},
})
