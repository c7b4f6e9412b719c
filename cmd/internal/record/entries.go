package record

import (
	"cmp"
	"encoding/hex"
	"errors"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// Head returns the present end of the chain.
func (s *Store) Head() (Head, error) {
	end, err := headOf(s.read)
	if err != nil {
		return Head{}, s.notRead(err)
	}
	return end, nil
}

// Run returns a run with what it was started from.
func (s *Store) Run(id string) (Started, error) { return s.started(id, RunKind) }

// Job returns a job with what it was started from.
func (s *Store) Job(id string) (Started, error) { return s.started(id, JobKind) }

func (s *Store) started(id string, kind Kind) (Started, error) {
	n, _, err := latest(s.read, id)
	if err != nil {
		return Started{}, s.notRead(err)
	}
	one, b, err := readingFrom(s.read).subject(n)
	if err != nil {
		return Started{}, s.notRead(err)
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

// reader reads from a database or a transaction, and looks up each name once.
type reader struct {
	db    querier
	names map[string]string // by its hash
}

func readingFrom(db querier) reader { return reader{db, map[string]string{}} }

// subject reads a record's line in a list, and the body that started it.
func (r reader) subject(n int64) (Subject, body, error) {
	var text, latest, end []byte
	var last int64
	var version int
	err := r.db.QueryRow(`SELECT e.body, last, l.version, l.body,
		(SELECT body FROM entry WHERE subject = s.n AND act IN ('seal', 'void', 'close') ORDER BY act DESC LIMIT 1)
		FROM subject s JOIN entry e ON e.n = s.n
		JOIN entry l ON l.subject = s.n AND l.version = (SELECT max(version) FROM entry WHERE subject = s.n)
		WHERE s.n = $1`, n).Scan(&text, &last, &version, &latest, &end)
	if err != nil {
		return Subject{}, body{}, err
	}
	lastBy, err := r.whoMade(latest)
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
	if err := r.show(b.names()...); err != nil {
		return Subject{}, body{}, err
	}
	st := b.Start
	if st.Job != "" { // a run is on the machine of its job, and part of its order
		of, err := readStart(r.db, st.Job)
		if err != nil {
			return Subject{}, body{}, err
		}
		st.Number, st.Order, st.Note = cmp.Or(st.Number, of.Start.Number), cmp.Or(st.Order, of.Start.Order), cmp.Or(st.Note, of.Start.Note)
	}
	ended, err := r.ended(end)
	if err != nil {
		return Subject{}, body{}, err
	}
	return Subject{ID: b.On, Kind: st.Kind, Job: st.Job, Again: st.Again, Of: st.Of, Title: st.Title, Work: st.Work,
		Number: st.Number, Order: st.Order, Note: st.Note, Who: st.Who, Program: st.Program,
		Started: st.Time, Last: time.UnixMilli(last).UTC(), LastBy: lastBy, Version: version,
		Ended: ended.Act, EndedAt: ended.Time, EndedBy: ended.Who}, b, nil
}

// ended reads the entry that ended a record; it is empty if none did.
func (r reader) ended(text []byte) (run.Entry, error) {
	if len(text) == 0 {
		return run.Entry{}, nil
	}
	b, err := readBody(text)
	if err != nil {
		return run.Entry{}, err
	}
	err = r.show(b.names()...)
	return *b.Entry, err
}

// whoMade returns who made an entry.
func (r reader) whoMade(text []byte) (string, error) {
	b, err := readBody(text)
	if err != nil {
		return "", err
	}
	by := b.names()[0]
	err = r.show(by)
	return *by, err
}

// Entries returns the entries of a record after a version, in the order they
// were taken; after 0 means all.
func (s *Store) Entries(on string, after int) ([]Kept, error) {
	n, _, err := latest(s.read, on)
	if err != nil {
		return nil, s.notRead(err)
	}
	list, err := readingFrom(s.read).entries(n, after)
	if err != nil {
		return nil, s.notRead(err)
	}
	return list, nil
}

// entries returns the entries of a record after a version.
func (r reader) entries(subject int64, after int) ([]Kept, error) {
	return r.kept("SELECT n, body, hash FROM entry WHERE subject = $1 AND version > $2 AND version > 0 ORDER BY version", subject, after)
}

// Prints returns the recorded prints, the latest first, up to most.
func (s *Store) Prints(most int) ([]Kept, error) {
	list, err := readingFrom(s.read).kept("SELECT n, body, hash FROM entry WHERE act = 'printed' ORDER BY n DESC LIMIT $1", most)
	if err != nil {
		return nil, s.notRead(err)
	}
	return list, nil
}

// kept reads entries, then the names in them: on a single connection a second
// query has to wait for the end of the first.
func (r reader) kept(query string, args ...any) ([]Kept, error) {
	list, err := keptRows(r.db, query, args...)
	if err != nil {
		return nil, err
	}
	for i := range list {
		e := &list[i].Entry
		if err := r.show(body{Entry: e}.names()...); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// keptRows reads entries with their names hidden.
func keptRows(db querier, query string, args ...any) (list []Kept, err error) {
	rows, err := db.Query(query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var one Kept
		var text, hash []byte
		if err := rows.Scan(&one.Place, &text, &hash); err != nil {
			return nil, err
		}
		b, err := readBody(text)
		if err == nil && b.Entry == nil {
			err = errors.New("no entry")
		}
		if err != nil {
			return nil, err
		}
		one.Entry, one.On, one.Version, one.Hash = *b.Entry, b.On, b.Version, hex.EncodeToString(hash)
		list = append(list, one)
	}
	return list, rows.Err()
}
