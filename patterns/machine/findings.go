package machine

import "drawdown/geometry/finding"

// Findings about machine files.
const (
	IsPattern       finding.Code = "machine is pattern"       //
	TooManySteps    finding.Code = "machine too many steps"   // count, most
	NoJoint         finding.Code = "machine no joint"         // example
	NoJointName     finding.Code = "machine no joint name"    // found
	JointTwice      finding.Code = "machine joint twice"      // name, line
	PartIsJoint     finding.Code = "machine part is joint"    // name, key
	PartTwice       finding.Code = "machine part twice"       // name, line
	OtherMachine    finding.Code = "machine other machine"    // joint, machine, own
	GasketUnlisted  finding.Code = "machine gasket unlisted"  // joint, gasket: kind of it
	NoPattern       finding.Code = "machine no pattern"       // name, meant, allowed
	NoteOfOneSide   finding.Code = "machine note of one side" // key, example
	OfJoints        finding.Code = "machine of joints"        // key, owner
	OfParts         finding.Code = "machine of parts"         // key, owner
	TextOfJoint     finding.Code = "machine text of joint"    // why: what its text says against the joint, title
	JointUnreadable finding.Code = "machine joint unreadable" // name, why
)
