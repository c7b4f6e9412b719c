package machine

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"time"
)

const (
	sharingViolation syscall.Errno = 32         // ERROR_SHARING_VIOLATION
	mayDelete                      = 0x00010000 // DELETE
	hidden                         = 0x2        // FILE_ATTRIBUTE_HIDDEN
	deleteOnClose                  = 0x04000000 // FILE_FLAG_DELETE_ON_CLOSE
)

// LockFile opens the file so that no other process can open it, until it is
// closed or the process ends, in whatever way. If another process has it open,
// taken is true.
func LockFile(path string) (file *os.File, taken bool, err error) {
	return openAlone(path, syscall.GENERIC_READ|syscall.GENERIC_WRITE, syscall.FILE_ATTRIBUTE_NORMAL)
}

// LockFolder waits until nobody else holds the folder, and then holds it by a
// hidden file that is deleted with the lock. If no file can be made in the
// folder it does without.
func LockFolder(folder string) (unlock func()) {
	const pause, most = 2 * time.Millisecond, 5000
	for range most {
		file, taken, err := openAlone(filepath.Join(folder, ".drawdown-lock"), syscall.GENERIC_READ|mayDelete, hidden|deleteOnClose)
		if err == nil {
			return func() { file.Close() }
		}
		if !taken {
			break
		}
		time.Sleep(pause)
	}
	return func() {}
}

func openAlone(path string, access, attributes uint32) (file *os.File, taken bool, err error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, false, err
	}
	handle, err := syscall.CreateFile(name, access, 0, nil, syscall.OPEN_ALWAYS, attributes, 0)
	if err != nil {
		return nil, errors.Is(err, sharingViolation), err
	}
	return os.NewFile(uintptr(handle), path), false, nil
}
