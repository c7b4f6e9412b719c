package record

import (
	"errors"
	"os"
	"syscall"
)

const sharingViolation syscall.Errno = 32 // ERROR_SHARING_VIOLATION

// lockFile opens the file so that no other process can open it, until it is
// closed or the process ends, however it ends. taken says that another process
// has it open.
func lockFile(path string) (file *os.File, taken bool, err error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, false, err
	}
	handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, 0, nil,
		syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	if err != nil {
		return nil, errors.Is(err, sharingViolation), err
	}
	return os.NewFile(uintptr(handle), path), false, nil
}
