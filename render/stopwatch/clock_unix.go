//go:build unix

package stopwatch

import (
	"syscall"
	"time"
)

// now returns the processor time that this process has taken. A long run
// seldom has the machine to itself; what others take is not counted here.
func now() time.Duration {
	var usage syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &usage); err != nil {
		panic(err)
	}
	return time.Duration(usage.Utime.Nano() + usage.Stime.Nano())
}
