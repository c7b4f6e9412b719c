//go:build !windows

package files

import (
	"io/fs"
	"path/filepath"

	"github.com/google/renameio/v2"
)

// temporary is a file written in full, ready to take the place of another.
type temporary struct{ pending *renameio.PendingFile }

// newTemporary writes the data beside the path it is meant for. A file that is
// there keeps its permissions.
func newTemporary(path string, data []byte, mode fs.FileMode) (*temporary, error) {
	pending, err := renameio.NewPendingFile(path, renameio.WithTempDir(filepath.Dir(path)),
		renameio.WithPermissions(mode), renameio.WithExistingPermissions())
	if err != nil {
		return nil, err
	}
	_, err = pending.Write(data)
	if err == nil {
		err = pending.Sync() // a full disk may tell only now
	}
	if err != nil {
		pending.Cleanup()
		return nil, err
	}
	return &temporary{pending}, nil
}

// replace puts the file in place of the one that may be there.
func (t *temporary) replace() error { return t.pending.CloseAtomicallyReplace() }

// discard removes the file, unless it has taken its place.
func (t *temporary) discard() { t.pending.Cleanup() }
