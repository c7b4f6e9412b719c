// Package machine is about the computer that the program runs on: how much memory
// a card may take, and how far a long work is, told on a terminal. It imports
// nothing of the project.
package machine

import (
	"io"
	"math"
	"os"
	"runtime/debug"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// Progress shows how far a long work is, on a terminal only and only once the
// work has taken a second.
type Progress struct {
	to    *os.File // nil: no terminal
	total int
	begun time.Time
	bar   *progressbar.ProgressBar
}

// NewProgress begins to show work of so many pieces.
func NewProgress(to io.Writer, total int) *Progress {
	shown := &Progress{total: total, begun: time.Now()}
	if file, ok := to.(*os.File); ok && term.IsTerminal(int(file.Fd())) {
		shown.to = file
	}
	return shown
}

const patience = time.Second

// Done says how many pieces of the work are done.
func (p *Progress) Done(pieces int) {
	if p.to == nil || p.bar == nil && time.Since(p.begun) < patience {
		return
	}
	if p.bar == nil {
		p.bar = progressbar.NewOptions(p.total, progressbar.OptionSetWriter(p.to), progressbar.OptionClearOnFinish(),
			progressbar.OptionShowCount(), progressbar.OptionSetWidth(30), progressbar.OptionThrottle(100*time.Millisecond))
	}
	p.bar.Set(pieces)
}

// Clear takes the bar off the terminal.
func (p *Progress) Clear() {
	if p.bar != nil {
		p.bar.Clear()
	}
}

// smallCardBytes is what one ordinary card needs with room to spare. The bench
// PC is often an old one: garbage is rather collected once more than let grow.
const smallCardBytes = 13 << 20

// KeepSmall bounds the memory for a card of ordinary size, unless the user has
// set a bound. Large cards and fine pictures need more and get it.
func KeepSmall(fasteners, dpi int) {
	const (
		ordinaryCount = 100
		ordinaryDPI   = 300
	)
	if fasteners > ordinaryCount || dpi > ordinaryDPI || debug.SetMemoryLimit(-1) != math.MaxInt64 {
		return
	}
	debug.SetMemoryLimit(smallCardBytes)
}
