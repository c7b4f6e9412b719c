package files

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"drawdown/cmd/internal/machine"
)

// A staging is a hidden folder beside the files of one set. They are written there
// in full and then moved to their places, so that nobody ever sees a file in part,
// nor old files beside new ones of the same set:
//
//	first/  the file whose move makes the set count
//	rest/   the others
//	old/    what stood in the places of the others; moved there before
//
// Its owner holds the lock; the system lets go of it however the owner ends. What an
// owner has left is brought to its end by settle.
type staging struct {
	folder, path string
	lock         *os.File // nil where the disk knows no locks
}

const (
	stagingPrefix = ".drawdown-"
	lockName      = "lock"
)

// parts of a staging, in the order of its files.
var parts = []string{"first", "rest", "old"}

// Stagings that this process has not yet moved to their places. Nobody takes one
// from the list while it is moved.
var (
	mu      sync.Mutex
	settled = map[string]bool{} // folders in which others' stagings were looked for
	live    = map[*staging]bool{}
)

// newStaging makes a staging in the folder. What ended processes have left there
// goes first.
func newStaging(folder string) (*staging, error) {
	mu.Lock()
	defer mu.Unlock()
	defer machine.LockFolder(folder)()
	if !settled[folder] {
		settleAll(folder)
		settled[folder] = true
	}
	path, err := os.MkdirTemp(folder, stagingPrefix)
	if err != nil {
		return nil, err
	}
	s := &staging{folder: folder, path: path}
	s.lock, _, _ = machine.LockFile(filepath.Join(path, lockName))
	for _, part := range parts {
		if err = os.Mkdir(filepath.Join(path, part), 0o700); err != nil {
			s.remove()
			return nil, err
		}
	}
	live[s] = true
	return s, nil
}

// write writes a file of the set in full. A file that stands in its place hands on
// its permissions.
func (s *staging) write(part, name string, data []byte, mode fs.FileMode) error {
	before, err := os.Lstat(filepath.Join(s.folder, name))
	replaces := err == nil && before.Mode().IsRegular()
	if replaces {
		mode = before.Mode().Perm()
	}
	mu.Lock() // a folder in which files appear cannot be removed
	file, err := os.OpenFile(filepath.Join(s.path, part, name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	mu.Unlock()
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	if err == nil && replaces {
		err = file.Chmod(mode) // whatever the mask
	}
	if err == nil {
		err = file.Sync() // a full disk may tell only now
	}
	return errors.Join(err, file.Close())
}

// rename is the system's; a test ends it in the middle.
var rename = os.Rename

// move puts the files in their places. Until the first one is there, all can be
// taken back.
func (s *staging) move(first string, rest []string) (failed string, err error) {
	mu.Lock()
	defer mu.Unlock()
	defer machine.LockFolder(s.folder)()
	for _, name := range rest {
		if err = s.setAside(name); err != nil {
			s.rollBack()
			return name, err
		}
	}
	if err = rename(filepath.Join(s.path, "first", first), filepath.Join(s.folder, first)); err != nil {
		s.rollBack()
		return first, err
	}
	for _, name := range rest {
		if err = rename(filepath.Join(s.path, "rest", name), filepath.Join(s.folder, name)); err != nil {
			return name, err
		}
	}
	return "", nil
}

// setAside takes what stands in a place out of it.
func (s *staging) setAside(name string) error {
	path := filepath.Join(s.folder, name)
	if err := replaceable(path); err != nil {
		return err
	}
	err := rename(path, filepath.Join(s.path, "old", name))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// settle ends what an owner has begun: where its set counts, the missing files go
// to their places, and where it does not, the old ones go back.
func (s *staging) settle() {
	left, err := os.ReadDir(filepath.Join(s.path, "first"))
	switch {
	case err == nil && len(left) == 0:
		s.fill("rest")
	default:
		s.rollBack()
	}
	s.remove()
}

func (s *staging) rollBack() { s.fill("old") }

// fill moves the files of a part to those of their places that are empty: what
// someone has put there since stays. It cannot do more than try.
func (s *staging) fill(part string) {
	entries, _ := os.ReadDir(filepath.Join(s.path, part))
	for _, e := range entries {
		place := filepath.Join(s.folder, e.Name())
		if _, err := os.Lstat(place); errors.Is(err, fs.ErrNotExist) {
			_ = os.Rename(filepath.Join(s.path, part, e.Name()), place)
		}
	}
}

// discard removes the staging with all that is left in it.
func (s *staging) discard() {
	mu.Lock()
	defer mu.Unlock()
	s.remove()
}

// remove removes what a staging holds and nothing else.
func (s *staging) remove() {
	delete(live, s)
	if s.lock != nil {
		s.lock.Close() // Windows removes no file that is open
	}
	for _, part := range parts {
		os.RemoveAll(filepath.Join(s.path, part))
	}
	os.Remove(filepath.Join(s.path, lockName))
	os.Remove(s.path)
}

// settleAll settles the stagings of a folder that nobody holds any more.
func settleAll(folder string) {
	entries, _ := os.ReadDir(folder)
	for _, e := range entries {
		if !e.IsDir() || !strings.HasPrefix(e.Name(), stagingPrefix) {
			continue
		}
		s := &staging{folder: folder, path: filepath.Join(folder, e.Name())}
		var err error
		if s.lock, _, err = machine.LockFile(filepath.Join(s.path, lockName)); err == nil {
			s.settle()
		}
	}
}

// Abandon removes what is written and not yet in its place, and lets nothing more
// be written: the process is about to end. A set that is being moved is moved whole.
func Abandon() {
	mu.Lock() // for good
	for s := range live {
		s.remove()
	}
}
