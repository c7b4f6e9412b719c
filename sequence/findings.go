package sequence

import "drawdown/geometry/finding"

// Reasons why the fasteners of a joint cannot be ordered.
const (
	InTwoGroups  finding.Code = "fastener in two groups" // id
	InNoGroup    finding.Code = "fastener in no group"   // id
	NotOfGroup   finding.Code = "list names another"     // id: not of the group, or repeated
	NotInList    finding.Code = "list leaves out"        // id
	NoCastNumber finding.Code = "cast number missing"    // id
)

// unordered is a finding about one fastener.
func unordered(code finding.Code, id string) error {
	return finding.Failed(code, finding.Values{"id": id}).About(finding.Place{IDs: []string{id}})
}
