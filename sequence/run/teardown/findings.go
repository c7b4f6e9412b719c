package teardown

import "drawdown/geometry/finding"

// Reasons why an entry on a job is refused.
const (
	ActOfARun      finding.Code = "job act of a run"      // act, allowed
	JobClosed      finding.Code = "job closed"            //
	NoPartStep     finding.Code = "job no such part"      // step
	PartDone       finding.Code = "job part done"         // step
	PartOutOfOrder finding.Code = "job part out of order" // step, next
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
)
