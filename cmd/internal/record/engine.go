package record

import (
	"database/sql"

	"drawdown/geometry/finding"
)

// engine is the database behind the record: what each database does
// differently. All other SQL is in this package and the same for all of them.
type engine interface {
	Open(readOnly bool) (*sql.DB, error)       // one connection at a time, unless it is read only
	Migrations() []string                      // each makes one version of the schema from the one before
	Version(tx *sql.Tx) (int, error)           // of the schema; 0: there is no record
	SetVersion(tx *sql.Tx, version int) error  //
	Claim(tx *sql.Tx) error                    // makes a transaction the only writer, in all processes
	Writing() *sql.TxOptions                   // a transaction that sees all that was committed before its Claim
	Reading() *sql.TxOptions                   // a transaction that sees one moment
	Tell(tx *sql.Tx) error                     // wakes the watchers in all processes, once it is committed
	Damage(tx *sql.Tx) (why string, err error) // of the database itself; empty: none
	Forget(db *sql.DB) error                   // removes deleted names from the disk
	IsFull(err error) bool                     // the disk
	Why(err error) error                       // the root cause of an error
	IsAway(err error) bool                     // the database cannot be reached
}

// querier is a database or a transaction.
type querier interface {
	Query(query string, args ...any) (*sql.Rows, error)
	QueryRow(query string, args ...any) *sql.Row
	Exec(query string, args ...any) (sql.Result, error)
}

// migrate brings a store to the version of this program, each step completely
// or not at all.
func (s *Store) migrate() error {
	for {
		done, err := s.migrateOnce()
		if done || err != nil {
			return err
		}
	}
}

func (s *Store) migrateOnce() (done bool, err error) {
	steps := s.engine.Migrations()
	err = s.transaction(func(tx *sql.Tx) error {
		version, err := s.versionOf(tx)
		if done = version == len(steps); done || err != nil {
			return err
		}
		if _, err := tx.Exec(steps[version]); err != nil {
			return err
		}
		return s.engine.SetVersion(tx, version+1)
	})
	return done, err
}

// versionOf reads the version of a store and refuses a newer one.
func (s *Store) versionOf(tx *sql.Tx) (version int, err error) {
	version, err = s.engine.Version(tx)
	if err != nil {
		return 0, s.notAStore(err)
	}
	if known := len(s.engine.Migrations()); version > known {
		return 0, finding.Failed(NewerStore, finding.Values{"file": s.file, "version": version, "known": known})
	}
	return version, nil
}

// transaction runs do as the only writer.
func (s *Store) transaction(do func(tx *sql.Tx) error) error {
	tx, err := s.write.BeginTx(forever, s.engine.Writing())
	if err != nil {
		return s.notKept(err)
	}
	defer tx.Rollback() // has no effect after a commit
	if err = s.engine.Claim(tx); err == nil {
		err = do(tx)
	}
	if err == nil {
		err = tx.Commit()
	}
	if err != nil {
		return s.notKept(err)
	}
	return nil
}

// snapshot reads the state of one moment.
func (s *Store) snapshot(do func(tx *sql.Tx) error) error {
	tx, err := s.read.BeginTx(forever, s.engine.Reading())
	if err != nil {
		return s.notRead(err)
	}
	defer tx.Rollback()
	return do(tx)
}
