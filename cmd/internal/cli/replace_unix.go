//go:build !windows

package cli

import "github.com/google/renameio/v2"

// replaceFile puts a file in place of the one that may be there, whole or not
// at all.
func replaceFile(path string, data []byte) error {
	return renameio.WriteFile(path, data, 0o666)
}
