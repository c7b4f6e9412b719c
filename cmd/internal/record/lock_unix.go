//go:build !windows

package record

import (
	"errors"
	"os"
	"syscall"
)

// lockFile holds a lock until the file is closed or the process ends, however
// it ends. taken says that another process holds it.
func lockFile(path string) (file *os.File, taken bool, err error) {
	file, err = os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, false, err
	}
	if err := syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		file.Close()
		return nil, errors.Is(err, syscall.EWOULDBLOCK), err
	}
	return file, false, nil
}
