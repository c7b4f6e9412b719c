package page

import (
	"fmt"
	"io"
	"strings"
	"time"

	"drawdown/render/words"
)

// ShareView is the page for admitting tablets. Its script posts to
// /api/share/codes for a new code, and deletes /api/share/sessions/ID.
type ShareView struct {
	Frame
	On          bool
	Addresses   []string // https://… of this computer in the workshop network
	Code        string   // valid for one device; "" if none was requested
	Ends        time.Time
	QR          [][]bool // of the address with the code; true is a dark square
	Certificate string   // address of the authority's certificate
	Fingerprint string   // SHA-256 of the certificate
	Devices     []Device
}

// Device is a tablet that joined.
type Device struct {
	ID      string
	Name    string // as reported by its browser
	Address string
	Since   time.Time
	Seen    time.Time
}

// Share writes the page for admitting tablets.
func Share(w io.Writer, v ShareView) error { return write(w, "share", v) }

// OffLine says how to turn sharing on.
func (v ShareView) OffLine() string { return fmt.Sprintf(v.Text().Share.OffSays, "--share") }

// CodeLine says how long the code is valid.
func (v ShareView) CodeLine() string { return fmt.Sprintf(v.Text().Share.CodeSays, v.when(v.Ends)) }

// squares is a code as a picture of dark squares.
type squares struct{ Box, Path string }

// quiet is the light border that a code needs (ISO/IEC 18004: four squares).
const quiet = 4

// Squares draws the code; nil if there is none.
func (v ShareView) Squares() *squares {
	if len(v.QR) == 0 {
		return nil
	}
	var path strings.Builder
	for y, row := range v.QR {
		for x, dark := range row {
			if dark {
				fmt.Fprintf(&path, "M%d %dh1v1h-1z", x, y)
			}
		}
	}
	side := len(v.QR) + 2*quiet
	return &squares{fmt.Sprintf("%d %d %d %d", -quiet, -quiet, side, side), path.String()}
}

type shownDevice struct{ ID, Name, About string }

// DeviceLines are the devices, in words.
func (v ShareView) DeviceLines() []shownDevice {
	var all []shownDevice
	for _, d := range v.Devices {
		all = append(all, shownDevice{d.ID, d.Name, words.Row(d.Address, fmt.Sprintf(v.Text().Share.Since, v.when(d.Since)))})
	}
	return all
}

// JoinView asks a tablet for its code. Its form posts code to /join.
type JoinView struct {
	Frame
	Code   string        // from the address
	Wrong  bool          // the last code was wrong, used or old
	Locked time.Duration // time until the next attempt, after too many wrong codes
}

// Join writes the page that asks for a code.
func Join(w io.Writer, v JoinView) error { return write(w, "join", v) }

// Problem says what was wrong with the last code.
func (v JoinView) Problem() string {
	t := v.Text().Join
	switch {
	case v.Locked > 0:
		return fmt.Sprintf(t.Locked, v.Words.Figure(fmt.Sprintf("%d min", int(v.Locked.Minutes())+1)))
	case v.Wrong:
		return t.Wrong
	}
	return ""
}
