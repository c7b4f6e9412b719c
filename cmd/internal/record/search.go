package record

import (
	"cmp"
	"strings"

	"drawdown/geometry/finding"
)

// mostFound is how many a search gives where the filter says nothing.
const mostFound = 200

// Runs gives the runs that a filter lets through, the latest started first.
func (s *Store) Runs(f Filter) ([]Subject, error) { return s.found(RunKind, f) }

// Jobs gives the jobs that a filter lets through, the latest started first.
func (s *Store) Jobs(f Filter) ([]Subject, error) { return s.found(JobKind, f) }

func (s *Store) found(kind Kind, f Filter) ([]Subject, error) {
	query, args := f.query(kind)
	rows, err := s.read.Query(query, args...)
	if err != nil {
		return nil, notRead(err)
	}
	defer rows.Close()
	var list []Subject
	for rows.Next() {
		var n int64
		if err := rows.Scan(&n); err != nil {
			return nil, notRead(err)
		}
		one, _, err := readSubject(s.read, n)
		if err != nil {
			return nil, notRead(err)
		}
		list = append(list, one)
	}
	if err := rows.Err(); err != nil {
		return nil, notRead(err)
	}
	return list, nil
}

// query gives the places of the records that the filter lets through.
func (f Filter) query(kind Kind) (string, []any) {
	text, args := []string{"kind = ?"}, []any{kind}
	limit := func(condition string, values ...any) {
		text, args = append(text, condition), append(args, values...)
	}
	if f.Machine != "" {
		limit("instr(machine, ?) > 0", strings.ToLower(f.Machine))
	}
	if f.Joint != "" {
		limit("instr(joint, ?) > 0", strings.ToLower(f.Joint))
	}
	if f.Person != "" {
		limit("n IN (SELECT subject FROM took_part WHERE person IN (SELECT n FROM person WHERE name = ? COLLATE NOCASE))", strings.TrimSpace(f.Person))
	}
	if f.Wrench != "" {
		limit("n IN (SELECT subject FROM entry WHERE wrench = ? AND wrench <> '')", f.Wrench)
	}
	if f.Job != "" {
		limit("job = (SELECT n FROM subject WHERE id = ?)", f.Job)
	}
	if !f.From.IsZero() {
		limit("last >= ?", milliseconds(f.From))
	}
	if !f.To.IsZero() {
		limit("first <= ?", milliseconds(f.To))
	}
	if f.Before != "" {
		limit("n < (SELECT n FROM subject WHERE id = ?)", f.Before)
	}
	if f.Open {
		limit("NOT EXISTS (SELECT 1 FROM entry WHERE subject = subject.n AND act IN ('seal', 'void', 'close'))")
	}
	return "SELECT n FROM subject WHERE " + strings.Join(text, " AND ") + " ORDER BY n DESC LIMIT ?", append(args, cmp.Or(max(f.Most, 0), mostFound))
}

// KindOf gives the kind of record that an id is of.
func KindOf(id string) (Kind, error) {
	for kind, letter := range letters {
		if strings.HasPrefix(id, letter) {
			return kind, nil
		}
	}
	return "", finding.Failed(NoSubject, finding.Values{"id": id})
}
