package postgres

import (
	"context"
	"database/sql"
	"time"

	"github.com/jackc/pgx/v5"
)

// channel is the notification channel on which processes announce that
// something was written.
const channel = "drawdown"

// How a listener checks its connection, and how long it waits before another.
const (
	listenWithin = 20 * time.Second
	tryAgain     = time.Second
)

// Tell wakes the listeners once the transaction is committed.
func (Engine) Tell(tx *sql.Tx) error {
	_, err := tx.Exec("SELECT pg_notify($1, '')", channel)
	return err
}

// Listen calls changed each time that something was written, until the context
// ends, and each time that it reconnects: something may have been written
// meanwhile. It calls lost once for each connection that ends or fails.
func (e Engine) Listen(ctx context.Context, changed func(), lost func(error)) {
	reached := true
	for ctx.Err() == nil {
		err := e.listenOnce(ctx, func() { reached = true; changed() })
		if ctx.Err() == nil && reached {
			reached = false
			lost(err)
		}
		select {
		case <-ctx.Done():
		case <-time.After(tryAgain):
		}
	}
}

// listenOnce listens until its connection ends.
func (e Engine) listenOnce(ctx context.Context, changed func()) error {
	conn, err := pgx.ConnectConfig(ctx, e.config.Copy())
	if err != nil {
		return err
	}
	defer conn.Close(context.Background())
	if _, err := conn.Exec(ctx, "LISTEN "+channel); err != nil {
		return err
	}
	for {
		changed()
		for heard := false; !heard; {
			if heard, err = hear(ctx, conn); err != nil {
				return err
			}
		}
	}
}

// hear waits for a notification, and checks whether a silent connection is
// still open.
func hear(ctx context.Context, conn *pgx.Conn) (heard bool, err error) {
	wait, cancel := context.WithTimeout(ctx, listenWithin)
	defer cancel()
	if _, err = conn.WaitForNotification(wait); err == nil {
		return true, nil
	}
	if ctx.Err() != nil || conn.IsClosed() {
		return false, err
	}
	ask, stop := context.WithTimeout(ctx, connectWithin)
	defer stop()
	return false, conn.Ping(ask)
}
