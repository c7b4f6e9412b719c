package record

import (
	"database/sql"
	"fmt"
)

// waiting is work to be written, and where to send its answer.
type waiting struct {
	do     func(tx *sql.Tx, end *Head) error // writes, and moves the end of the chain
	answer chan error
}

// mostAtOnce limits what one transaction commits.
const mostAtOnce = 256

// written passes work to the writer and waits until it is on the disk.
func (s *Store) written(do func(tx *sql.Tx, end *Head) error) error {
	w := &waiting{do: do, answer: make(chan error, 1)}
	s.entries <- w
	return <-w.answer
}

// writeEntries is the only writer. It commits all waiting work in one
// transaction, so that many tablets share one wait for the disk.
func (s *Store) writeEntries() {
	defer close(s.ended)
	for first := range s.entries {
		s.commit(s.all(first))
	}
}

// all returns the work waiting at present.
func (s *Store) all(first *waiting) []*waiting {
	group := []*waiting{first}
	for len(group) < mostAtOnce {
		select {
		case next, open := <-s.entries:
			if !open {
				return group
			}
			group = append(group, next)
		default:
			return group
		}
	}
	return group
}

// commit writes a group. Work that fails alone is undone alone; if the
// transaction fails, none of it was kept and all are told.
func (s *Store) commit(group []*waiting) {
	results := make([]error, len(group))
	if err := s.transact(group, results); err != nil {
		s.losses++
		for i := range results {
			results[i] = err
		}
	}
	for i, w := range group {
		w.answer <- results[i]
	}
}

func (s *Store) transact(group []*waiting, results []error) error {
	return s.transaction(func(tx *sql.Tx) error {
		if _, err := s.versionOf(tx); err != nil { // a newer program may have come meanwhile
			return err
		}
		end, err := headOf(tx)
		if err != nil {
			return err
		}
		for i, w := range group {
			if results[i], err = s.attempt(w, tx, &end); err != nil {
				return err
			}
		}
		return s.engine.Tell(tx)
	})
}

// attempt does one piece of work, and undoes it where it fails. err is of the
// transaction as a whole, as on a full disk.
func (s *Store) attempt(w *waiting, tx *sql.Tx, end *Head) (failed, err error) {
	if _, err := tx.Exec("SAVEPOINT one"); err != nil {
		return nil, err
	}
	before := *end
	if failed = try(w, tx, end); failed != nil {
		failed, *end = s.notKept(failed), before
		s.losses++
		if _, err := tx.Exec("ROLLBACK TO one"); err != nil {
			return failed, err
		}
	}
	_, err = tx.Exec("RELEASE one")
	return failed, err
}

// try does one piece of work. A fault in what it calls ends it alone.
func try(w *waiting, tx *sql.Tx, end *Head) (err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("fault: %v", fault)
		}
	}()
	return w.do(tx, end)
}
