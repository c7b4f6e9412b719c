package prediction

import "drawdown/geometry/finding"

// NothingTightens is a plan without a stage to predict.
const NothingTightens finding.Code = "forecast nothing tightens"
