package bench

import (
	"context"
	"log"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"

	"drawdown/cmd/internal/record"
)

// followed records how far this process has followed a record that other
// processes write, too.
type followed struct {
	mu     sync.Mutex
	place  int64     // in the chain
	failed time.Time // when the database last failed to answer
	why    error

	watching sync.WaitGroup
	end      context.CancelFunc
}

// askAgain is the pause after a database did not answer: otherwise all requests
// would wait for it in turn.
const askAgain = time.Second

// startFollowing follows a shared record from where it is now.
func (b *Bench) startFollowing() error {
	var ctx context.Context
	ctx, b.followed.end = context.WithCancel(context.Background())
	if !b.store.Shared() {
		return nil
	}
	head, err := b.store.Head()
	if err != nil {
		return err
	}
	b.followed.place = head.Place
	b.followed.watching.Go(func() {
		b.store.Watch(ctx, func() { b.follow() }, func(err error) { log.Printf("%v", err) })
	})
	return nil
}

func (b *Bench) stopFollowing() {
	if b.followed.end != nil {
		b.followed.end()
		b.followed.watching.Wait()
	}
}

// upToDate updates the state in memory from the record before a request uses
// it.
func (b *Bench) upToDate(r *http.Request) error {
	if !b.store.Shared() || !ofRecord(r.URL.Path) {
		return nil
	}
	f := &b.followed
	f.mu.Lock()
	why := f.why
	if time.Since(f.failed) > askAgain {
		why = nil
	}
	f.mu.Unlock()
	if why != nil {
		return why
	}
	return b.follow()
}

// ofRecord reports whether requests to a path show or change a record. An open
// page asks for the time, and so learns whether anything can be recorded.
func ofRecord(path string) bool {
	return path == "/" || slices.ContainsFunc([]string{"/api/runs", "/api/jobs", "/runs/", "/jobs/", "/records", "/patterns/", timePath},
		func(start string) bool { return strings.HasPrefix(path, start) })
}

// follow reads what was written since, here or by another process.
func (b *Bench) follow() error {
	f := &b.followed
	f.mu.Lock()
	defer f.mu.Unlock()
	changes, place, err := b.store.Changes(f.place)
	for _, c := range changes {
		if err == nil {
			b.jobs.follow(c)
			err = b.open.follow(c)
		}
	}
	if f.why = err; err != nil {
		f.failed = time.Now()
		return err
	}
	f.place = place
	return nil
}

// follow updates a run that is behind its record, and wakes those who wait for
// it.
func (o *openRuns) follow(c record.Change) error {
	o.mu.Lock()
	one, open := o.all[c.ID]
	o.mu.Unlock()
	if !open {
		return nil
	}
	one.mu.Lock()
	defer one.mu.Unlock()
	if len(one.kept) >= c.Version {
		return nil
	}
	err := one.read()
	if err == nil {
		one.tell()
	}
	return err
}

// follow makes a job be read again if it is behind its record or has a new run.
func (o *openJobs) follow(c record.Change) {
	o.Lock()
	defer o.Unlock()
	if one, open := o.all[c.ID]; open && one.state.Version() < c.Version {
		delete(o.all, c.ID)
	}
	if c.Begun {
		delete(o.all, c.Job)
	}
}
