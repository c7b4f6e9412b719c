package machine

import (
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

// OnEnd has the work tidied up when someone ends the program: by Ctrl-C, by closing
// the terminal, by a system that shuts down. The program then ends as it would have,
// so that a script around it ends too. A signal that it was started to ignore it
// goes on ignoring.
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
			fmt.Fprintln(os.Stderr) // the prompt stands on a line of its own
		}
		tidy()
		endBy(s)
	}()
}
