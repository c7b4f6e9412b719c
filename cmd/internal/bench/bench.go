// Package bench serves the page at the bench: the routes with which a tablet or
// another program follows a joint, and the pages themselves. It decides nothing
// about bolts, draws nothing and stores nothing. The rules are in sequence/run,
// the record in cmd/internal/record, the sheets in cmd/internal/job and the
// pages in render/page; gate decides on access.
// A route is one function in the file of its group. It answers in JSON; an
// error has a "reason" in the language of the reader.
package bench

import (
	"fmt"
	"net/http"
	"path/filepath"
	"sync"
	"time"

	"drawdown/cmd/internal/bench/gate"
	"drawdown/cmd/internal/record"
	"drawdown/render/words"
)

// Options control how the page is served.
type Options struct {
	Folder  string // of the shop's pattern and machine files
	Data    string // folder of the record and of the access rights
	Store   string // address of a database that holds the record instead of the folder; empty: none
	Port    int    // 0: a free one
	Share   bool   // on the workshop's network, too
	Program string // version, kept with every record
	Words   *words.Catalogue
	Now     func() time.Time
	Limits  Limits
}

// Bench is the page with all that it serves.
type Bench struct {
	Options
	gate  *gate.Gate
	store *record.Store
	shop  *shop
	open  *openRuns
	jobs  openJobs
	share *sharing // nil: not shared
	port  int

	followed followed // by this process

	stopping chan struct{} // closed when the page ends, to stop long requests
	stop     sync.Once
}

// Open opens the record and the shop's folder, and makes both on first use. The
// caller must close the result.
func Open(o Options) (*Bench, error) {
	shop, err := openShop(o.Folder)
	if err != nil {
		return nil, err
	}
	store, err := record.Open(record.Place{Folder: o.Data, Address: o.Store})
	if err != nil {
		shop.close()
		return nil, err
	}
	b := &Bench{Options: o, shop: shop, store: store, open: newOpenRuns(store), jobs: openJobs{all: map[string]*openJob{}}, stopping: make(chan struct{})}
	if b.gate, err = gate.Open(filepath.Join(o.Data, "sessions.json"), b.now); err == nil {
		err = b.startFollowing()
	}
	if err != nil {
		b.Close()
		return nil, err
	}
	return b, nil
}

// Close ends long requests, and closes the record once all that waits is
// written.
func (b *Bench) Close() error {
	b.stop.Do(func() { close(b.stopping) })
	b.shop.close()
	b.stopFollowing()
	return b.store.Close()
}

// now returns the server's time: entries are judged by it and stored with it.
func (b *Bench) now() time.Time {
	if b.Now != nil {
		return b.Now()
	}
	return time.Now().UTC().Round(time.Millisecond) // keep the time that was used to judge
}

// Handler serves the page to this machine on its port.
func (b *Bench) Handler() http.Handler {
	return b.guarded(b.routes(), func() []string { return gate.Loopback }, func() int { return b.port })
}

// Address returns the address of the page on this machine. It contains the key.
func (b *Bench) Address() string {
	return fmt.Sprintf("http://127.0.0.1:%d/?key=%s", b.port, b.gate.Key())
}

// Limits limit the cost of a request.
type Limits struct {
	Body        int64         // bytes of an entry or another text
	Photo       int64         // bytes of a picture
	Header      int           // bytes of the headers of a request
	HeaderTime  time.Duration // to send them
	BodyTime    time.Duration // to send a whole request
	PhotoTime   time.Duration
	AnswerTime  time.Duration // to receive the answer
	Idle        time.Duration // between two requests
	Connections int
	OfOne       int           // connections from one address
	Beat        time.Duration // between two keep-alives of the events
}

// Usual limits suit a whole shop of tablets, and a slow network.
var Usual = Limits{
	Body: 64 << 10, Photo: 8 << 20, Header: 16 << 10,
	HeaderTime: 5 * time.Second, BodyTime: 15 * time.Second, PhotoTime: 2 * time.Minute, AnswerTime: time.Minute, Idle: 2 * time.Minute,
	Connections: 1000, OfOne: 250, Beat: 20 * time.Second,
}

const (
	longestCode   = 12
	mostOnPage    = 100 // records
	longestWho    = 60
	longestName   = 200 // in a path or a query, in bytes
	mostLines     = 500 // of a list of records on a page
	stopWithin    = 1500 * time.Millisecond
	assetsLast    = "public, max-age=31536000, immutable" // a file's address changes with its contents
	mostShopFiles = 2000
	mostPattern   = 8 << 20 // bytes of an edit, with the text of the file
)
