//go:build !windows

package machine

// OwnConsole reports whether the program was opened by a double click. Here a file
// manager starts no program of the terminal without one: it stays a misuse.
func OwnConsole() bool { return false }
