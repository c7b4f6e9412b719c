package machine

import (
	"fmt"
	"io"
	"os"
	"time"

	"golang.org/x/term"
)

// Waiting shows on a terminal that work of unknown length is in progress: the
// seconds that it has taken, from the first one on. done removes them.
func Waiting(to io.Writer) (done func()) {
	file, ok := to.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return func() {}
	}
	every := time.NewTicker(time.Second)
	clear := seconds(to, every.C)
	return func() {
		every.Stop()
		clear()
	}
}

// seconds counts the ticks of a clock.
func seconds(to io.Writer, ticks <-chan time.Time) (done func()) {
	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		for count := 1; ; count++ {
			select {
			case <-ticks:
				barShown.Store(true)
				fmt.Fprintf(to, "\r%d s", count)
			case <-stop:
				if barShown.Swap(false) {
					fmt.Fprint(to, "\r          \r")
				}
				return
			}
		}
	}()
	return func() {
		close(stop)
		<-stopped
	}
}
