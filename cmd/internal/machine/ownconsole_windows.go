package machine

import (
	"syscall"
	"unsafe"
)

// OwnConsole reports whether the program has a console to itself: it was opened
// by a double click, and nobody typed a command. The system counts the
// processes that share the console (GetConsoleProcessList).
func OwnConsole() bool {
	list := syscall.NewLazyDLL("kernel32.dll").NewProc("GetConsoleProcessList")
	if list.Find() != nil {
		return false
	}
	var processes [2]uint32
	count, _, _ := list.Call(uintptr(unsafe.Pointer(&processes[0])), uintptr(len(processes)))
	return count == 1
}
