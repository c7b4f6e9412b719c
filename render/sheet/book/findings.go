package book

import "drawdown/geometry/finding"

// OfJoint is what one of the papers of a joint tells.
const OfJoint finding.Code = "book joint" // joint, what
