package files

import (
	"io/fs"
	"os"
	"path/filepath"
)

// temporary is a file written in full, ready to take the place of another.
// Renaming over a file replaces it here too; the library used elsewhere leaves
// Windows out because the replacement may not survive a power cut.
type temporary struct {
	name, path string
}

// newTemporary writes the data beside the path it is meant for. Who may read it
// the folder decides.
func newTemporary(path string, data []byte, _ fs.FileMode) (*temporary, error) {
	file, err := os.CreateTemp(filepath.Dir(path), ".drawdown-*")
	if err != nil {
		return nil, err
	}
	_, err = file.Write(data)
	if err == nil {
		err = file.Sync()
	}
	// Windows renames and removes no file that is open.
	if closeErr := file.Close(); err == nil {
		err = closeErr
	}
	if err != nil {
		os.Remove(file.Name())
		return nil, err
	}
	return &temporary{file.Name(), path}, nil
}

// replace puts the file in place of the one that may be there.
func (t *temporary) replace() error {
	err := os.Rename(t.name, t.path)
	if err == nil {
		t.name = ""
	}
	return err
}

// discard removes the file, unless it has taken its place.
func (t *temporary) discard() {
	if t.name != "" {
		os.Remove(t.name)
	}
}
