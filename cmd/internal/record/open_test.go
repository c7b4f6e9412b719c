package record

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"drawdown/sequence/run"
)

// One process has a folder: another start is refused until the first has ended,
// and finds the address that it left.
func TestOneProcessAFolder(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	s := opened(t, folder)
	if err := s.Announce("http://127.0.0.1:8470/?key=K"); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(folder); !errors.Is(err, InUse) {
		t.Fatal(err)
	}
	if got := Announced(folder); got != "http://127.0.0.1:8470/?key=K" {
		t.Error(got)
	}
	about, err := os.Stat(filepath.Join(folder, pageFile))
	if err != nil || about.Mode().Perm()&0o077 != 0 { // the address holds a key
		t.Error(about, err)
	}
	if _, err := Restore(folder, "x", noon); err == nil {
		t.Error("restored while the folder is in use")
	}
	closed(t, s)
	if got := Announced(folder); got != "" {
		t.Error(got)
	}
	opened(t, folder)
}

// It can be read while it is written.
func TestReadWhileWritten(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	s := small(t, folder)
	r, err := OpenToRead(folder)
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
	for _, open := range []func(string) (*Store, error){OpenToRead, OpenToWrite} {
		if _, err := open(folder); !errors.Is(err, NoStore) {
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
	if _, err := Open(filepath.Join(file, "below")); !errors.Is(err, FolderNotMade) {
		t.Error(err)
	}
	other := t.TempDir()
	if err := os.WriteFile(filepath.Join(other, storeFile), []byte("a text that is no database, long enough to be looked at"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, open := range []func(string) (*Store, error){OpenToRead, Open} {
		if _, err := open(other); !errors.Is(err, NotAStore) {
			t.Error(err)
		}
	}
}

// A store of a newer program is refused and stays as it is; one that is older is
// brought up to date with all that is in it.
func TestSchemaVersions(t *testing.T) {
	folder := t.TempDir()
	closed(t, small(t, folder))
	file := filepath.Join(folder, storeFile)
	set := func(version string) {
		db, err := sql.Open("sqlite", file)
		if err != nil {
			t.Fatal(err)
		}
		defer db.Close()
		if _, err := db.Exec("PRAGMA user_version = " + version); err != nil {
			t.Fatal(err)
		}
	}
	set("99")
	for _, open := range []func(string) (*Store, error){OpenToRead, Open} {
		if _, err := open(folder); !errors.Is(err, NewerStore) {
			t.Error(err)
		}
	}
	if _, err := Restore(t.TempDir(), file, noon); !errors.Is(err, NewerStore) {
		t.Error(err)
	}
	set("1")
	published := migrations
	defer func() { migrations = published }()
	migrations = append(published[:1:1], "ALTER TABLE entry ADD COLUMN later TEXT NOT NULL DEFAULT 'x';")
	if _, err := OpenToRead(folder); !errors.Is(err, OlderStore) {
		t.Error(err)
	}
	s := opened(t, folder)
	var later string
	if err := s.read.QueryRow("SELECT later FROM entry WHERE n = 1").Scan(&later); err != nil || later != "x" {
		t.Error(later, err)
	}
	sound(t, s)
	migrations = append(migrations, "CREATE TABLE half (a); SELECT nothing FROM nowhere;")
	closed(t, s)
	if _, err := Open(folder); err == nil {
		t.Error("a migration that fails is taken")
	}
	migrations = migrations[:2] // it left nothing behind
	s = opened(t, folder)
	if err := s.read.QueryRow("SELECT count(*) FROM half").Scan(&later); err == nil {
		t.Error("half a migration is left")
	}
	sound(t, s)
}

// Where the data folder is unless one is named: XDG Base Directory Specification. A
// user without a home may have one too.
func TestDefaultFolder(t *testing.T) {
	t.Setenv("HOME", "")
	t.Setenv("XDG_DATA_HOME", "/tmp/of-the-user")
	folder, err := DefaultFolder()
	if err != nil || folder != filepath.Join("/tmp/of-the-user", "drawdown") {
		t.Error(folder, err)
	}
}

// A backup made while entries come in is sound, and holds what was confirmed
// before it; restored it takes the place of the store, which is kept.
func TestBackupAndRestore(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	s := small(t, folder)
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

	fresh := t.TempDir()
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

	aside, err := Restore(folder, backup, noon)
	if err != nil || aside != filepath.Join(folder, "before-restore-20261130-120000") {
		t.Fatal(aside, err)
	}
	if restored := opened(t, folder); sound(t, restored) != v.Head {
		t.Error("another head than that of the backup")
	}
	if old := opened(t, aside); sound(t, old) != latest {
		t.Error("what was there before is not all kept")
	}
}

// A backup in which a byte was changed, a file of another kind, and one that is
// not there leave the store as it is.
func TestRestoreChecksFirst(t *testing.T) {
	t.Parallel()
	folder, other := t.TempDir(), t.TempDir()
	s := small(t, folder)
	head := sound(t, s)
	backup := filepath.Join(other, "backup.db")
	if err := s.Backup(backup); err != nil {
		t.Fatal(err)
	}
	closed(t, s)
	db, err := connect(backup, false)
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
		if _, err := Restore(folder, file, noon); !errors.Is(err, want) {
			t.Errorf("%s: %v", file, err)
		}
	}
	if again := opened(t, folder); sound(t, again) != head {
		t.Error("the store was changed")
	}
	left, err := filepath.Glob(filepath.Join(folder, "*restore*"))
	if len(left) > 0 || err != nil {
		t.Error("left behind", left, err)
	}
}
