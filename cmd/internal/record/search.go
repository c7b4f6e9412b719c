package record

import (
	"cmp"
	"fmt"
	"strings"

	"drawdown/geometry/finding"
)

// mostFound is how many results a search returns by default.
const mostFound = 200

// Runs returns the runs that match a filter, the latest started first.
func (s *Store) Runs(f Filter) ([]Subject, error) { return s.found(RunKind, f) }

// Jobs returns the jobs that match a filter, the latest started first.
func (s *Store) Jobs(f Filter) ([]Subject, error) { return s.found(JobKind, f) }

func (s *Store) found(kind Kind, f Filter) ([]Subject, error) {
	query, args := f.query(kind)
	places, err := numbers(s.read, query, args...)
	if err != nil {
		return nil, s.notRead(err)
	}
	var list []Subject
	from := readingFrom(s.read)
	for _, n := range places {
		one, _, err := from.subject(n)
		if err != nil {
			return nil, s.notRead(err)
		}
		list = append(list, one)
	}
	return list, nil
}

// numbers returns the one column of a query.
func numbers(db querier, query string, args ...any) (list []int64, err error) {
	rows, err := db.Query(query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var n int64
		if err := rows.Scan(&n); err != nil {
			return nil, err
		}
		list = append(list, n)
	}
	return list, rows.Err()
}

// query returns the query for the records that match the filter.
func (f Filter) query(kind Kind) (string, []any) {
	var text []string
	var args []any
	limit := func(condition string, value any) { // the condition has one ?
		args = append(args, value)
		text = append(text, strings.Replace(condition, "?", fmt.Sprint("$", len(args)), 1))
	}
	limit("kind = ?", kind)
	if f.Machine != "" {
		limit(`machine LIKE ? ESCAPE '\'`, partOf(f.Machine))
	}
	if f.Joint != "" {
		limit(`joint LIKE ? ESCAPE '\'`, partOf(f.Joint))
	}
	if f.Person != "" {
		limit("n IN (SELECT subject FROM took_part WHERE person IN (SELECT n FROM person WHERE lower(name) = lower(?)))", storable(strings.TrimSpace(f.Person)))
	}
	if f.Wrench != "" {
		limit("n IN (SELECT subject FROM entry WHERE wrench = ? AND wrench <> '')", storable(f.Wrench))
	}
	if f.Job != "" {
		limit("job = (SELECT n FROM subject WHERE id = ?)", storable(f.Job))
	}
	if !f.From.IsZero() {
		limit("last >= ?", milliseconds(f.From))
	}
	if !f.To.IsZero() {
		limit("first <= ?", milliseconds(f.To))
	}
	if f.Before != "" {
		limit("n < (SELECT n FROM subject WHERE id = ?)", storable(f.Before))
	}
	if f.Open {
		text = append(text, "NOT EXISTS (SELECT 1 FROM entry WHERE subject = subject.n AND act IN ('seal', 'void', 'close'))")
	}
	return fmt.Sprintf("SELECT n FROM subject WHERE %s ORDER BY n DESC LIMIT %d", strings.Join(text, " AND "), cmp.Or(max(f.Most, 0), mostFound)), args
}

// partOf matches a text anywhere in another, with SQL's special characters
// escaped.
func partOf(text string) string {
	return "%" + strings.NewReplacer(`\`, `\\`, "%", `\%`, "_", `\_`).Replace(strings.ToLower(storable(text))) + "%"
}

// storable removes characters that no text in a database can have; nothing
// would match them.
func storable(text string) string {
	return strings.ReplaceAll(strings.ToValidUTF8(text, ""), "\x00", "")
}

// KindOf returns the kind of record that an id belongs to.
func KindOf(id string) (Kind, error) {
	for kind, letter := range letters {
		if strings.HasPrefix(id, letter) {
			return kind, nil
		}
	}
	return "", finding.Failed(NoSubject, finding.Values{"id": id})
}
