package record

import (
	"cmp"
	"database/sql"
	"fmt"
	"strings"
	"time"
)

// AddJob starts a job and returns its id.
func (s *Store) AddJob(j NewJob) (id string, err error) {
	return s.add(start{Kind: JobKind, Of: j.Of, Title: j.Title, Number: j.Number, Order: j.Order, Note: j.Note,
		Who: j.Who, Time: j.Time, Program: j.Program}, j.Frozen, j.Files)
}

// AddRun starts a run and returns its id.
func (s *Store) AddRun(r NewRun) (id string, err error) {
	return s.add(start{Kind: RunKind, Job: r.Job, Again: r.Again, Of: r.Of, Title: r.Title, Work: r.Work, Number: r.Number,
		Order: r.Order, Note: r.Note, Who: r.Who, Time: r.Time, Program: r.Program}, r.Frozen, r.Files)
}

// letters are the first letters of the ids of records.
var letters = map[Kind]string{JobKind: "J", RunKind: "R"}

// add writes the start of a record, with its files, in one transaction.
func (s *Store) add(what start, frozen []byte, files map[string][]byte) (id string, err error) {
	err = s.written(func(tx *sql.Tx, end *Head) error {
		if what.Frozen, err = keepBlob(tx, frozenBlob, frozen); err != nil {
			return err
		}
		what.Files = map[string]string{}
		for name, data := range files {
			if what.Files[name], err = keepBlob(tx, fileBlob, data); err != nil {
				return err
			}
		}
		if id, err = nextID(tx, what.Kind); err != nil {
			return err
		}
		return begin(tx, end, id, what)
	})
	return id, err
}

// nextID returns the next id by counting the records of a kind: R1, R2. None is
// ever removed.
func nextID(tx *sql.Tx, kind Kind) (string, error) {
	var count int
	if err := tx.QueryRow("SELECT count(*) FROM subject WHERE kind = $1", kind).Scan(&count); err != nil {
		return "", err
	}
	return fmt.Sprint(letters[kind], count+1), nil
}

// begin writes the first entry of a record, and the row under which it is
// found.
func begin(tx *sql.Tx, end *Head, id string, what start) error {
	what.Time = what.Time.UTC()
	b := body{Place: end.Place + 1, On: id, Start: &what}
	people, err := hideNames(tx, b.names()...)
	if err != nil {
		return err
	}
	job, machine, err := ofJob(tx, what)
	if err != nil {
		return err
	}
	at := milliseconds(what.Time)
	if _, err := tx.Exec("INSERT INTO subject (n, id, kind, job, machine, joint, first, last) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
		b.Place, id, what.Kind, job, machine, jointKey(what), at, at); err != nil {
		return err
	}
	return insert(tx, end, b.Place, b, people)
}

// ofJob returns the place of the job in the chain, and the text in which a
// search for a machine looks.
func ofJob(tx querier, what start) (job sql.NullInt64, machine string, err error) {
	if what.Job == "" {
		return job, machineKey(what, nil), nil
	}
	of, err := readStart(tx, what.Job)
	if err != nil {
		return job, "", err
	}
	return sql.NullInt64{Int64: of.Place, Valid: true}, machineKey(what, of.Start), nil
}

// machineKey is the text in which a search for a machine looks: its number, and
// the file and title of a job.
func machineKey(what start, job *start) string {
	switch {
	case what.Kind == JobKind:
		return strings.ToLower(what.Number) + "\n" + jointKey(what)
	case job != nil:
		return strings.ToLower(cmp.Or(what.Number, job.Number)) + "\n" + jointKey(*job)
	}
	return strings.ToLower(what.Number)
}

// jointKey is the text in which a search for a joint looks.
func jointKey(what start) string { return strings.ToLower(what.Of + "\n" + what.Title) }

// readStart reads what a record was started from, with the names hidden.
func readStart(db querier, id string) (body, error) {
	n, _, err := latest(db, id)
	if err != nil {
		return body{}, err
	}
	var text []byte
	if err := db.QueryRow("SELECT body FROM entry WHERE n = $1", n).Scan(&text); err != nil {
		return body{}, err
	}
	return readBody(text)
}

// begin makes the shop's own record the first in the chain of a new store.
func (s *Store) begin() error {
	return s.transaction(func(tx *sql.Tx) error {
		end, err := headOf(tx)
		if err == nil && end.Place == 0 {
			err = begin(tx, &end, ShopID, start{Kind: Shop, Time: time.Now(), Note: randomID()})
		}
		return err
	})
}
