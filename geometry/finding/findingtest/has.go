// Package findingtest looks for findings in a list. Tests alone import it.
package findingtest

import (
	"slices"

	"drawdown/geometry/finding"
)

// Has says whether a list has a finding with the code.
func Has(list []finding.Finding, code finding.Code) bool {
	return slices.ContainsFunc(list, func(f finding.Finding) bool { return f.Code == code })
}
