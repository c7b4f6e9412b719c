// Package files writes files whole or not at all: all files of a run are on the
// disk before the first one replaces an old one. It reports what is wrong with
// a file or a folder, and knows nothing of their contents.
package files

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/render"
)

// Write writes finished files to a folder and gives their paths. All of
// them are on the disk before the first takes its place; where one cannot take
// it, the others give theirs up again.
func Write(folder string, files []render.File) ([]string, error) {
	if err := makeFolder(folder); err != nil {
		return nil, err
	}
	set := make([]*placed, 0, len(files))
	defer func() {
		for _, one := range set {
			one.discard()
		}
	}()
	var paths []string
	for _, f := range files {
		one, err := prepare(filepath.Join(folder, f.Name), f.Data)
		if err != nil {
			return nil, err
		}
		set, paths = append(set, one), append(paths, filepath.ToSlash(one.path))
	}
	return paths, replaceAll(set)
}

// Permissions of a new file, before the system's own mask.
const (
	forAll    fs.FileMode = 0o666
	forMyself fs.FileMode = 0o600
)

// WriteSecret writes a file that nobody else may read, whole or not at all.
func WriteSecret(path string, data []byte) error {
	one, err := newTemporary(path, data, forMyself)
	if err != nil {
		return cannotWrite(path, err)
	}
	defer one.discard()
	if err := one.replace(); err != nil {
		return cannotWrite(path, err)
	}
	return nil
}

// placed is a file that is written in full beside its place, and what stood
// there before.
type placed struct {
	*temporary
	path   string
	before []byte
	isNew  bool
}

func prepare(path string, data []byte) (*placed, error) {
	if about, err := os.Stat(path); err == nil && about.IsDir() {
		return nil, finding.Failed(IsFolder, finding.Values{"file": path})
	}
	before, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, cannotWrite(path, err)
	}
	file, writeErr := newTemporary(path, data, forAll)
	if writeErr != nil {
		return nil, cannotWrite(path, writeErr)
	}
	return &placed{temporary: file, path: path, before: before, isNew: err != nil}, nil
}

func replaceAll(set []*placed) error {
	for i, one := range set {
		if err := one.replace(); err != nil {
			for _, done := range set[:i] {
				done.restore()
			}
			return cannotWrite(one.path, err)
		}
	}
	return nil
}

// restore brings back what stood in the place. It cannot do more than try.
func (one *placed) restore() {
	if one.isNew {
		os.Remove(one.path)
		return
	}
	if file, err := newTemporary(one.path, one.before, forAll); err == nil {
		defer file.discard()
		file.replace()
	}
}

func cannotWrite(path string, err error) error {
	return finding.Failed(NotWritten, finding.Values{"file": path, "why": Reason(err)})
}

// endings are those of the files that the program reads and writes.
var endings = []string{".yaml", ".yml", ".pdf", ".png", ".svg", ".csv", ".dxf", ".html", ".gif"}

// CheckFolder refuses the empty name of a folder, which a script with an unset
// variable gives, and that of a file: a folder cover.yaml would stand in its
// way later.
func CheckFolder(folder string) error {
	if folder == "" {
		return finding.Failed(FolderNotNamed, nil)
	}
	if info, err := os.Stat(folder); err == nil && info.IsDir() {
		return nil
	}
	if LooksLikeOne(folder) {
		return finding.Failed(LooksLikeFile, finding.Values{"file": folder})
	}
	return nil
}

// LooksLikeOne says whether a name ends as those of files do.
func LooksLikeOne(name string) bool {
	return slices.Contains(endings, strings.ToLower(filepath.Ext(name)))
}

// makeFolder makes a folder, and those above it, where they are missing.
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

// OnTheWay gives the part of a path that is a file, if one is.
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
