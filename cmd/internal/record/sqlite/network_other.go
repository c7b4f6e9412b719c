//go:build !linux && !darwin && !windows

package sqlite

// NetworkSystem is known on Linux, macOS and Windows only.
func NetworkSystem(string) string { return "" }
