package postgres

import (
	"cmp"
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"io"
	"maps"
	"net"
	"net/url"
	"slices"
	"strconv"
	"time"

	"github.com/jackc/pgx/v5"
)

// How long the database may take. A tablet waits ten seconds for the answer to a tap.
const (
	connectWithin = 3 * time.Second
	answerWithin  = 15 * time.Second
)

// sessionSettings hold for each connection, unless the address says otherwise. One
// process that is cut off in the middle of a transaction stops the others for a
// moment only.
var sessionSettings = map[string]string{
	"application_name":                    "drawdown",
	"lock_timeout":                        "5s",
	"idle_in_transaction_session_timeout": "5s",
}

// ErrAddress is an address that is none of a PostgreSQL database. It holds no part
// of what was written: that may be a password.
var ErrAddress = errors.New("no address of a PostgreSQL database")

// At is the database at an address such as postgres://drawdown@db.example/records.
func At(address string) (Engine, error) {
	parts, err := url.Parse(address)
	if err != nil || parts.Scheme != "postgres" && parts.Scheme != "postgresql" {
		return Engine{}, ErrAddress
	}
	config, err := pgx.ParseConfig(address)
	if err != nil {
		return Engine{}, cmp.Or(errors.Unwrap(err), ErrAddress) // as it is, it would print the address
	}
	given := config.RuntimeParams
	config.RuntimeParams = maps.Clone(sessionSettings)
	maps.Copy(config.RuntimeParams, given)
	if config.ConnectTimeout == 0 {
		config.ConnectTimeout = connectWithin
	}
	dialer := net.Dialer{KeepAliveConfig: net.KeepAliveConfig{Enable: true, Idle: 5 * time.Second, Interval: 5 * time.Second, Count: 2}}
	config.DialFunc = dialer.DialContext
	return Engine{config}, nil
}

// Name names the database without its password.
func (e Engine) Name() string {
	return net.JoinHostPort(e.config.Host, strconv.Itoa(int(e.config.Port))) + "/" + e.config.Database
}

// impatient is a connection on which an answer has to come in time: a network that
// is cut says nothing.
type impatient struct{ net.Conn }

func (c impatient) Read(data []byte) (int, error) {
	c.SetReadDeadline(time.Now().Add(answerWithin))
	return c.Conn.Read(data)
}

func (c impatient) Write(data []byte) (int, error) {
	c.SetWriteDeadline(time.Now().Add(answerWithin))
	return c.Conn.Write(data)
}

// bounded has every answer on the connections of a config come in time.
func bounded(config *pgx.ConnConfig) {
	dial := config.DialFunc
	config.DialFunc = func(ctx context.Context, network, address string) (net.Conn, error) {
		conn, err := dial(ctx, network, address)
		if err != nil {
			return nil, err
		}
		return impatient{conn}, nil
	}
}

// isCut reports whether an error is that of a connection which ended.
func isCut(err error) bool {
	return slices.ContainsFunc([]error{io.EOF, io.ErrUnexpectedEOF, driver.ErrBadConn, sql.ErrConnDone}, func(cut error) bool { return errors.Is(err, cut) })
}
