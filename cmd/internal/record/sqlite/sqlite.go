// Package sqlite keeps the record in one file that belongs to one process at a
// time. It knows how to open SQLite and what SQLite does differently; package
// record knows the contents of the tables.
package sqlite

import (
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"path/filepath"
	"strings"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// Engine does what is specific to SQLite.
type Engine struct {
	File string
}

// Open opens the file with settings under which a committed transaction is on
// the disk when the commit returns. Opened to read, it makes no file.
func (e Engine) Open(readOnly bool) (*sql.DB, error) {
	settings := url.Values{"_pragma": {"busy_timeout(10000)", "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(ON)", "secure_delete(ON)"}, "_txlock": {"immediate"}}
	if readOnly {
		settings = url.Values{"_pragma": {"busy_timeout(10000)", "query_only(ON)"}, "mode": {"rw"}}
	}
	whole, err := filepath.Abs(e.File)
	if err != nil {
		return nil, err
	}
	path := filepath.ToSlash(whole)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path // SQLite expects a slash before C:/…
	}
	address := url.URL{Scheme: "file", Path: path, RawQuery: settings.Encode()}
	db, err := sql.Open("sqlite", address.String())
	if err != nil {
		return nil, err
	}
	if !readOnly {
		db.SetMaxOpenConns(1)
	}
	return db, db.Ping()
}

// Migrations returns the steps that each make one version of the schema from
// the one before.
func (Engine) Migrations() []string { return migrations }

// Version returns the version of the schema; 0 if there is no record.
func (Engine) Version(tx *sql.Tx) (version int, err error) {
	err = tx.QueryRow("PRAGMA user_version").Scan(&version)
	return version, err
}

// SetVersion stores the version of the schema.
func (Engine) SetVersion(tx *sql.Tx, version int) error {
	_, err := tx.Exec(fmt.Sprint("PRAGMA user_version = ", version))
	return err
}

// Claim makes a transaction the only writer. A writing transaction is so from
// its start.
func (Engine) Claim(*sql.Tx) error { return nil }

// Writing returns the options of a transaction that writes.
func (Engine) Writing() *sql.TxOptions { return nil }

// Reading returns the options of a transaction that reads the state of one
// moment.
func (Engine) Reading() *sql.TxOptions { return &sql.TxOptions{ReadOnly: true} }

// Tell does nothing: there are no other processes to notify.
func (Engine) Tell(*sql.Tx) error { return nil }

// Damage checks whether the file is intact; it returns an empty text if it is.
func (Engine) Damage(tx *sql.Tx) (string, error) {
	var said string
	err := tx.QueryRow("PRAGMA quick_check(1)").Scan(&said)
	if said == "ok" {
		said = ""
	}
	return said, err
}

// Forget removes from the disk what was deleted from the table of names: it
// also moves the log into the file, which keeps nothing that was deleted.
func (Engine) Forget(db *sql.DB) error {
	_, err := db.Exec("PRAGMA wal_checkpoint(TRUNCATE)")
	return err
}

// IsFull reports whether an error is caused by a full or failing disk.
func (Engine) IsFull(err error) bool {
	from, ok := errors.AsType[*sqlite.Error](err)
	return ok && (from.Code()&0xff == sqlite3.SQLITE_FULL || from.Code()&0xff == sqlite3.SQLITE_IOERR)
}

// IsAway reports whether an error is caused by a database that cannot be
// reached.
func (Engine) IsAway(error) bool { return false }

// Why returns the root cause of an error.
func (Engine) Why(err error) error { return err }

// Copy writes the whole database in its present state to a new file.
func Copy(db *sql.DB, file string) error {
	_, err := db.Exec("VACUUM INTO $1", file)
	return err
}
