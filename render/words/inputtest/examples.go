// Package inputtest has an example of every finding about input: patterns,
// machines, drawings, tables, surveys, pictures. Only tests import it.
package inputtest

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
