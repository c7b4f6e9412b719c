package page

import (
	"io"
	"time"
)

// ShareView is the page that lets tablets in. Its forms post to /share: do=on,
// do=off, do=code for a new code, and do=end with device.
type ShareView struct {
	Frame
	On          bool
	Addresses   []string // https://…, of this computer in the workshop network
	Code        string   // valid for one device; empty where none was asked for
	Ends        time.Time
	QR          [][]bool // of the address with the code, dark squares true
	Certificate string   // address of the authority's certificate
	Fingerprint string   // of it, SHA-256
	Devices     []Device
}

// Device is a tablet that joined.
type Device struct {
	ID      string
	Name    string // what its browser says it is
	Address string
	Since   time.Time
	Seen    time.Time
}

// Share writes the page that lets tablets in.
func Share(w io.Writer, v ShareView) error { return write(w, "share", v) }

// JoinView asks a tablet for its code. Its form posts code to /join.
type JoinView struct {
	Frame
	Code   string        // as it came with the address
	Wrong  bool          // the last code was wrong, used or old
	Locked time.Duration // too many wrong codes: so long until the next
}

// Join writes the page that asks for a code.
func Join(w io.Writer, v JoinView) error { return write(w, "join", v) }
