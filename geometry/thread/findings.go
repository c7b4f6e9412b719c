package thread

import "drawdown/geometry/finding"

// Reasons why a name is not a thread.
const (
	Unreadable        finding.Code = "thread unreadable"       // written, why
	NoThread          finding.Code = "thread no name"          // nothing like a thread
	LeftHand          finding.Code = "thread left hand"        //
	NoInchSize        finding.Code = "thread no inch size"     // written
	NoUnifiedThread   finding.Code = "thread not unified"      // wanted, allowed
	HalfUnifiedThread finding.Code = "thread half unified"     // wanted, allowed
	NoNumberedSize    finding.Code = "thread no numbered size" // number, allowed
	NoUnifiedSize     finding.Code = "thread no unified size"  // size, allowed
	NoMetricSize      finding.Code = "thread no metric size"   // size, allowed
	NoSuchPitch       finding.Code = "thread no such pitch"    // pitch, size, coarse, fine
)
