package machine

import (
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

// OnEnd runs tidy when someone ends the program: by Ctrl-C, by closing the
// terminal, by shutting down the system. The program then ends as it would have
// otherwise, so that a script around it ends too. Signals ignored at the start
// of the program stay ignored.
func OnEnd(tidy func()) {
	ends := make(chan os.Signal, 1)
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) {
			signal.Notify(ends, s)
		}
	}
	go func() {
		s := <-ends
		if barShown.Load() {
			fmt.Fprintln(os.Stderr) // put the prompt on its own line
		}
		tidy()
		endBy(s)
	}()
}
