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

// Time limits for the database. A tablet waits ten seconds for the answer to a
// tap.
const (
	connectWithin = 3 * time.Second
	answerWithin  = 15 * time.Second
)

// sessionSettings apply to each connection, unless the address sets others. A
// process that is cut off within a transaction stops the others only for a
// moment.
var sessionSettings = map[string]string{
	"application_name":                    "drawdown",
	"lock_timeout":                        "5s",
	"idle_in_transaction_session_timeout": "5s",
}

// ErrAddress is an invalid address of a PostgreSQL database. It contains
// nothing of the text: that may include a password.
var ErrAddress = errors.New("no address of a PostgreSQL database")

// At returns the database at an address such as
// postgres://drawdown@db.example/records.
func At(address string) (Engine, error) {
	parts, err := url.Parse(address)
	if err != nil || parts.Scheme != "postgres" && parts.Scheme != "postgresql" {
		return Engine{}, ErrAddress
	}
	config, err := pgx.ParseConfig(address)
	if err != nil {
		return Engine{}, cmp.Or(errors.Unwrap(err), ErrAddress) // the original error would print the address
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

// Name returns the name of the database without its password.
func (e Engine) Name() string {
	return net.JoinHostPort(e.config.Host, strconv.Itoa(int(e.config.Port))) + "/" + e.config.Database
}

// impatient is a connection with a time limit for answers: a broken network
// gives no sign.
type impatient struct{ net.Conn }

func (c impatient) Read(data []byte) (int, error) {
	c.SetReadDeadline(time.Now().Add(answerWithin))
	return c.Conn.Read(data)
}

func (c impatient) Write(data []byte) (int, error) {
	c.SetWriteDeadline(time.Now().Add(answerWithin))
	return c.Conn.Write(data)
}

// bounded sets the time limit for all connections of a config.
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

// isCut reports whether an error means that a connection ended.
func isCut(err error) bool {
	return slices.ContainsFunc([]error{io.EOF, io.ErrUnexpectedEOF, driver.ErrBadConn, sql.ErrConnDone}, func(cut error) bool { return errors.Is(err, cut) })
}
