//go:build !windows

package machine

// OwnConsole reports whether the program was opened by a double click. Here it
// is false: file managers start no terminal program without a terminal, so a
// missing command stays a misuse.
func OwnConsole() bool { return false }
