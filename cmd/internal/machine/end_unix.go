//go:build !windows

package machine

import (
	"os"
	"os/signal"
	"syscall"
)

// endBy ends the program by the signal itself: a shell that runs a list of
// commands then stops.
func endBy(s os.Signal) {
	signal.Reset(s)
	_ = syscall.Kill(os.Getpid(), s.(syscall.Signal))
	select {} // until it arrives
}
