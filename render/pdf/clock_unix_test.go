//go:build unix

package pdf

import (
	"syscall"
	"time"
)

// worked gives the processor time that this process has taken. A long run
// seldom has the machine to itself; what others take is not counted here.
func worked() time.Duration {
	var usage syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &usage); err != nil {
		panic(err)
	}
	return time.Duration(usage.Utime.Nano() + usage.Stime.Nano())
}
