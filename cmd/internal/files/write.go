// Package files writes files completely or not at all: all files of a run are
// on the disk before the first one replaces an old one. It reports problems
// with a file or a folder, and knows nothing of their contents.
package files

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"drawdown/geometry/finding"
	"drawdown/render"
)

// Write writes finished files to a folder and returns their paths. They are a
// set: all of them are on the disk before the first is moved to its place, and
// nobody sees new ones beside old ones. If one cannot be moved, everything
// stays as it was.
func Write(folder string, files []render.File) ([]string, error) {
	if err := makeFolder(folder); err != nil {
		return nil, err
	}
	var paths []string
	for _, f := range files {
		path := filepath.Join(folder, f.Name)
		if err := replaceable(path); err != nil {
			return nil, err
		}
		paths = append(paths, filepath.ToSlash(path))
	}
	return paths, writeSet(folder, files, forAll)
}

// Permissions of a new file, before the system's own mask.
const (
	forAll    fs.FileMode = 0o666
	forMyself fs.FileMode = 0o600
)

// WriteSecret writes a file that nobody else may read, completely or not at
// all.
func WriteSecret(path string, data []byte) error {
	return writeSet(filepath.Dir(path), []render.File{{Name: filepath.Base(path), Data: data}}, forMyself)
}

func writeSet(folder string, files []render.File, mode fs.FileMode) error {
	if len(files) == 0 {
		return nil
	}
	first := files[0].Name
	s, err := newStaging(folder)
	if err != nil {
		return cannotWrite(filepath.Join(folder, first), err)
	}
	defer s.discard()
	part, rest := "first", []string{}
	for _, f := range files {
		if err := s.write(part, f.Name, f.Data, mode); err != nil {
			return cannotWrite(filepath.Join(folder, f.Name), err)
		}
		if part == "rest" {
			rest = append(rest, f.Name)
		}
		part = "rest"
	}
	if failed, err := s.move(first, rest); err != nil {
		return cannotWrite(filepath.Join(folder, failed), err)
	}
	return nil
}

// replaceable refuses a place taken by something that no file may replace: a
// folder, a device, a pipe, a link to one, a read-only file. It does not read
// the contents.
func replaceable(path string) error {
	about, err := os.Stat(path)
	switch values := (finding.Values{"file": path}); {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return cannotWrite(path, err)
	case about.IsDir():
		return finding.Failed(IsFolder, values)
	case !about.Mode().IsRegular():
		return finding.Failed(NotRegular, values)
	case about.Mode().Perm()&0o222 == 0: // even if the system allows it, as for an administrator
		return finding.Failed(ReadOnly, values)
	}
	file, err := os.OpenFile(path, os.O_WRONLY, 0)
	switch {
	case errors.Is(err, fs.ErrPermission):
		return finding.Failed(ReadOnly, finding.Values{"file": path})
	case errors.Is(err, fs.ErrNotExist): // another run is moving its file there
		return nil
	case err != nil:
		return cannotWrite(path, err)
	}
	return file.Close()
}

// cannotWrite states why a file was not written, if the error does not yet say
// so.
func cannotWrite(path string, err error) error {
	if said, ok := errors.AsType[finding.Finding](err); ok {
		return said
	}
	return finding.Failed(NotWritten, finding.Values{"file": path, "why": Reason(err)})
}

// endings lists the extensions of the files that the program reads and writes.
var endings = []string{".yaml", ".yml", ".pdf", ".png", ".svg", ".csv", ".dxf", ".html", ".gif"}

// CheckFolder refuses an empty folder name, which a script with an unset
// variable gives, one that is too long, and one like that of a file: a folder
// cover.yaml would block that file later.
func CheckFolder(folder string) error {
	if folder == "" {
		return finding.Failed(FolderNotNamed, nil)
	}
	info, err := os.Stat(folder)
	if err == nil && info.IsDir() {
		return nil
	}
	if errors.Is(err, syscall.ENAMETOOLONG) {
		return finding.Failed(NameTooLong, finding.Values{"name": folder})
	}
	if LooksLikeOne(folder) {
		return finding.Failed(LooksLikeFile, finding.Values{"file": folder})
	}
	return nil
}

// LooksLikeOne reports whether a name ends like that of a file.
func LooksLikeOne(name string) bool {
	return slices.Contains(endings, strings.ToLower(filepath.Ext(name)))
}

// makeFolder makes a folder and its parents if they are missing.
func makeFolder(folder string) error {
	err := os.MkdirAll(folder, 0o777)
	if err == nil {
		return nil
	}
	if file := OnTheWay(folder); file != "" {
		return finding.Failed(NotAFolder, finding.Values{"file": file})
	}
	return finding.Failed(FolderNotMade, finding.Values{"folder": folder, "why": Reason(err)})
}

// OnTheWay returns the part of a path that is a file, if there is one.
func OnTheWay(path string) string {
	for {
		if about, err := os.Stat(path); err == nil {
			if about.IsDir() {
				return ""
			}
			return path
		}
		above := filepath.Dir(path)
		if above == path {
			return ""
		}
		path = above
	}
}
