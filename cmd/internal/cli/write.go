package cli

import (
	"os"
	"path/filepath"

	"github.com/spf13/pflag"

	"drawdown/render"
)

// outFlag adds the flag for the folder to write to.
func outFlag(flags *pflag.FlagSet) *string {
	return flags.StringP("out", "o", "out", "folder to write to; it is made where it is missing")
}

// writeFiles writes finished files to a folder, each whole or not at all, and
// gives their paths.
func writeFiles(folder string, files []render.File) ([]string, error) {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return nil, err
	}
	paths := []string{}
	for _, f := range files {
		path := filepath.Join(folder, f.Name)
		if err := replaceFile(path, f.Data); err != nil {
			return nil, err
		}
		paths = append(paths, filepath.ToSlash(path))
	}
	return paths, nil
}
