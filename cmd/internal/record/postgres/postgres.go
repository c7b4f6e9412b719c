// Package postgres keeps the record in a PostgreSQL database that several processes
// share. It knows how the database is reached and what PostgreSQL does in its own
// way; what is in the tables is known to the record.
package postgres

import (
	"context"
	"database/sql"
	"errors"
	"net"
	"slices"
	"strings"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/stdlib"
)

// Engine is what PostgreSQL does in its own way.
type Engine struct {
	config *pgx.ConnConfig
}

// mostReaders is how many connections of one process read at once.
const mostReaders = 8

// ErrNoSync is a server that does not wait for its disk.
var ErrNoSync = errors.New("fsync is off: a power cut would lose entries that were confirmed")

// Open connects to the database. A committed transaction is on the server's disk
// when the commit returns.
func (e Engine) Open(readOnly bool) (*sql.DB, error) {
	config := e.config.Copy()
	bounded(config)
	most, prepare := 1, waitForDisk
	if readOnly {
		config.RuntimeParams["default_transaction_read_only"] = "on"
		most, prepare = mostReaders, func(context.Context, *pgx.Conn) error { return nil }
	}
	db := stdlib.OpenDB(*config, stdlib.OptionAfterConnect(prepare))
	db.SetMaxOpenConns(most)
	db.SetMaxIdleConns(most)
	return db, db.Ping()
}

// waitForDisk has commits wait for the disk, whatever the server's settings are.
func waitForDisk(ctx context.Context, conn *pgx.Conn) error {
	var fsync string
	err := conn.QueryRow(ctx, "SELECT current_setting('fsync')").Scan(&fsync)
	if err == nil && fsync == "off" {
		err = ErrNoSync
	}
	if err == nil {
		_, err = conn.Exec(ctx, "SELECT set_config('synchronous_commit', 'on', false) WHERE current_setting('synchronous_commit') = 'off'")
	}
	return err
}

// Migrations make each version of the schema from the one before.
func (Engine) Migrations() []string { return migrations }

// Version is that of the schema; 0 where there is no record.
func (Engine) Version(tx *sql.Tx) (version int, err error) {
	var there bool
	err = tx.QueryRow("SELECT to_regclass('drawdown') IS NOT NULL").Scan(&there)
	if err == nil && there {
		err = tx.QueryRow("SELECT version FROM drawdown").Scan(&version)
	}
	return version, err
}

// SetVersion states the version of the schema.
func (Engine) SetVersion(tx *sql.Tx, version int) error {
	_, err := tx.Exec("UPDATE drawdown SET version = $1", version)
	return err
}

// writer is the lock that one transaction in all processes has: "drawdown" in ASCII.
const writer = 0x64726177646f776e

// Claim waits until no other transaction writes, and lets none until the end of
// this one.
func (Engine) Claim(tx *sql.Tx) error {
	_, err := tx.Exec("SELECT pg_advisory_xact_lock($1)", int64(writer))
	return err
}

// Writing is the sort of a transaction that sees all that was committed before its
// Claim.
func (Engine) Writing() *sql.TxOptions { return &sql.TxOptions{Isolation: sql.LevelReadCommitted} }

// Reading is the sort of a transaction that reads a state of one moment.
func (Engine) Reading() *sql.TxOptions {
	return &sql.TxOptions{Isolation: sql.LevelRepeatableRead, ReadOnly: true}
}

// Damage asks nothing: the server checks its pages itself, and the record is checked
// entry by entry.
func (Engine) Damage(*sql.Tx) (string, error) { return "", nil }

// Forget removes from the table's file what was deleted from the table of names. The
// server's log keeps it until it is recycled.
func (Engine) Forget(db *sql.DB) error {
	_, err := db.Exec("VACUUM FULL person")
	return err
}

// Classes and codes of SQLSTATE: PostgreSQL's manual, appendix A.
var (
	fullCodes = []string{"53100", "58030"}                                              // disk full, I/O error
	awayCodes = []string{"57P01", "57P02", "57P03", "57P05", "53300", "25P03", "55P03"} // shut down, starting, too many connections, timeouts
)

const connectionClass = "08"

// IsFull reports whether an error comes of a disk that is full or fails.
func (Engine) IsFull(err error) bool {
	from, ok := errors.AsType[*pgconn.PgError](err)
	return ok && slices.Contains(fullCodes, from.Code)
}

// IsAway reports whether an error comes of a database that cannot be reached, or does
// not answer in time.
func (Engine) IsAway(err error) bool {
	if _, ok := errors.AsType[*pgconn.ConnectError](err); ok {
		return true
	}
	if from, ok := errors.AsType[*pgconn.PgError](err); ok {
		return strings.HasPrefix(from.Code, connectionClass) || slices.Contains(awayCodes, from.Code)
	}
	_, ofNetwork := errors.AsType[net.Error](err)
	return ofNetwork || pgconn.SafeToRetry(err) || isCut(err)
}

// Why is what lies at the bottom of an error, in one line.
func (Engine) Why(err error) error {
	if from, ok := errors.AsType[*pgconn.PgError](err); ok {
		return errors.New(from.Message)
	}
	if from, ok := errors.AsType[*net.DNSError](err); ok {
		return from
	}
	if from, ok := errors.AsType[*net.OpError](err); ok {
		return from
	}
	return err
}
