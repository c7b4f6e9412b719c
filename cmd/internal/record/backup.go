package record

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"drawdown/cmd/internal/record/sqlite"
	"drawdown/geometry/finding"
)

// Backup writes the whole record in its present state to a new file, even while
// the record is being written. The file is checked before it gets its name.
func (s *Store) Backup(file string) error {
	if _, err := os.Stat(file); !errors.Is(err, fs.ErrNotExist) {
		return finding.Failed(BackupThere, finding.Values{"file": file})
	}
	part := file + ".part"
	os.Remove(part) // of a killed backup
	defer os.Remove(part)
	if err := s.copyTo(part); err != nil {
		return notCopied(err, file)
	}
	if err := errors.Join(checkFile(part), syncFile(part)); err != nil {
		return err
	}
	if err := os.Rename(part, file); err != nil {
		return notCopied(err, file)
	}
	return nil
}

// copyTo writes all of the record to a new file.
func (s *Store) copyTo(file string) error {
	if s.Shared() {
		return s.copyTables(file)
	}
	db, err := s.engine.Open(false)
	if err != nil {
		return s.notAStore(err)
	}
	defer db.Close()
	return sqlite.Copy(db, file)
}

// notCopied states why a file could not be written.
func notCopied(err error, file string) error { return inFile(file).notKept(err) }

// checkFile verifies a store in a separate file.
func checkFile(file string) error {
	s := inFile(file)
	if err := s.openToRead(); err != nil {
		return err
	}
	defer s.read.Close()
	if err := s.snapshot(s.hasRecord); err != nil {
		return err
	}
	verdict, err := s.Verify("")
	if err != nil {
		return s.notAStore(err)
	}
	if len(verdict.Faults) > 0 {
		return finding.Failed(BackupUnsound, finding.Values{"file": file, "faults": verdict.Faults})
	}
	return nil
}

func syncFile(path string) error {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(file.Sync(), file.Close())
}

// Restore replaces the record by a backup. The backup is checked first. In a
// folder the previous record is kept aside, in a folder whose path is returned
// (empty if there was none); no other process may hold the folder. In a
// database there may be no previous record.
func Restore(at Place, backup string, now time.Time) (aside string, err error) {
	if _, err := os.Stat(backup); err != nil {
		return "", finding.Failed(NotAStore, finding.Values{"file": backup, "why": err})
	}
	if err := at.make(); err != nil {
		return "", err
	}
	if !at.isFile() {
		return "", restoreTables(at, backup)
	}
	return restoreFile(at.Folder, backup, now)
}

func restoreFile(folder, backup string, now time.Time) (aside string, err error) {
	place := filepath.Join(folder, storeFile)
	lock, err := locked(folder)
	if err != nil {
		return "", err
	}
	defer lock.Close()
	fresh := place + ".restored"
	defer os.Remove(fresh)
	if err := copyFile(backup, fresh); err != nil {
		return "", inFile(place).notKept(err)
	}
	if err := checkFile(fresh); err != nil {
		return "", named(err, backup)
	}
	if aside, err = keepAside(folder, now); err != nil {
		return "", inFile(place).notKept(err)
	}
	if err := os.Rename(fresh, place); err != nil {
		return "", inFile(place).notKept(err)
	}
	return aside, nil
}

// named replaces the name of a copy by that of the requested file.
func named(err error, file string) error {
	if found, ok := errors.AsType[finding.Finding](err); ok && found.Values["file"] != nil {
		found.Values["file"] = file
		return found
	}
	return err
}

// beside lists the files that SQLite keeps beside a store in use.
var beside = []string{"-wal", "-shm"}

// keepAside copies the record and its other files into a separate folder,
// damaged or not.
func keepAside(folder string, now time.Time) (aside string, err error) {
	place := filepath.Join(folder, storeFile)
	if _, err := os.Stat(place); errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if db, err := (sqlite.Engine{File: place}).Open(false); err == nil {
		sqlite.Engine{}.Forget(db) // if it fails, the log is copied
		db.Close()
	}
	aside = filepath.Join(folder, now.Format("before-restore-20060102-150405"))
	if err := os.MkdirAll(aside, 0o700); err != nil {
		return "", err
	}
	for _, ending := range append([]string{""}, beside...) {
		err := copyFile(place+ending, filepath.Join(aside, storeFile+ending))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return "", err
		}
	}
	for _, ending := range beside { // they would be taken for those of the restored file
		os.Remove(place + ending)
	}
	return aside, nil
}

// copyFile copies a file and waits for the disk.
func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Sync(), out.Close())
}
