package cli

import (
	"os"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// progress shows how far a long work is, on a terminal only and only once the
// work has taken a second.
type progress struct {
	to    *os.File // nil: no terminal
	total int
	begun time.Time
	bar   *progressbar.ProgressBar
}

func (p *Program) progress(total int) *progress {
	shown := &progress{total: total, begun: time.Now()}
	if file, ok := p.Stderr.(*os.File); ok && term.IsTerminal(int(file.Fd())) {
		shown.to = file
	}
	return shown
}

const patience = time.Second

// done says how many pieces of the work are done.
func (p *progress) done(pieces int) {
	if p.to == nil || p.bar == nil && time.Since(p.begun) < patience {
		return
	}
	if p.bar == nil {
		p.bar = progressbar.NewOptions(p.total, progressbar.OptionSetWriter(p.to), progressbar.OptionClearOnFinish(),
			progressbar.OptionShowCount(), progressbar.OptionSetWidth(30), progressbar.OptionThrottle(100*time.Millisecond))
	}
	p.bar.Set(pieces)
}

// clear takes the bar off the terminal.
func (p *progress) clear() {
	if p.bar != nil {
		p.bar.Clear()
	}
}
