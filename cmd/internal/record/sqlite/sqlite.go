// Package sqlite keeps the record in one file that belongs to one process at a
// time. It knows how SQLite is opened and what SQLite does in its own way; what is
// in the tables is known to the record.
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

// Engine is what SQLite does in its own way.
type Engine struct {
	File string
}

// Open opens the file with the settings under which a committed transaction is on
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
		path = "/" + path // as SQLite wants C:/… in an address
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

// Migrations make each version of the schema from the one before.
func (Engine) Migrations() []string { return migrations }

// Version is that of the schema; 0 where there is no record.
func (Engine) Version(tx *sql.Tx) (version int, err error) {
	err = tx.QueryRow("PRAGMA user_version").Scan(&version)
	return version, err
}

// SetVersion states the version of the schema.
func (Engine) SetVersion(tx *sql.Tx, version int) error {
	_, err := tx.Exec(fmt.Sprint("PRAGMA user_version = ", version))
	return err
}

// Claim makes a transaction the only one that writes. One that may write is so
// from its begin.
func (Engine) Claim(*sql.Tx) error { return nil }

// Writing is the sort of a transaction that writes.
func (Engine) Writing() *sql.TxOptions { return nil }

// Reading is the sort of a transaction that reads a state of one moment.
func (Engine) Reading() *sql.TxOptions { return &sql.TxOptions{ReadOnly: true} }

// Tell tells other processes of what a transaction writes. There are none.
func (Engine) Tell(*sql.Tx) error { return nil }

// Damage asks whether the file is whole; empty where it is.
func (Engine) Damage(tx *sql.Tx) (string, error) {
	var said string
	err := tx.QueryRow("PRAGMA quick_check(1)").Scan(&said)
	if said == "ok" {
		said = ""
	}
	return said, err
}

// Forget removes from the disk what was deleted from the table of names: the log
// too goes into the file, which keeps nothing that was deleted.
func (Engine) Forget(db *sql.DB) error {
	_, err := db.Exec("PRAGMA wal_checkpoint(TRUNCATE)")
	return err
}

// IsFull reports whether an error comes of a disk that is full or fails.
func (Engine) IsFull(err error) bool {
	from, ok := errors.AsType[*sqlite.Error](err)
	return ok && (from.Code()&0xff == sqlite3.SQLITE_FULL || from.Code()&0xff == sqlite3.SQLITE_IOERR)
}

// IsAway reports whether an error comes of a database that cannot be reached.
func (Engine) IsAway(error) bool { return false }

// Why is what lies at the bottom of an error.
func (Engine) Why(err error) error { return err }

// Copy writes all that is in a database, as it is now, to a new file.
func Copy(db *sql.DB, file string) error {
	_, err := db.Exec("VACUUM INTO $1", file)
	return err
}
