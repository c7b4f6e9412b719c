package job

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"drawdown/geometry/trace/fixes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"

	readfixes "drawdown/patterns/fixes"
)

// fixesEnding is that of the file beside a scan with its corrections.
const fixesEnding = ".fixes.yaml"

// Fixes reads the corrections beside a scan, gasket.fixes.yaml for gasket.png; of a
// built-in scan, those in the folder of the call. Where there is no such file, there
// are none.
func Fixes(scan string) (fixes.Fixes, problem.List, error) {
	if scan == "-" {
		return fixes.Fixes{}, nil, nil
	}
	path := strings.TrimSuffix(scan, filepath.Ext(scan)) + fixesEnding
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return fixes.Fixes{}, nil, nil
	}
	from, err := source.Open(path, nil, source.MostBytes)
	if err != nil {
		return fixes.Fixes{}, nil, err
	}
	made, problems := readfixes.Read(from)
	return made, problems, nil
}
