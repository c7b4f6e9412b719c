package record

import (
	"os"
	"path/filepath"
	"strings"

	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/record/sqlite"
	"drawdown/geometry/finding"
)

// Names of files in a data folder.
const (
	storeFile = "record.db"
	lockName  = "lock"
	pageFile  = "page" // address of the running page, for a second start
)

// DefaultFolder returns the default data folder.
func DefaultFolder() (string, error) {
	if data := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(data) {
		return filepath.Join(data, "drawdown"), nil
	}
	base, err := os.UserConfigDir()
	if err != nil {
		return "", finding.Failed(NoUserFolder, finding.Values{"why": err})
	}
	if home, err := os.UserHomeDir(); err == nil && base == filepath.Join(home, ".config") {
		base = filepath.Join(home, ".local", "share") // XDG Base Directory Specification
	}
	return filepath.Join(base, "drawdown"), nil
}

// Announce leaves the address of the running page for a second start. It
// contains a key: nobody else may read it.
func (s *Store) Announce(address string) error {
	path := filepath.Join(s.folder, pageFile)
	os.Remove(path) // an existing file that others may read would keep its permissions
	if err := os.WriteFile(path, []byte(address), 0o600); err != nil {
		return s.notKept(err)
	}
	return nil
}

// Announced returns the address left by the process that holds the folder; it
// is empty if there is none.
func Announced(folder string) string {
	text, _ := os.ReadFile(filepath.Join(folder, pageFile))
	return strings.TrimSpace(string(text))
}

// made makes the folder if it is missing, and returns its full path.
func made(folder string) (string, error) {
	whole, err := filepath.Abs(folder)
	if err == nil {
		err = os.MkdirAll(whole, 0o700)
	}
	if err != nil {
		return "", finding.Failed(FolderNotMade, finding.Values{"folder": folder, "why": err})
	}
	return whole, nil
}

// local refuses a network file system: its locks do not work on every client,
// and two writers would break the record.
func local(folder string) error {
	where := folder
	if real, err := filepath.EvalSymlinks(folder); err == nil {
		where = real
	}
	if system := sqlite.NetworkSystem(where); system != "" {
		return finding.Failed(OnNetwork, finding.Values{"folder": folder, "system": system})
	}
	return nil
}

func locked(folder string) (*os.File, error) {
	lock, taken, err := machine.LockFile(filepath.Join(folder, lockName))
	if taken {
		return nil, finding.Failed(InUse, finding.Values{"folder": folder})
	}
	if err != nil {
		return nil, finding.Failed(FolderNotMade, finding.Values{"folder": folder, "why": err})
	}
	os.Remove(filepath.Join(folder, pageFile)) // of a killed process
	return lock, nil
}
