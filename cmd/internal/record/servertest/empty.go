package servertest

import (
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"os"
	"path/filepath"
)

// made is how the data of a new server is made.
var made = []string{"-U", owner, "-A", "scram-sha-256", "-E", "UTF8", "--locale", "C", "--no-sync"}

// copyEmpty copies the data of a new server. They take long to make, and are kept in
// the user's cache for all tests, by the program that made them.
func (s *Server) copyEmpty() error {
	version, err := s.command("initdb", "--version").Output()
	if err != nil {
		return err
	}
	by := fnv.New64a()
	fmt.Fprint(by, s.programs, string(version), made, Password)
	cache, err := os.UserCacheDir()
	if err != nil {
		return s.makeEmpty()
	}
	empty := filepath.Join(cache, "drawdown-tools", fmt.Sprintf("postgres-%x", by.Sum64()))
	if _, err := os.Stat(empty); err == nil {
		return s.copyFrom(empty)
	}
	if err := s.makeEmpty(); err != nil {
		return err
	}
	return keep(s.data(), empty)
}

// makeEmpty has PostgreSQL make the data.
func (s *Server) makeEmpty() error {
	secret := filepath.Join(s.folder, "password")
	if err := os.WriteFile(secret, []byte(Password+"\n"), 0o600); err != nil {
		return err
	}
	if err := giveAway(secret); err != nil {
		return err
	}
	said, err := s.command("initdb", append([]string{"-D", s.data(), "--pwfile", secret}, made...)...).CombinedOutput()
	if err != nil {
		return fmt.Errorf("%w: %s", err, said)
	}
	return nil
}

func (s *Server) copyFrom(empty string) error {
	if err := os.CopyFS(s.data(), os.DirFS(empty)); err != nil {
		return err
	}
	return filepath.WalkDir(s.data(), func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if err := os.Chmod(path, 0o700); err != nil { // the server wants nobody else in it
				return err
			}
		}
		return giveAway(path)
	})
}

// keep keeps a copy of a folder under a name, where no other test was first.
func keep(folder, name string) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
		return err
	}
	copied, err := os.MkdirTemp(filepath.Dir(name), "postgres-new-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(copied)
	if err := os.CopyFS(copied, os.DirFS(folder)); err != nil {
		return err
	}
	err = os.Rename(copied, name)
	if errors.Is(err, fs.ErrExist) {
		return nil
	}
	return err
}
