package report

import "drawdown/geometry/finding"

// Texts of a prediction, besides its figures.
const (
	PredictPass      finding.Code = "predict column pass"
	PredictLeast     finding.Code = "predict column least"
	PredictMean      finding.Code = "predict column mean"
	PredictMost      finding.Code = "predict column most"
	PredictSD        finding.Code = "predict column sd"
	PredictOrder     finding.Code = "predict column order"
	PredictLowest    finding.Code = "predict lowest"
	PredictNoneLow   finding.Code = "predict none low"
	PredictBehaves   finding.Code = "predict behaves"
	PredictTargets   finding.Code = "predict targets"        // cap
	PredictScatter   finding.Code = "predict scatter"        // draws, seed
	PredictSDs       finding.Code = "predict scatter sd"     // friction, elastic, both
	PredictOfJoint   finding.Code = "predict scatter lowest" // ends
	PredictOfBolt    finding.Code = "predict scatter bolt"   // bolt, ends, elastic
	PredictSheetsNot finding.Code = "predict sheets lack scatter"
)
