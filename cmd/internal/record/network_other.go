//go:build !linux && !darwin && !windows

package record

// networkSystem is known on Linux, macOS and Windows only.
func networkSystem(string) string { return "" }
