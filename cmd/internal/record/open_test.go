package record

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"drawdown/cmd/internal/record/sqlite"
	"drawdown/sequence/run"
)

// One process holds a folder: another start is refused until the first has
// ended, and finds the address that the first announced.
func TestOneProcessAFolder(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	at := Place{Folder: folder}
	s := opened(t, at)
	if err := s.Announce("http://127.0.0.1:8470/?key=K"); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(at); !errors.Is(err, InUse) {
		t.Fatal(err)
	}
	if got := Announced(folder); got != "http://127.0.0.1:8470/?key=K" {
		t.Error(got)
	}
	about, err := os.Stat(filepath.Join(folder, pageFile))
	if err != nil || about.Mode().Perm()&0o077 != 0 { // the address contains a key
		t.Error(about, err)
	}
	if _, err := Restore(at, "x", noon); err == nil {
		t.Error("restored while the folder is in use")
	}
	closed(t, s)
	if got := Announced(folder); got != "" {
		t.Error(got)
	}
	opened(t, at)
}

// The record can be read while it is written.
func TestReadWhileWritten(t *testing.T) { onEach(t, testReadWhileWritten) }

func testReadWhileWritten(t *testing.T, at Place) {
	s := small(t, at)
	r, err := OpenToRead(at)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	appended(t, s, "R1", run.Entry{ID: "late", Act: run.Remark, Who: "RA", Time: noon})
	kept, err := r.Entries("R1", 0)
	if err != nil || len(kept) != 3 {
		t.Error(kept, err)
	}
	if sound(t, r) != sound(t, s) {
		t.Error("two heads")
	}
	if _, err := r.read.Exec("DELETE FROM entry"); err == nil {
		t.Error("written by a reader")
	}
}

func TestNoStore(t *testing.T) {
	t.Parallel()
	folder := filepath.Join(t.TempDir(), "gone")
	for _, open := range []func(Place) (*Store, error){OpenToRead, OpenToWrite} {
		if _, err := open(Place{Folder: folder}); !errors.Is(err, NoStore) {
			t.Error(err)
		}
	}
	if _, err := os.Stat(folder); err == nil {
		t.Error("a folder was made")
	}
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(Place{Folder: filepath.Join(file, "below")}); !errors.Is(err, FolderNotMade) {
		t.Error(err)
	}
	other := t.TempDir()
	if err := os.WriteFile(filepath.Join(other, storeFile), []byte("a text that is no database, long enough to be looked at"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, open := range []func(Place) (*Store, error){OpenToRead, Open} {
		if _, err := open(Place{Folder: other}); !errors.Is(err, NotAStore) {
			t.Error(err)
		}
	}
}

// A store of a newer program is refused and stays unchanged; an older one is
// brought up to date with all its contents.
func TestSchemaVersions(t *testing.T) { onEach(t, testSchemaVersions) }

func testSchemaVersions(t *testing.T, at Place) {
	s := small(t, at)
	setVersion(t, s, 99)
	closed(t, s)
	for _, open := range []func(Place) (*Store, error){OpenToRead, Open} {
		if _, err := open(at); !errors.Is(err, NewerStore) {
			t.Error(err)
		}
	}
	if at.isFile() {
		if _, err := Restore(elsewhere(t, at), s.file, noon); !errors.Is(err, NewerStore) {
			t.Error(err)
		}
	}
	published := s.engine.Migrations()
	more := append(published[:len(published):len(published)], "ALTER TABLE entry ADD COLUMN later TEXT NOT NULL DEFAULT 'x';")
	s = withSchema(t, at, more)
	if err := s.openToWrite(); !errors.Is(err, NewerStore) {
		t.Fatal(err)
	}
	setVersion(t, s, len(published))
	s.closeFiles()
	s = withSchema(t, at, more)
	if err := s.startReading(); !errors.Is(err, OlderStore) {
		t.Error(err)
	}
	s = withSchema(t, at, more)
	if err := s.startWriting(); err != nil {
		t.Fatal(err)
	}
	var later string
	if err := s.read.QueryRow("SELECT later FROM entry WHERE n = 1").Scan(&later); err != nil || later != "x" {
		t.Error(later, err)
	}
	sound(t, s)
	closed(t, s)
	s = withSchema(t, at, append(more, "CREATE TABLE half (a integer); SELECT nothing FROM nowhere;"))
	if err := s.startWriting(); err == nil {
		t.Error("a migration that fails is taken")
	}
	s = withSchema(t, at, more) // it left nothing behind
	if err := s.startWriting(); err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := s.read.QueryRow("SELECT count(*) FROM half").Scan(&later); err == nil {
		t.Error("half a migration is left")
	}
	sound(t, s)
}

// otherSchema is an engine with another schema.
type otherSchema struct {
	engine
	steps []string
}

func (o otherSchema) Migrations() []string { return o.steps }

func withSchema(t *testing.T, at Place, steps []string) *Store {
	t.Helper()
	s, err := at.store()
	if err != nil {
		t.Fatal(err)
	}
	s.engine = otherSchema{s.engine, steps}
	return s
}

// setVersion sets another version of the schema.
func setVersion(t *testing.T, s *Store, version int) {
	t.Helper()
	if err := s.transaction(func(tx *sql.Tx) error { return s.engine.SetVersion(tx, version) }); err != nil {
		t.Fatal(err)
	}
}

// The default data folder: XDG Base Directory Specification. A user without a
// home may have one too.
func TestDefaultFolder(t *testing.T) {
	t.Setenv("HOME", "")
	t.Setenv("XDG_DATA_HOME", "/tmp/of-the-user")
	folder, err := DefaultFolder()
	if err != nil || folder != filepath.Join("/tmp/of-the-user", "drawdown") {
		t.Error(folder, err)
	}
}

// A backup made while entries come in is valid, and contains what was confirmed
// before it; when restored it replaces the store, which is kept aside.
func TestBackupAndRestore(t *testing.T) { onEach(t, testBackupAndRestore) }

func testBackupAndRestore(t *testing.T, at Place) {
	s := small(t, at)
	before := sound(t, s)
	stop, ended := make(chan bool), make(chan bool)
	go func() {
		defer close(ended)
		for i := 0; ; i++ {
			select {
			case <-stop:
				return
			default:
				s.Append("R1", run.Entry{ID: time.Now().String(), Act: run.Remark, Who: "RA", Time: noon}, nil)
			}
		}
	}()
	backup := filepath.Join(t.TempDir(), "a backup?#.db")
	err := s.Backup(backup)
	close(stop)
	<-ended
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Backup(backup); !errors.Is(err, BackupThere) {
		t.Error(err)
	}
	latest := sound(t, s)
	closed(t, s)

	fresh := elsewhere(t, at)
	if aside, err := Restore(fresh, backup, noon); aside != "" || err != nil {
		t.Fatal(aside, err)
	}
	r := opened(t, fresh)
	v, err := r.Verify(before.Hash)
	if err != nil || len(v.Faults) > 0 || v.Against != before.Place || v.Head.Place < before.Place {
		t.Error(v, err)
	}
	appended(t, r, "R1", run.Entry{ID: "goes on", Act: run.Remark, Who: "RA", Time: noon})
	closed(t, r)

	if !at.isFile() {
		return
	}
	aside, err := Restore(at, backup, noon)
	if err != nil || aside != filepath.Join(at.Folder, "before-restore-20261130-120000") {
		t.Fatal(aside, err)
	}
	if restored := opened(t, at); sound(t, restored) != v.Head {
		t.Error("another head than that of the backup")
	}
	if old := opened(t, Place{Folder: aside}); sound(t, old) != latest {
		t.Error("what was there before is not all kept")
	}
}

// A backup with a changed byte, a file of another type, and a missing file
// leave the store unchanged.
func TestRestoreChecksFirst(t *testing.T) {
	t.Parallel()
	folder, other := t.TempDir(), t.TempDir()
	at := Place{Folder: folder}
	s := small(t, at)
	head := sound(t, s)
	backup := filepath.Join(other, "backup.db")
	if err := s.Backup(backup); err != nil {
		t.Fatal(err)
	}
	closed(t, s)
	db, err := (sqlite.Engine{File: backup}).Open(false)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec("UPDATE entry SET body = replace(body, 'crack', 'track')"); err != nil {
		t.Fatal(err)
	}
	db.Close()
	text := filepath.Join(other, "text.db")
	if err := os.WriteFile(text, []byte("no store"), 0o600); err != nil {
		t.Fatal(err)
	}
	for file, want := range map[string]error{backup: BackupUnsound, text: NotAStore, filepath.Join(other, "gone.db"): NotAStore} {
		if _, err := Restore(at, file, noon); !errors.Is(err, want) {
			t.Errorf("%s: %v", file, err)
		}
	}
	if again := opened(t, at); sound(t, again) != head {
		t.Error("the store was changed")
	}
	left, err := filepath.Glob(filepath.Join(folder, "*restore*"))
	if len(left) > 0 || err != nil {
		t.Error("left behind", left, err)
	}
}
