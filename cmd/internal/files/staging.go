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

// A staging is a hidden folder beside the files of one set. They are written
// there in full and then moved to their places, so that nobody ever sees a file
// in part, or old files beside new ones of the same set:
//
//	first/  the file whose move makes the set valid
//	rest/   the others
//	old/    the previous files in the places of the others; moved there before
//
// Its owner holds the lock, which the system releases however the owner ends.
// settle completes or undoes what an owner has left.
type staging struct {
	folder, path string
	lock         *os.File // nil if the disk has no locks
}

const (
	stagingPrefix = ".drawdown-"
	lockName      = "lock"
)

// parts lists the parts of a staging, in the order of its files.
var parts = []string{"first", "rest", "old"}

// Stagings that this process has not yet moved to their places. Nobody takes
// one from the list while it is being moved.
var (
	mu      sync.Mutex
	settled = map[string]bool{} // folders already searched for the stagings of others
	live    = map[*staging]bool{}
)

// newStaging makes a staging in the folder. It first clears what ended
// processes have left there.
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

// write writes a file of the set in full. The new file takes over the
// permissions of the file it replaces.
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
		err = file.Sync() // a full disk may only report it now
	}
	return errors.Join(err, file.Close())
}

// rename is the system's; a test interrupts it.
var rename = os.Rename

// move moves the files to their places. Until the first one is there,
// everything can be undone.
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

// setAside moves away the file in a place.
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

// settle completes or undoes the work of an ended owner: if its set is valid
// the missing files move to their places, otherwise the old ones move back.
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

// fill moves the files of a part to their places if these are empty: a file
// that someone has put there since stays. Errors are ignored.
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

// remove removes the contents of a staging and nothing else.
func (s *staging) remove() {
	delete(live, s)
	if s.lock != nil {
		s.lock.Close() // Windows cannot remove an open file
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

// Abandon removes files that are written but not yet in their places, and
// prevents further writing: the process is about to end. A set that is being
// moved is moved completely.
func Abandon() {
	mu.Lock() // never released
	for s := range live {
		s.remove()
	}
}
