package files

import (
	"errors"
	"io/fs"
	"os"

	"drawdown/geometry/finding"
)

// Findings about files and folders.
const (
	NotAFolder     finding.Code = "folder is a file"       // file
	FolderNotMade  finding.Code = "folder not made"        // folder, why
	FolderNotNamed finding.Code = "folder not named"       //
	LooksLikeFile  finding.Code = "folder looks like file" // file
	IsFolder       finding.Code = "file is a folder"       // file
	NotRegular     finding.Code = "file not regular"       // file
	ReadOnly       finding.Code = "file read-only"         // file
	NameTooLong    finding.Code = "name too long"          // name
	NotWritten     finding.Code = "file not written"       // file, why
	NotRead        finding.Code = "file not read"          // file, why
	NoFile         finding.Code = "file missing"           // file; builtin: the pattern of its name
	BehindFile     finding.Code = "file behind a file"     // file, above: which is no folder
)

// Reason returns the system's reason, without the path.
func Reason(err error) error {
	if in, ok := errors.AsType[*fs.PathError](err); ok {
		return in.Err
	}
	if in, ok := errors.AsType[*os.LinkError](err); ok {
		return in.Err
	}
	return err
}
