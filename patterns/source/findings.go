package source

import (
	"io/fs"

	"drawdown/geometry/finding"
)

// Reasons why a name is no readable file.
const (
	NotThere  finding.Code = "reader no such file"   // sort, name, meant, all
	OtherSort finding.Code = "reader other sort"     // sort, name: a machine's name for a pattern, or the other way round
	IsFolder  finding.Code = "reader folder"         // sort, path
	NoFile    finding.Code = "reader not a file"     // path: a device, a pipe
	TooLarge  finding.Code = "reader file too large" // path, most: in MB
)

// nameError is a name that the user has to correct: the finding, and the error
// of package fs that it counts as.
type nameError struct {
	found finding.Finding
	as    error
}

func misnamed(code finding.Code, as error, values finding.Values) error {
	return &nameError{finding.Failed(code, values), as}
}

// folder reports a path to a folder where a file of the sort is wanted.
func folder(sort, path string) error {
	return misnamed(IsFolder, fs.ErrInvalid, finding.Values{"sort": sort, "path": path})
}

func (e *nameError) Error() string   { return e.found.Error() }
func (e *nameError) Unwrap() []error { return []error{e.found, e.as} }
