package record

import (
	"database/sql"
	"encoding/hex"
	"errors"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// Head is the end of the chain now.
func (s *Store) Head() (Head, error) {
	end, err := headOf(s.read)
	if err != nil {
		return Head{}, notRead(err)
	}
	return end, nil
}

// Run gives a run with what it was started from.
func (s *Store) Run(id string) (Started, error) { return s.started(id, RunKind) }

// Job gives a job with what it was started from.
func (s *Store) Job(id string) (Started, error) { return s.started(id, JobKind) }

func (s *Store) started(id string, kind Kind) (Started, error) {
	n, _, err := latest(s.read, id)
	if err != nil {
		return Started{}, notRead(err)
	}
	one, b, err := readSubject(s.read, n)
	if err != nil {
		return Started{}, notRead(err)
	}
	if one.Kind != kind {
		return Started{}, finding.Failed(NoSubject, finding.Values{"id": id})
	}
	made := Started{Subject: one, Files: b.Start.Files}
	if made.Frozen, err = s.blob(b.Start.Frozen, frozenBlob); err != nil {
		return Started{}, err
	}
	return made, nil
}

// readSubject reads a record's line in a list, and the body that started it.
func readSubject(db querier, n int64) (Subject, body, error) {
	var text, latest []byte
	var last int64
	var version int
	var ended sql.NullString
	err := db.QueryRow(`SELECT e.body, last, l.version, l.body,
		(SELECT act FROM entry WHERE subject = s.n AND act IN ('seal', 'void', 'close') ORDER BY act DESC LIMIT 1)
		FROM subject s JOIN entry e ON e.n = s.n
		JOIN entry l ON l.subject = s.n AND l.version = (SELECT max(version) FROM entry WHERE subject = s.n)
		WHERE s.n = ?`, n).Scan(&text, &last, &version, &latest, &ended)
	if err != nil {
		return Subject{}, body{}, err
	}
	lastBy, err := whoMade(db, latest)
	if err != nil {
		return Subject{}, body{}, err
	}
	b, err := readBody(text)
	if err == nil && b.Start == nil {
		err = errors.New("no start")
	}
	if err != nil {
		return Subject{}, body{}, err
	}
	if err := showNames(db, b.names()...); err != nil {
		return Subject{}, body{}, err
	}
	st := b.Start
	if st.Job != "" && st.Number == "" { // a run is on the machine of its job
		of, err := readStart(db, st.Job)
		if err != nil {
			return Subject{}, body{}, err
		}
		st.Number = of.Start.Number
	}
	return Subject{ID: b.On, Kind: st.Kind, Job: st.Job, Again: st.Again, Of: st.Of, Title: st.Title, Work: st.Work,
		Number: st.Number, Order: st.Order, Note: st.Note, Who: st.Who, Program: st.Program,
		Started: st.Time, Last: time.UnixMilli(last).UTC(), LastBy: lastBy, Version: version, Ended: run.Act(ended.String)}, b, nil
}

// whoMade gives who made an entry.
func whoMade(db querier, text []byte) (string, error) {
	b, err := readBody(text)
	if err != nil {
		return "", err
	}
	by := b.names()[0]
	err = showNames(db, by)
	return *by, err
}

// Entries gives the entries of a record after a version, in the order in which
// they were taken; after 0: all.
func (s *Store) Entries(on string, after int) ([]Kept, error) {
	n, _, err := latest(s.read, on)
	if err != nil {
		return nil, notRead(err)
	}
	return s.kept("SELECT n, body, hash FROM entry WHERE subject = ? AND version > ? AND version > 0 ORDER BY version", n, after)
}

// Prints gives all prints that were noted, the latest first, at most so many.
func (s *Store) Prints(most int) ([]Kept, error) {
	return s.kept("SELECT n, body, hash FROM entry WHERE act = 'printed' ORDER BY n DESC LIMIT ?", most)
}

func (s *Store) kept(query string, args ...any) ([]Kept, error) {
	rows, err := s.read.Query(query, args...)
	if err != nil {
		return nil, notRead(err)
	}
	defer rows.Close()
	var list []Kept
	for rows.Next() {
		var one Kept
		var text, hash []byte
		if err := rows.Scan(&one.Place, &text, &hash); err != nil {
			return nil, notRead(err)
		}
		b, err := readBody(text)
		if err == nil && b.Entry == nil {
			err = errors.New("no entry")
		}
		if err == nil {
			err = showNames(s.read, b.names()...)
		}
		if err != nil {
			return nil, notRead(err)
		}
		one.Entry, one.On, one.Version, one.Hash = *b.Entry, b.On, b.Version, hex.EncodeToString(hash)
		list = append(list, one)
	}
	if err := rows.Err(); err != nil {
		return nil, notRead(err)
	}
	return list, nil
}
