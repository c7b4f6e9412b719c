package figures

import "drawdown/geometry/finding"

// Findings about the figures of a bolt. bolt is a BoltNamed. A range of figures
// has only most if both ends are equal.
const (
	AtStage   finding.Code = "figures at stage" // stage, kind, why
	AtKind    finding.Code = "figures at kind"  // kind, why
	BoltNamed finding.Code = "figures bolt"     // thread, class, strongest

	TorqueOver           finding.Code = "torque over yield"      // torque, times, some, bolt, yields, fails
	TorquePastYield      finding.Code = "torque past yield"      // torque, thread, head: friction; yield, break, breaks, borne
	TorqueOneFriction    finding.Code = "torque one friction"    // as torque past yield, stated: the friction; class: of it, low, high
	TorqueGalls          finding.Code = "torque galls"           //
	TorqueHardlyAny      finding.Code = "torque hardly any"      // torque, share, bolt, yields
	TorqueUsedOnce       finding.Code = "torque used once"       // torque, share: the most of the yield stress
	TorqueByTool         finding.Code = "torque by tool"         // torque, most: by hand
	TorqueBreaks         finding.Code = "torque breaks"          // torque, bolt, yield, break
	YieldTorques         finding.Code = "torque yields"          // least, most, rests, lubricant
	TurnRests            finding.Code = "turn rests"             // open
	TurnWhole            finding.Code = "turn over a whole"      // angle, snug, turn, lacks: what is missing to calculate it
	TurnBreaks           finding.Code = "turn breaks"            // angle, snug, bolt, grip, least, most, rests
	TurnNecks            finding.Code = "turn necks"             // angle, snug, bolt, grip, least, most, rests
	TurnUsesUp           finding.Code = "turn uses up"           // angle, snug, bolt, grip, least, most, rests, share
	TurnUsedAgain        finding.Code = "turn used again"        // angle, snug, bolt, grip, least, most, rests, reuse
	TurnUsedOnce         finding.Code = "turn used once"         // lasting, strain
	TurnMeasured         finding.Code = "turn measured"          // lasting
	SnugBreaks           finding.Code = "snug breaks"            // snug, thread, head: friction, if not at every friction
	SnugOverAim          finding.Code = "snug over aim"          // snug, preload, aim
	TwoWrenches          finding.Code = "wrenches two"           // low, high, stage of high, from, usable
	GripUnfit            finding.Code = "grip unfit"             // why
	LengthShort          finding.Code = "length short"           // length, grip
	LengthLeaves         finding.Code = "length leaves"          // length, left, grip, engagement
	LengthPlain          finding.Code = "length plain"           // length, threaded, plain, grip
	LengthBeyond         finding.Code = "length beyond"          // length, left, engagement
	LengthBeyondNut      finding.Code = "length beyond nut"      // length, left, engagement: of a stud
	LengthNut            finding.Code = "length nut"             // length, left, engagement: of a stud, needed, nuts
	AcrossOdd            finding.Code = "across flats odd"       // of: head or nut, across, thread, least, most
	AcrossOfOther        finding.Code = "across flats of other"  // across, thread, own: its usual width, other: the thread that has it
	FrictionOdd          finding.Code = "friction odd"           // friction, least, most
	FrictionOfOther      finding.Code = "friction of another"    // friction, lubricant, low, high
	TurnHardlyAny        finding.Code = "turn hardly any"        // angle, least
	EngagementFails      finding.Code = "engagement fails"       // engagement, material, holds, preload, needed
	EngagementFirst      finding.Code = "engagement first"       // first, needed, material
	EngagementOpen       finding.Code = "engagement open"        // material
	HoleTooSmall         finding.Code = "hole too small"         // size, hole
	HoleWithoutClearance finding.Code = "hole without clearance" // size, hole, usual, standard
	HoleOfLarger         finding.Code = "hole of larger"         // size, hole, usual, standard; larger: thread; across: of a head, where it is that of this thread too
	HeadUnfit            finding.Code = "head unfit"             // why
	PressureTooHigh      finding.Code = "pressure too high"      // washer, pressure, material, limit, face
	PressureAnywhere     finding.Code = "pressure anywhere"      // face, across, form: of the head; hole, pressure, preload, limit
	SettlesMuch          finding.Code = "settlement much"        // flattens, share
	AtWorkedOut          finding.Code = "figures at worked out"  // torque, why
	StiffnessLeftOut     finding.Code = "stiffness left out"     // why
	FaceUsual            finding.Code = "figures face usual"     // face, thread
	StretchPastYield     finding.Code = "stretch past yield"     // stretch, bolt, grip, yield and most: stretches
	StretchBreaks        finding.Code = "stretch breaks"         // as stretch past yield
	SameTemperature      finding.Code = "assumed temperature"    // kelvin: warmer, grown, preload
	PlainAssumed         finding.Code = "assumed plain"          // waist, yield, break: torques with it, at the friction
	LubricantOpen        finding.Code = "lubricant open"         // low, high: friction
	LubricantDiffers     finding.Code = "lubricant differs"      // lubricant, other, kind, thread, class
)

// What a range of torques depends on.
const (
	restsOnFriction  = "friction"
	restsOnLubricant = "lubricant"
	restsOnNothing   = "nothing"
)

// What an angle was calculated for if the bolt leaves it open.
const (
	openAll   = "all"   // thread over the whole grip and parts of aluminium
	openShank = "shank" // thread over the whole grip
	asMade    = "made"  // the shank as the standard makes it
	openWaist = "waist" // waist over the whole grip
	openParts = "parts" // parts of aluminium, thread as stated
	ofSteel   = "steel" // parts of steel, thread as stated
	asStated  = "stated"
)
