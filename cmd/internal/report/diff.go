package report

import (
	"drawdown/geometry/finding"
	"drawdown/render/words"
)

// differencesOut is the output of diff --json.
type differencesOut struct {
	Same        bool     `json:"same"`
	Differences []Found  `json:"differences"`
	Files       []string `json:"files"`
}

// DifferencesJSON returns the differences between two revisions as data, with
// the files that show them.
func DifferencesJSON(c *words.Catalogue, found []finding.Finding, written []string) differencesOut {
	return differencesOut{len(found) == 0, foundJSON(c, found...), Listed(written)}
}
