package record

import (
	"database/sql"
	"errors"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"drawdown/cmd/internal/machine"
	"drawdown/geometry/finding"
)

// Names of what is in a data folder.
const (
	storeFile = "record.db"
	lockName  = "lock"
	pageFile  = "page" // address of the page that runs, for a second start
)

// Store is the record in a data folder.
type Store struct {
	folder  string
	lock    *os.File // nil: opened to read
	read    *sql.DB
	write   *sql.DB // one connection; nil: opened to read
	entries chan *waiting
	ended   chan struct{} // closed when the writer has ended
}

// DefaultFolder is the data folder where none is named.
func DefaultFolder() (string, error) {
	if data := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(data) {
		return filepath.Join(data, "drawdown"), nil
	}
	base, err := os.UserConfigDir()
	if err != nil {
		return "", finding.Failed(NoUserFolder, finding.Values{"why": err})
	}
	if home, err := os.UserHomeDir(); err == nil && base == filepath.Join(home, ".config") {
		base = filepath.Join(home, ".local", "share") // XDG Base Directory Specification
	}
	return filepath.Join(base, "drawdown"), nil
}

// Open opens the record in a folder to be written, and makes it on first use.
// One process at a time has a folder; a folder on a network file system and a
// store of a newer program are refused. Close it.
func Open(folder string) (*Store, error) {
	folder, err := made(folder)
	if err != nil {
		return nil, err
	}
	lock, err := locked(folder)
	if err != nil {
		return nil, err
	}
	s := &Store{folder: folder, lock: lock, entries: make(chan *waiting, 256), ended: make(chan struct{})}
	if err := s.openFiles(); err != nil {
		s.closeFiles()
		return nil, err
	}
	go s.writeEntries()
	return s, nil
}

// OpenToWrite opens the record that is in a folder; it makes none.
func OpenToWrite(folder string) (*Store, error) {
	if err := there(folder); err != nil {
		return nil, err
	}
	return Open(folder)
}

// there says that there is no record in a folder.
func there(folder string) error {
	if _, err := os.Stat(filepath.Join(folder, storeFile)); err != nil {
		return finding.Failed(NoStore, finding.Values{"folder": folder})
	}
	return nil
}

// OpenToRead opens the record that is in a folder, also while another process
// writes it.
func OpenToRead(folder string) (*Store, error) {
	if err := there(folder); err != nil {
		return nil, err
	}
	folder, err := filepath.Abs(folder)
	if err != nil {
		return nil, notRead(err)
	}
	file := filepath.Join(folder, storeFile)
	if err := local(folder); err != nil {
		return nil, err
	}
	s := &Store{folder: folder}
	if s.read, err = connect(file, true); err != nil {
		return nil, err
	}
	version, err := versionOf(s.read, file)
	if err == nil && version < schemaVersion() {
		err = finding.Failed(OlderStore, finding.Values{"folder": folder})
	}
	if err != nil {
		s.closeFiles()
		return nil, err
	}
	return s, nil
}

// Close ends the writer once all that waits is written, and gives the folder free.
func (s *Store) Close() error {
	if s.write != nil {
		close(s.entries)
		<-s.ended
	}
	return s.closeFiles()
}

// Folder is the data folder.
func (s *Store) Folder() string { return s.folder }

// Announce leaves the address of the page that runs for a second start. It
// holds a key: nobody else may read it.
func (s *Store) Announce(address string) error {
	path := filepath.Join(s.folder, pageFile)
	os.Remove(path) // one that others may read would keep its permissions
	if err := os.WriteFile(path, []byte(address), 0o600); err != nil {
		return notKept(err, s.folder)
	}
	return nil
}

// Announced is the address that the process which has the folder left; empty
// where it left none.
func Announced(folder string) string {
	text, _ := os.ReadFile(filepath.Join(folder, pageFile))
	return strings.TrimSpace(string(text))
}

// made makes the folder where it is missing, and gives its whole path.
func made(folder string) (string, error) {
	whole, err := filepath.Abs(folder)
	if err == nil {
		err = os.MkdirAll(whole, 0o700)
	}
	if err != nil {
		return "", finding.Failed(FolderNotMade, finding.Values{"folder": folder, "why": err})
	}
	return whole, local(whole)
}

// local refuses a network file system: its locks do not hold on every client,
// and two writers would break the record.
func local(folder string) error {
	where := folder
	if real, err := filepath.EvalSymlinks(folder); err == nil {
		where = real
	}
	if system := networkSystem(where); system != "" {
		return finding.Failed(OnNetwork, finding.Values{"folder": folder, "system": system})
	}
	return nil
}

func locked(folder string) (*os.File, error) {
	lock, taken, err := machine.LockFile(filepath.Join(folder, lockName))
	if taken {
		return nil, finding.Failed(InUse, finding.Values{"folder": folder})
	}
	if err != nil {
		return nil, finding.Failed(FolderNotMade, finding.Values{"folder": folder, "why": err})
	}
	os.Remove(filepath.Join(folder, pageFile)) // of a process that was killed
	return lock, nil
}

func (s *Store) openFiles() (err error) {
	file := filepath.Join(s.folder, storeFile)
	if s.write, err = connect(file, false); err != nil {
		return err
	}
	s.write.SetMaxOpenConns(1)
	if err := migrate(s.write, file); err != nil {
		return err
	}
	if s.read, err = connect(file, true); err != nil {
		return err
	}
	return s.begin()
}

// closeFiles closes what is open.
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

// connect opens the file with the settings under which a committed transaction
// is on the disk when the commit returns.
func connect(file string, readOnly bool) (*sql.DB, error) {
	settings := url.Values{"_pragma": {"busy_timeout(10000)", "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(ON)", "secure_delete(ON)"}, "_txlock": {"immediate"}}
	if readOnly {
		settings = url.Values{"_pragma": {"busy_timeout(10000)", "query_only(ON)"}, "mode": {"rw"}} // it makes no file
	}
	whole, err := filepath.Abs(file)
	if err != nil {
		return nil, finding.Failed(NotAStore, finding.Values{"file": file, "why": err})
	}
	path := filepath.ToSlash(whole)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path // as SQLite wants C:/… in an address
	}
	address := url.URL{Scheme: "file", Path: path, RawQuery: settings.Encode()}
	db, err := sql.Open("sqlite", address.String())
	if err == nil {
		err = db.Ping()
	}
	if err != nil {
		return nil, finding.Failed(NotAStore, finding.Values{"file": file, "why": err})
	}
	return db, nil
}

// notKept says why something could not be written.
func notKept(err error, folder string) error {
	if found, ok := errors.AsType[finding.Finding](err); ok {
		return found
	}
	if code := resultOf(err); code == sqlite3.SQLITE_FULL || code == sqlite3.SQLITE_IOERR {
		return finding.Failed(DiskFull, finding.Values{"folder": folder})
	}
	return finding.Failed(NotKept, finding.Values{"why": err})
}

// notRead says why something could not be read.
func notRead(err error) error {
	if found, ok := errors.AsType[finding.Finding](err); ok {
		return found
	}
	return finding.Failed(NotReadBack, finding.Values{"why": err})
}

// resultOf is SQLite's primary result code of an error; 0 for others.
func resultOf(err error) int {
	if from, ok := errors.AsType[*sqlite.Error](err); ok {
		return from.Code() & 0xff
	}
	return 0
}
