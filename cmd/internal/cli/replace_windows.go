package cli

import (
	"os"
	"path/filepath"
)

// replaceFile puts a file in place of the one that may be there, whole or not
// at all. Renaming over a file replaces it here too; the library used
// elsewhere leaves Windows out because the replacement may not survive a power
// cut.
func replaceFile(path string, data []byte) (err error) {
	temporary, err := os.CreateTemp(filepath.Dir(path), ".drawdown-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			os.Remove(temporary.Name())
		}
	}()
	_, err = temporary.Write(data)
	if syncErr := temporary.Sync(); err == nil {
		err = syncErr
	}
	if closeErr := temporary.Close(); err == nil {
		err = closeErr
	}
	if err == nil {
		err = os.Rename(temporary.Name(), path)
	}
	return err
}
