// Package sequencetest has an example of every finding about calculations:
// orders, stages, figures, predictions, runs. Only tests import it.
package sequencetest

import (
	"maps"

	"drawdown/geometry/finding"
)

// Examples are values of findings as they come up, by subject in the files
// beside this.
var Examples = map[finding.Code]finding.Values{}

func exampleOf(list map[finding.Code]finding.Values) bool {
	maps.Copy(Examples, list)
	return true
}
