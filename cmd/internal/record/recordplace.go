package record

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"

	"drawdown/cmd/internal/record/postgres"
	"drawdown/cmd/internal/record/sqlite"
	"drawdown/geometry/finding"
)

// Place is the place of a record: a file in a data folder, which only one
// process at a time holds, or a database that several processes share.
type Place struct {
	Folder  string // of this process: the record's file, the address of its page; may be empty with a database
	Address string // postgres://…; empty: the record is in a file
}

// CheckAddress reports an invalid address of a database.
func CheckAddress(address string) error {
	switch _, err := postgres.At(address); {
	case err == nil:
		return nil
	case errors.Is(err, postgres.ErrAddress):
		return finding.Failed(BadAddress, nil)
	default:
		return finding.Failed(BadAddress, finding.Values{"why": err})
	}
}

// Name returns the name of the place: the folder, or the database without its
// password.
func (at Place) Name() string {
	if s, err := at.store(); err == nil {
		return s.name
	}
	return at.Folder
}

// isFile reports whether the record is in a file of the folder.
func (at Place) isFile() bool { return at.Address == "" }

// store returns the record of a place, not yet opened.
func (at Place) store() (*Store, error) {
	if !at.isFile() {
		return at.shared()
	}
	folder, err := filepath.Abs(at.Folder)
	if err != nil {
		return nil, finding.Failed(FolderNotMade, finding.Values{"folder": at.Folder, "why": err})
	}
	s := inFile(filepath.Join(folder, storeFile))
	s.folder, s.name = folder, at.Folder
	return s, nil
}

// shared returns the record in a database.
func (at Place) shared() (*Store, error) {
	if err := CheckAddress(at.Address); err != nil {
		return nil, err
	}
	e, err := postgres.At(at.Address)
	return &Store{engine: e, shared: &e, folder: at.Folder, name: e.Name(), file: e.Name()}, err
}

// inFile returns the record in a file.
func inFile(file string) *Store {
	return &Store{engine: sqlite.Engine{File: file}, name: filepath.Dir(file), file: file}
}

// make makes what the record needs on this computer.
func (at Place) make() error {
	if at.Folder == "" && !at.isFile() {
		return nil
	}
	folder, err := made(at.Folder)
	if err == nil && at.isFile() {
		err = local(folder)
	}
	return err
}

// there reports an error if a place has no record.
func (at Place) there() error {
	if !at.isFile() {
		return nil // checked when it is reached
	}
	if _, err := os.Stat(filepath.Join(at.Folder, storeFile)); err != nil {
		return finding.Failed(NoStore, finding.Values{"folder": at.Folder})
	}
	return nil
}

// hasRecord refuses a database without a record.
func (s *Store) hasRecord(tx *sql.Tx) error {
	version, err := s.versionOf(tx)
	switch {
	case err != nil || version > 0:
		return err
	case s.shared != nil:
		return finding.Failed(NoRecordThere, finding.Values{"name": s.name})
	}
	return s.notAStore(errors.New("no record"))
}
