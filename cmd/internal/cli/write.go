package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/render"
)

// outFlag adds the flag for the folder to write to.
func outFlag(flags *pflag.FlagSet) *string {
	return flags.StringP("out", "o", "out", "`folder` to write to; it is made where it is missing")
}

// endings are those of the files that are read and written here.
var endings = []string{".yaml", ".yml", ".pdf", ".png", ".svg", ".csv", ".dxf", ".html", ".gif"}

// checkFolder refuses the empty name, which a script with an unset variable
// gives, and that of a file: a folder cover.yaml would stand in its way later.
func checkFolder(folder string) error {
	if folder == "" {
		return errors.New("--out needs the name of a folder; . is the one you are in")
	}
	if info, err := os.Stat(folder); err == nil && info.IsDir() {
		return nil
	}
	if ending := strings.ToLower(filepath.Ext(folder)); slices.Contains(endings, ending) {
		return fmt.Errorf("--out names a folder to write to, and %s looks like a file; . is the folder you are in", folder)
	}
	return nil
}

// writeFiles writes finished files to a folder and gives their paths. All of
// them are on the disk before the first takes its place; where one cannot take
// it, the others give theirs up again.
func writeFiles(folder string, files []render.File) ([]string, error) {
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

// makeFolder makes a folder, and those above it, where they are missing.
func makeFolder(folder string) error {
	err := os.MkdirAll(folder, 0o777)
	if err == nil {
		return nil
	}
	if file := fileOnTheWay(folder); file != "" {
		return fmt.Errorf("%s is a file, not a folder; name another folder with --out", file)
	}
	return fmt.Errorf("the folder %s cannot be made: %w", folder, reason(err))
}

// fileOnTheWay gives the part of a path that is a file, if one is.
func fileOnTheWay(path string) string {
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
		return nil, fmt.Errorf("%s is a folder; move it away, or name another folder with --out", path)
	}
	before, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, cannotWrite(path, err)
	}
	file, writeErr := newTemporary(path, data)
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
	if file, err := newTemporary(one.path, one.before); err == nil {
		defer file.discard()
		file.replace()
	}
}

func cannotWrite(path string, err error) error {
	return fmt.Errorf("%s cannot be written: %w", path, reason(err))
}

// reason is what the system says, without the path.
func reason(err error) error {
	var inPath *fs.PathError
	var inLink *os.LinkError
	switch {
	case errors.As(err, &inPath):
		return inPath.Err
	case errors.As(err, &inLink):
		return inLink.Err
	}
	return err
}
