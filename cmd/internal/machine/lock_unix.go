//go:build !windows

package machine

import (
	"errors"
	"os"
	"syscall"
)

// LockFile holds a lock until the file is closed or the process ends, in
// whatever way. If another process holds it, taken is true.
func LockFile(path string) (file *os.File, taken bool, err error) {
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

// LockFolder waits until nobody else holds the folder, and then holds it. If
// the disk has no locks it does without.
func LockFolder(folder string) (unlock func()) {
	held, err := os.Open(folder)
	if err != nil {
		return func() {}
	}
	_ = syscall.Flock(int(held.Fd()), syscall.LOCK_EX)
	return func() { held.Close() }
}
