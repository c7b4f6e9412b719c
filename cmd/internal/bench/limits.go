package bench

import "time"

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
)
