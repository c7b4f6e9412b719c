package files

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"drawdown/geometry/finding"
)

// endings are those of the files that the program reads and writes.
var endings = []string{".yaml", ".yml", ".pdf", ".png", ".svg", ".csv", ".dxf", ".html", ".gif"}

// CheckFolder refuses the empty name of a folder, which a script with an unset
// variable gives, and that of a file: a folder cover.yaml would stand in its
// way later.
func CheckFolder(folder string) error {
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
