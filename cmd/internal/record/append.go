package record

import (
	"bytes"
	"database/sql"
	"encoding/hex"
	"errors"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// longestID is more than a random id needs.
const longestID = 100

// Append appends an entry to a run, a job or the shop's own record and returns
// when it is on the disk. The entry's Time is that of the server.
// judge reports whether the rules allow the entry. It is called once, while no
// process writes anything else, and not at all for an entry that was answered
// before: that gets the same answer again. A refusal is kept too, outside the
// chain. Different content under the same id is refused. If Append returns an
// error, the entry counts as not kept: when sent again it is answered, even if
// it was kept after all.
func (s *Store) Append(on string, e run.Entry, judge Judge) (answer Answer, err error) {
	if err := checkID(e.ID); err != nil {
		return Answer{}, err
	}
	err = s.written(func(tx *sql.Tx, end *Head) error {
		answer, err = s.appendOne(tx, end, on, e, judge)
		return err
	})
	return answer, err
}

func checkID(id string) error {
	switch {
	case id == "":
		return finding.Failed(NoEntryID, nil)
	case len(id) > longestID:
		return finding.Failed(LongEntryID, finding.Values{"most": longestID})
	}
	return nil
}

// Judge returns why a rule forbids an entry, or nil if none does.
type Judge func(before Before) (*run.Refusal, error)

// Before is the record before an entry.
type Before struct {
	Version int // entries so far
	// Losses grows each time that work of this process was not kept. A state to
	// which an unkept entry was applied must be read again.
	Losses int

	subject int64
	tx      *sql.Tx
}

// Entries returns the entries so far.
func (b Before) Entries() ([]Kept, error) { return readingFrom(b.tx).entries(b.subject, 0) }

func (s *Store) appendOne(tx *sql.Tx, end *Head, on string, e run.Entry, judge Judge) (Answer, error) {
	subject, version, err := latest(tx, on)
	if err != nil {
		return Answer{}, err
	}
	e.Time = e.Time.UTC()
	next := body{Place: end.Place + 1, On: on, Version: version + 1, Entry: &e}
	people, err := hideNames(tx, next.names()...)
	if err != nil {
		return Answer{}, err
	}
	if err := checkPhoto(tx, e.Photo); err != nil {
		return Answer{}, err
	}
	if before, found, err := answered(tx, subject, next); found || err != nil {
		return before, err
	}
	if judge != nil {
		refusal, err := judge(Before{version, s.losses, subject, tx})
		if err != nil {
			return Answer{}, err
		}
		if refusal != nil {
			answer := Answer{Version: version, Head: end.Hash, Refusal: refusal}
			return answer, keepRefusal(tx, subject, next, answer)
		}
	}
	if err := insert(tx, end, subject, next, people); err != nil {
		return Answer{}, err
	}
	return Answer{Version: next.Version, Head: end.Hash}, nil
}

// latest returns a record's place in the chain, and its version.
func latest(tx querier, on string) (subject int64, version int, err error) {
	err = tx.QueryRow("SELECT n, (SELECT max(version) FROM entry WHERE subject = subject.n) FROM subject WHERE id = $1", on).Scan(&subject, &version)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, 0, finding.Failed(NoSubject, finding.Values{"id": on})
	}
	return subject, version, err
}

// answered returns the answer that an entry got before.
func answered(tx *sql.Tx, subject int64, next body) (answer Answer, found bool, err error) {
	var text, hash, refused []byte
	err = tx.QueryRow(`SELECT version, body, hash, NULL FROM entry WHERE subject = $1 AND id = $2
		UNION ALL SELECT 0, body, NULL, answer FROM refusal WHERE subject = $1 AND id = $2`,
		subject, next.id()).Scan(&answer.Version, &text, &hash, &refused)
	if errors.Is(err, sql.ErrNoRows) {
		return Answer{}, false, nil
	}
	if err != nil {
		return Answer{}, true, err
	}
	same, err := sameContent(text, next)
	if err == nil && !same {
		err = finding.Failed(OtherContent, finding.Values{"id": next.id()})
	}
	if err != nil {
		return Answer{}, true, err
	}
	answer.Head = hex.EncodeToString(hash)
	if refused != nil {
		answer, err = readRefusal(tx, refused)
	}
	answer.Again = true
	return answer, true, err
}

func sameContent(text []byte, next body) (bool, error) {
	before, err := readBody(text)
	if err != nil {
		return false, err
	}
	a, errA := before.content()
	b, errB := next.content()
	return bytes.Equal(a, b), errors.Join(errA, errB)
}

// insert adds a body at the end of the chain.
func insert(tx *sql.Tx, end *Head, subject int64, next body, people []int64) error {
	text, err := next.bytes()
	if err != nil {
		return err
	}
	before, err := hex.DecodeString(end.Hash)
	if err != nil {
		return err
	}
	hash := link(before, text)
	if _, err := tx.Exec("INSERT INTO entry (n, subject, version, id, act, wrench, body, hash) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
		next.Place, subject, next.Version, next.id(), next.act(), next.wrench(), text, hash); err != nil {
		return err
	}
	for _, person := range people {
		if _, err := tx.Exec("INSERT INTO took_part (person, subject) VALUES ($1, $2) ON CONFLICT DO NOTHING", person, subject); err != nil {
			return err
		}
	}
	if _, err := tx.Exec("UPDATE subject SET last = $1 WHERE n = $2 AND last < $1", milliseconds(next.time()), subject); err != nil {
		return err
	}
	*end = Head{Place: next.Place, Hash: hex.EncodeToString(hash)}
	return nil
}

func milliseconds(t time.Time) int64 { return t.UnixMilli() }
