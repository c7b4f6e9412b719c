// Package postgres keeps the record in a PostgreSQL database that several
// processes share. It knows how to reach the database and what PostgreSQL does
// differently; package record knows the contents of the tables.
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

// Engine does what is specific to PostgreSQL.
type Engine struct {
	config *pgx.ConnConfig
}

// mostReaders is the number of connections with which one process reads at
// once.
const mostReaders = 8

// ErrNoSync means that the server does not wait for its disk.
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

// waitForDisk makes commits wait for the disk, whatever the server's settings.
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

// Migrations returns the steps that each make one version of the schema from
// the one before.
func (Engine) Migrations() []string { return migrations }

// Version returns the version of the schema; 0 if there is no record.
func (Engine) Version(tx *sql.Tx) (version int, err error) {
	var there bool
	err = tx.QueryRow("SELECT to_regclass('drawdown') IS NOT NULL").Scan(&there)
	if err == nil && there {
		err = tx.QueryRow("SELECT version FROM drawdown").Scan(&version)
	}
	return version, err
}

// SetVersion stores the version of the schema.
func (Engine) SetVersion(tx *sql.Tx, version int) error {
	_, err := tx.Exec("UPDATE drawdown SET version = $1", version)
	return err
}

// writer is the lock that only one transaction in all processes holds:
// "drawdown" in ASCII.
const writer = 0x64726177646f776e

// Claim waits until no other transaction writes, and excludes others until the
// end of this one.
func (Engine) Claim(tx *sql.Tx) error {
	_, err := tx.Exec("SELECT pg_advisory_xact_lock($1)", int64(writer))
	return err
}

// Writing returns the options of a transaction that sees all that was committed
// before its Claim.
func (Engine) Writing() *sql.TxOptions { return &sql.TxOptions{Isolation: sql.LevelReadCommitted} }

// Reading returns the options of a transaction that reads the state of one
// moment.
func (Engine) Reading() *sql.TxOptions {
	return &sql.TxOptions{Isolation: sql.LevelRepeatableRead, ReadOnly: true}
}

// Damage checks nothing: the server checks its pages itself, and the record is
// checked entry by entry.
func (Engine) Damage(*sql.Tx) (string, error) { return "", nil }

// Forget removes deleted rows of the table of names from the table's file. The
// server's log keeps them until it is recycled.
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

// IsFull reports whether an error is caused by a full or failing disk.
func (Engine) IsFull(err error) bool {
	from, ok := errors.AsType[*pgconn.PgError](err)
	return ok && slices.Contains(fullCodes, from.Code)
}

// IsAway reports whether an error is caused by a database that cannot be
// reached, or does not answer in time.
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

// Why returns the root cause of an error, in one line.
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
