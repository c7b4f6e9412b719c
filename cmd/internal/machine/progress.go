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

// Progress shows the progress of long work, only on a terminal and only once
// the work has taken a second.
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

// NewProgress starts to show work of total pieces.
func NewProgress(to io.Writer, total int) *Progress {
	p := &Progress{total: total, next: time.Now().Add(patience)}
	if file, ok := to.(*os.File); ok && term.IsTerminal(int(file.Fd())) {
		p.to = to
	}
	return p
}

// Done sets how many pieces of the work are done.
func (p *Progress) Done(pieces int) {
	if p.to == nil || time.Now().Before(p.next) {
		return
	}
	p.next, p.shown = time.Now().Add(pause), true
	barShown.Store(true)
	fmt.Fprint(p.to, "\r"+bar(pieces, p.total))
}

// barShown reports whether a bar is on the terminal.
var barShown atomic.Bool

const barWidth = 30

// bar draws the progress of work; two of four pieces are: [=============== ]
// 2/4
func bar(pieces, total int) string {
	full := strings.Repeat("=", barWidth*min(pieces, total)/max(total, 1))
	return fmt.Sprintf("[%-*s] %d/%d", barWidth, full, pieces, total)
}

// Clear removes the bar from the terminal.
func (p *Progress) Clear() {
	if p.shown {
		barShown.Store(false)
		fmt.Fprint(p.to, "\r"+strings.Repeat(" ", len(bar(p.total, p.total)))+"\r")
	}
}
