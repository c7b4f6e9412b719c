package machine

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync/atomic"
	"time"

	"golang.org/x/term"
)

// Progress shows how far a long work is, on a terminal only and only once the
// work has taken a second.
type Progress struct {
	to    io.Writer // nil: no terminal
	total int
	next  time.Time // when the bar is drawn again
	shown bool
}

const (
	patience = time.Second
	pause    = 100 * time.Millisecond
)

// NewProgress begins to show work of so many pieces.
func NewProgress(to io.Writer, total int) *Progress {
	p := &Progress{total: total, next: time.Now().Add(patience)}
	if file, ok := to.(*os.File); ok && term.IsTerminal(int(file.Fd())) {
		p.to = to
	}
	return p
}

// Done says how many pieces of the work are done.
func (p *Progress) Done(pieces int) {
	if p.to == nil || time.Now().Before(p.next) {
		return
	}
	p.next, p.shown = time.Now().Add(pause), true
	barShown.Store(true)
	fmt.Fprint(p.to, "\r"+bar(pieces, p.total))
}

// barShown reports whether a bar stands on the terminal.
var barShown atomic.Bool

const barWidth = 30

// bar draws how far a work is: its first half, of four: [===============               ] 2/4
func bar(pieces, total int) string {
	full := strings.Repeat("=", barWidth*min(pieces, total)/max(total, 1))
	return fmt.Sprintf("[%-*s] %d/%d", barWidth, full, pieces, total)
}

// Clear takes the bar off the terminal.
func (p *Progress) Clear() {
	if p.shown {
		barShown.Store(false)
		fmt.Fprint(p.to, "\r"+strings.Repeat(" ", len(bar(p.total, p.total)))+"\r")
	}
}
