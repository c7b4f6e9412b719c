package teardown

import "drawdown/geometry/finding"

// Reasons why an entry on a job is refused.
const (
	ActOfARun      finding.Code = "job act of a run"      // act, allowed
	JobClosed      finding.Code = "job closed"            //
	NoPartStep     finding.Code = "job no such part"      // step
	PartDone       finding.Code = "job part done"         // step
	PartOutOfOrder finding.Code = "job part out of order" // step, next, what
	NoSuchEntry    finding.Code = "job no such entry"     // of
	UndoneAlready  finding.Code = "job undone already"    //
	NotUndone      finding.Code = "job cannot be undone"  // act
	LaterPartDone  finding.Code = "job later part done"   // step
	NothingNewer   finding.Code = "job nothing newer"     //
	NoSuchJoint    finding.Code = "job no such joint"     // joint, allowed
	NoSuchPlace    finding.Code = "job no such place"     // place, joint: empty for the whole job
	WhichJoint     finding.Code = "job which joint"       // place, what: of a value, allowed
	PartFitted     finding.Code = "job part fitted"       // part: it is in, or back in
	PartOut        finding.Code = "job part out"          // part, to
	NotSentOut     finding.Code = "job not sent out"      //
	PartsOut       finding.Code = "job parts out"         // parts
	RunsOpen       finding.Code = "job runs open"         // runs
	PointsOpen     finding.Code = "job points open"       // count, points: findings
	NoSuchPoint    finding.Code = "job no such point"     // of
	NoReason       finding.Code = "job no reason"         //
	FittedAlready  finding.Code = "job fitted already"    // what
)

// What is open or outside its limits when a job is closed.
const (
	LinesOpen     finding.Code = "job lines open"     // list: teardown or rebuild, count, first, joints: by title, where some are open
	NeverLoosened finding.Code = "job never loosened" // joint: tightened
	NotReady      finding.Code = "job not ready"      // what, ready, count: 0 where it is not counted
	NotFitted     finding.Code = "job not fitted"     // what, count: 0 where it is not counted
	NoReplacement finding.Code = "job no replacement" // id, trouble, joint
	HoleOpen      finding.Code = "job hole open"      // id, joint
	ValueOutside  finding.Code = "job value outside"  // joint, finding
	NotMeasured   finding.Code = "job not measured"   // measure, joint, taken, places: 0 where it has none
)
