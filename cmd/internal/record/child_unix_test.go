//go:build !windows

package record

import (
	"os"
	"os/signal"
	"strconv"
	"syscall"
)

// prepareChild limits the size of files, if asked to: a disk that fills up
// sooner or later.
func prepareChild() {
	most, err := strconv.ParseUint(os.Getenv(child+"_MOST"), 10, 63)
	if err != nil {
		return
	}
	signal.Ignore(syscall.SIGXFSZ)
	limit := syscall.Rlimit{Cur: most, Max: most}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit); err != nil {
		panic(err)
	}
}
