package record

import (
	"os"
	"path/filepath"

	"drawdown/cmd/internal/record/sqlite"
	"drawdown/geometry/finding"
)

// Place says where a record is.
type Place struct {
	Folder string // of this process, with the record's file
}

// store is the record of a place before it is opened.
func (at Place) store() (*Store, error) {
	folder, err := filepath.Abs(at.Folder)
	if err != nil {
		return nil, finding.Failed(FolderNotMade, finding.Values{"folder": at.Folder, "why": err})
	}
	s := inFile(filepath.Join(folder, storeFile))
	s.folder, s.name = folder, at.Folder
	return s, nil
}

// inFile is the record in a file.
func inFile(file string) *Store {
	return &Store{engine: sqlite.Engine{File: file}, name: filepath.Dir(file), file: file}
}

// make makes what the record needs on this computer.
func (at Place) make() error {
	folder, err := made(at.Folder)
	if err != nil {
		return err
	}
	return local(folder)
}

// there says that there is no record in a place.
func (at Place) there() error {
	if _, err := os.Stat(filepath.Join(at.Folder, storeFile)); err != nil {
		return finding.Failed(NoStore, finding.Values{"folder": at.Folder})
	}
	return nil
}

// isFile reports whether the record is in a file of the folder.
func (at Place) isFile() bool { return true }
