package run

import "drawdown/geometry/finding"

// What is wrong with an entry before any rule is asked.
const (
	EntryUnreadable finding.Code = "run entry unreadable"  //
	FieldUnknown    finding.Code = "run field unknown"     // field, allowed
	FieldType       finding.Code = "run field type"        // field
	FieldMissing    finding.Code = "run field missing"     // act, field
	ValueUnknown    finding.Code = "run value unknown"     // field, written, allowed
	TextTooLong     finding.Code = "run text too long"     // field, length, most
	NumberUnread    finding.Code = "run number unreadable" // field, written
	DayUnread       finding.Code = "run day unreadable"    // written
	NoSuchStep      finding.Code = "run no such step"      // step
	NoSuchFastener  finding.Code = "run no such fastener"  // id, allowed
	NoSuchStation   finding.Code = "run no such station"   // id, allowed
	NoSuchLabel     finding.Code = "run no such label"     // label, allowed
	NoSuchKind      finding.Code = "run no such kind"      // kind, allowed
	OnePlace        finding.Code = "run one place"         //
	StepNeedsName   finding.Code = "run step needs name"   // step, ids
	OfAJob          finding.Code = "run act of a job"      // act
)

// Why a rule refuses an entry.
const (
	RunSealed       finding.Code = "run sealed"              //
	RunVoid         finding.Code = "run void"                //
	IDUsed          finding.Code = "run entry id used"       //
	AcceptFirst     finding.Code = "run accept first"        // count
	AcceptedAlready finding.Code = "run accepted already"    //
	NotReady        finding.Code = "run not ready"           // needs
	PartOut         finding.Code = "run part out"            // to
	OutOfOrder      finding.Code = "run out of order"        // step, next, ids of next
	RoundsOpen      finding.Code = "run rounds open"         // step, stage, until
	StepDone        finding.Code = "run step done"           // step, ids
	AngleDone       finding.Code = "run angle done"          // step, ids, angle
	StepLeftOut     finding.Code = "run step left out"       // step, ids
	FastenerBlocked finding.Code = "run fastener blocked"    // id, trouble
	FastenerUnsure  finding.Code = "run fastener unsure"     // id, step
	StageBlocked    finding.Code = "run stage blocked"       // stage, id, trouble
	StepReplaced    finding.Code = "run step replaced"       // step, ids
	NotBegun        finding.Code = "run wait not begun"      // step, wait
	NotOver         finding.Code = "run wait not over"       // step, left
	BegunAlready    finding.Code = "run wait begun already"  // step
	NotAWait        finding.Code = "run not a wait"          // step
	NotAnAngle      finding.Code = "run not an angle"        // step
	UnsureAlready   finding.Code = "run unsure already"      // step, ids
	TroubleAlready  finding.Code = "run trouble already"     // id, trouble
	NoSuchEntry     finding.Code = "run no such entry"       // of
	NotUndone       finding.Code = "run cannot be undone"    // act
	UndoneAlready   finding.Code = "run undone already"      //
	LaterStepDone   finding.Code = "run later step done"     // id, later
	NotATrouble     finding.Code = "run not a trouble"       // act
	SettledAlready  finding.Code = "run settled already"     //
	NotWhileLoosen  finding.Code = "run not while loosening" // id
	NoRounds        finding.Code = "run no rounds"           //
	RoundOpen       finding.Code = "run round open"          // stage, round, next
	RoundOver       finding.Code = "run round over"          // stage
	TooManyRounds   finding.Code = "run too many rounds"     // stage, most
	OutOfRange      finding.Code = "run wrench range"        // wrench, torque, least, most
	SealSteps       finding.Code = "run seal steps"          // steps: count, first
	SealTroubles    finding.Code = "run seal troubles"       // count, ids
	SealRounds      finding.Code = "run seal rounds"         // stage
	SealWrench      finding.Code = "run seal wrench"         // stages
	SealSecond      finding.Code = "run seal second"         //
	ThreadDiffers   finding.Code = "run thread differs"      // id, thread: of the fastener, insert
)

// What is flagged and not refused.
const (
	ReadingOutside  finding.Code = "run reading outside"        // reading, torque, tolerance
	ReadingUnread   finding.Code = "run reading unread"         // reading
	WrenchUnknown   finding.Code = "run wrench unknown"         // wrench
	WrenchOutOfDate finding.Code = "run wrench out of date"     // wrench, calibrated
	StartedEarly    finding.Code = "run started early"          // before: what of the job comes first, reason
	ReadinessOpen   finding.Code = "run readiness not recorded" // needs
	CondemnedKept   finding.Code = "run condemned kept"         // id, trouble
	HoleRepaired    finding.Code = "run hole repaired"          // id, thread
	WaitLeftOut     finding.Code = "run wait left out"          // step, wait
	StepsLeftOut    finding.Code = "run steps left out"         // ids, steps
	GasketNotSaid   finding.Code = "run gasket not reported"    // gasket
	GasketMissing   finding.Code = "run gasket missing"         // gasket
	GasketLate      finding.Code = "run gasket late"            // gasket
	TorqueNoTool    finding.Code = "run torque without tool"    // count, stages
	AngleNoTool     finding.Code = "run angle without tool"     // count, stages
	Corrected       finding.Code = "run corrected"              // note
)

// What must be ready before tightening.
const (
	NeedKind     finding.Code = "run need kind"     // kind, count, ready
	NeedGasket   finding.Code = "run need gasket"   // count, gasket, ready
	NeedFastener finding.Code = "run need fastener" // id, kind; trouble, among: where there is one
	NeedHole     finding.Code = "run need hole"     // id
)
