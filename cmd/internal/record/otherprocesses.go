package record

import (
	"context"
)

// Shared reports whether other processes write the record, too.
func (s *Store) Shared() bool { return s.shared != nil }

// Watch calls changed each time that any process, including this one, has
// written to a shared record, until the context ends, and once at the
// beginning. It calls lost when the database can no longer be reached, and
// changed when it can again.
func (s *Store) Watch(ctx context.Context, changed func(), lost func(error)) {
	if s.Shared() {
		s.shared.Listen(ctx, changed, func(err error) { lost(s.away(err)) })
	}
}

// Change is a record that was written to.
type Change struct {
	ID      string
	Job     string // of a run
	Begun   bool   // it was started
	Version int    // of its latest entry
}

// Changes returns the records written to after a place of the chain, and the
// place of the latest entry.
func (s *Store) Changes(after int64) (list []Change, latest int64, err error) {
	rows, err := s.read.Query(`SELECT s.id, coalesce(max(j.id), ''), min(e.version), max(e.version), max(e.n)
		FROM entry e JOIN subject s ON s.n = e.subject LEFT JOIN subject j ON j.n = s.job
		WHERE e.n > $1 GROUP BY s.n, s.id`, after)
	if err != nil {
		return nil, 0, s.notRead(err)
	}
	defer rows.Close()
	latest = after
	for rows.Next() {
		var c Change
		var first int
		var place int64
		if err := rows.Scan(&c.ID, &c.Job, &first, &c.Version, &place); err != nil {
			return nil, 0, s.notRead(err)
		}
		c.Begun, latest = first == 0, max(latest, place)
		list = append(list, c)
	}
	if err := rows.Err(); err != nil {
		return nil, 0, s.notRead(err)
	}
	return list, latest, nil
}
