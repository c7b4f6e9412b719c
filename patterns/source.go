package patterns

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"drawdown/patterns/problem"
)

// maxFileBytes bounds a pattern file; ten thousand fasteners, each on a line
// of its own, take about one megabyte.
const maxFileBytes = 8 << 20

// Source is the text of a pattern file and what is known about where it came
// from. Open and FromBytes make one.
type Source struct {
	File string // as problems name it
	Data []byte

	// Printable gives the first character of a text that the sheets' typeface
	// lacks, and whether there is one. Where it is nil the text is not checked.
	Printable func(text string) (missing rune, found bool)

	stem   string // of the output files; empty: made from the title
	folder string // where extends looks for files
	path   string // of the file itself; empty: built in, or from a stream
	files  bool   // extends may name files, not only built-in patterns
}

// FromBytes gives a Source for text that came from elsewhere, such as a page's
// editor. It may extend built-in patterns, but no file.
func FromBytes(file string, data []byte) Source {
	return Source{File: file, Data: data}
}

// Open finds a pattern: "-" is standard input, a bare name may be a built-in
// pattern, and anything else is a path.
//
// errors.Is(err, fs.ErrNotExist) and errors.Is(err, fs.ErrInvalid) tell a name
// that the user has to mend; every other error comes from the disk or from its
// permissions.
func Open(name string, stdin io.Reader) (Source, error) {
	if name == "-" {
		data, err := readBounded(stdin)
		if err != nil {
			return Source{}, fmt.Errorf("reading standard input: %w", err)
		}
		return Source{File: "<stdin>", Data: data, files: true}, nil
	}
	if source, ok := openBuiltin(name); ok {
		return source, nil
	}
	source, err := openFile(name)
	if errors.Is(err, fs.ErrNotExist) && isBare(name) {
		return Source{}, &UnknownNameError{Name: name}
	}
	return source, err
}

// UnknownNameError says that a bare name is neither a built-in pattern nor a
// file. It counts as fs.ErrNotExist.
type UnknownNameError struct{ Name string }

// Error names the nearest built-in pattern and lists them all.
func (e *UnknownNameError) Error() string {
	if slices.Contains(BuiltinMachines(), e.Name) {
		return fmt.Sprintf("%s is a machine, not a pattern; write drawdown book %[1]s", e.Name)
	}
	return fmt.Sprintf("there is no pattern and no file %s%s; built in: %s",
		quoted(e.Name), problem.DidYouMean(e.Name, Builtin()), strings.Join(Builtin(), ", "))
}

// Is makes the error an fs.ErrNotExist.
func (e *UnknownNameError) Is(target error) bool { return target == fs.ErrNotExist }

// FolderError says that a path names a folder. It counts as fs.ErrInvalid.
type FolderError struct{ Path string }

// Error says what to name instead.
func (e *FolderError) Error() string { return e.Path + " is a folder; name a pattern file in it" }

// Is makes the error an fs.ErrInvalid.
func (e *FolderError) Is(target error) bool { return target == fs.ErrInvalid }

func isBare(name string) bool {
	return !strings.ContainsAny(name, `/\`) && !isYAMLName(name)
}

func isYAMLName(name string) bool {
	extension := strings.ToLower(filepath.Ext(name))
	return extension == ".yaml" || extension == ".yml"
}

func openBuiltin(name string) (Source, bool) {
	data, ok := BuiltinText(name)
	if !ok {
		return Source{}, false
	}
	return Source{File: name + " (built in)", Data: data, stem: name}, true
}

func openFile(path string) (Source, error) { return openFileUpTo(path, maxFileBytes) }

func openFileUpTo(path string, most int64) (Source, error) {
	file, err := os.Open(path)
	if err != nil {
		return Source{}, err // names the operation, the path and the reason
	}
	defer file.Close()
	if about, err := file.Stat(); err == nil && about.IsDir() {
		return Source{}, &FolderError{Path: path}
	}
	data, err := readUpTo(file, most)
	if err != nil {
		return Source{}, err
	}
	return Source{File: path, Data: data, stem: stemOf(path), folder: filepath.Dir(path), path: path, files: true}, nil
}

// readBounded reads one byte more than is allowed, so that Read can tell.
func readBounded(from io.Reader) ([]byte, error) { return readUpTo(from, maxFileBytes) }

func readUpTo(from io.Reader, most int64) ([]byte, error) {
	return io.ReadAll(io.LimitReader(from, most+1))
}
