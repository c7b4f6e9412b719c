package record

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"

	"drawdown/cmd/internal/record/postgres"
	"drawdown/geometry/finding"
)

// Store is an open record.
type Store struct {
	engine engine
	shared *postgres.Engine // nil: no other process uses the record
	folder string           // of this process
	name   string           // of the record in errors: its folder, or the database
	file   string           // its file, or the database
	lock   *os.File
	read   *sql.DB
	write  *sql.DB // one connection; nil: opened to read

	entries chan *waiting
	ended   chan struct{} // closed when the writer has ended
	losses  int           // of the writer: how often work that it began was not kept
}

// forever is for what ends with its connection.
var forever = context.Background()

// Open opens a record for writing, and makes it on first use. It refuses a
// store of a newer program, and a folder that another process holds or that is
// on a network file system. The caller must close the result.
func Open(at Place) (*Store, error) {
	if err := at.make(); err != nil {
		return nil, err
	}
	s, err := at.store()
	if err != nil {
		return nil, err
	}
	if s.folder != "" {
		if s.lock, err = locked(s.folder); err != nil {
			return nil, err
		}
	}
	return s, s.startWriting()
}

// startWriting brings a store up to date and starts its writer.
func (s *Store) startWriting() error {
	if err := s.openToWrite(); err != nil {
		s.closeFiles()
		return err
	}
	s.entries, s.ended = make(chan *waiting, mostAtOnce), make(chan struct{})
	go s.writeEntries()
	return nil
}

func (s *Store) openToWrite() (err error) {
	if s.write, err = s.engine.Open(false); err != nil {
		return s.notAStore(err)
	}
	if err := s.migrate(); err != nil {
		return err
	}
	if err := s.openToRead(); err != nil {
		return err
	}
	return s.begin()
}

func (s *Store) openToRead() (err error) {
	if s.read, err = s.engine.Open(true); err != nil {
		return s.notAStore(err)
	}
	return nil
}

// OpenToWrite opens an existing record; it makes none.
func OpenToWrite(at Place) (*Store, error) {
	if !at.isFile() { // the folder of a file is not made, and an old file is brought up to date
		s, err := OpenToRead(at)
		if err != nil && !errors.Is(err, OlderStore) {
			return nil, err
		}
		s.Close()
	}
	if err := at.there(); err != nil {
		return nil, err
	}
	return Open(at)
}

// OpenToRead opens an existing record, even while other processes write it.
func OpenToRead(at Place) (*Store, error) {
	if err := at.there(); err != nil {
		return nil, err
	}
	if at.isFile() {
		if err := local(at.Folder); err != nil {
			return nil, err
		}
	}
	s, err := at.store()
	if err != nil {
		return nil, err
	}
	return s, s.startReading()
}

// startReading opens a store that is up to date.
func (s *Store) startReading() error {
	err := s.openToRead()
	if err == nil {
		err = s.checkVersion()
	}
	if err != nil {
		s.closeFiles()
	}
	return err
}

// checkVersion refuses a store that cannot be read in its present version.
func (s *Store) checkVersion() error {
	return s.snapshot(func(tx *sql.Tx) error {
		if s.Shared() {
			if err := s.hasRecord(tx); err != nil {
				return err
			}
		}
		version, err := s.versionOf(tx)
		if err == nil && version < len(s.engine.Migrations()) {
			return finding.Failed(OlderStore, finding.Values{"folder": s.name})
		}
		return err
	})
}

// Close ends the writer once all waiting work is written, and releases the
// folder.
func (s *Store) Close() error {
	if s.entries != nil {
		close(s.entries)
		<-s.ended
	}
	return s.closeFiles()
}

// closeFiles closes whatever is open.
func (s *Store) closeFiles() (err error) {
	for _, db := range []*sql.DB{s.read, s.write} {
		if db != nil {
			err = errors.Join(err, db.Close())
		}
	}
	if s.lock != nil {
		os.Remove(filepath.Join(s.folder, pageFile))
		err = errors.Join(err, s.lock.Close())
	}
	return err
}

// away reports that the database cannot be reached.
func (s *Store) away(err error) error {
	return finding.Failed(Away, finding.Values{"name": s.name, "why": s.engine.Why(err)})
}

// notAStore states why the opened file or database is no record.
func (s *Store) notAStore(err error) error {
	switch {
	case errors.Is(err, postgres.ErrNoSync):
		return finding.Failed(NoSync, finding.Values{"name": s.name})
	case s.engine.IsAway(err):
		return s.away(err)
	}
	return finding.Failed(NotAStore, finding.Values{"file": s.file, "why": err})
}

// notKept states why something could not be written.
func (s *Store) notKept(err error) error {
	if found, ok := errors.AsType[finding.Finding](err); ok {
		return found
	}
	switch {
	case s.engine.IsFull(err):
		return finding.Failed(DiskFull, finding.Values{"folder": s.name})
	case s.engine.IsAway(err):
		return s.away(err)
	}
	return finding.Failed(NotKept, finding.Values{"why": err})
}

// notRead states why something could not be read.
func (s *Store) notRead(err error) error {
	if found, ok := errors.AsType[finding.Finding](err); ok {
		return found
	}
	if s.engine.IsAway(err) {
		return s.away(err)
	}
	return finding.Failed(NotReadBack, finding.Values{"why": err})
}
