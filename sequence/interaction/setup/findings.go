package setup

import "drawdown/geometry/finding"

// Reasons why a joint cannot be completed.
const (
	NotRound           finding.Code = "joint is no round flange"
	NoEdge             finding.Code = "joint has no gasket along the edge"
	PartUnknown        finding.Code = "joint part unknown"        // why
	CounterpartUnknown finding.Code = "joint counterpart unknown" // why
	ThicknessUnknown   finding.Code = "joint thickness unknown"
	FlexibilityUnknown finding.Code = "joint bolt flexibility unknown" // why
	StiffnessUnknown   finding.Code = "joint stiffness unknown"        // kind, why
	NotRising          finding.Code = "joint band not rising"          // what, low, nominal, high
)
