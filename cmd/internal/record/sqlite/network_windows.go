package sqlite

import (
	"path/filepath"
	"strings"
	"syscall"
	"unsafe"
)

var driveType = syscall.NewLazyDLL("kernel32.dll").NewProc("GetDriveTypeW")

const remoteDrive = 4 // DRIVE_REMOTE

// NetworkSystem reports that a folder is on a network drive; it is empty for a
// disk of this computer. Not tried on a real computer.
func NetworkSystem(folder string) string {
	volume := filepath.VolumeName(folder)
	if strings.HasPrefix(volume, `\\`) && !strings.HasPrefix(volume, `\\?\`) && !strings.HasPrefix(volume, `\\.\`) {
		return volume
	}
	root, err := syscall.UTF16PtrFromString(volume + `\`)
	if err != nil {
		return ""
	}
	if kind, _, _ := driveType.Call(uintptr(unsafe.Pointer(root))); kind == remoteDrive {
		return volume
	}
	return ""
}
