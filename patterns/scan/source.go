package scan

import (
	"embed"
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

//go:embed scans/*.jpg
var builtin embed.FS

// Source is a picture file, not yet read as one.
type Source struct {
	File string // as errors name it
	Data []byte
	stem string // of the output files; empty where there is none
}

// FromBytes gives a Source for a file that came from elsewhere.
func FromBytes(file string, data []byte) Source { return Source{File: file, Data: data} }

// Builtin lists the names of the built-in scans, sorted.
func Builtin() []string {
	entries, err := builtin.ReadDir("scans")
	if err != nil {
		panic("the embedded scans are broken: " + err.Error())
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".jpg")
	}
	slices.Sort(names)
	return names
}

// BuiltinFile gives the file of a built-in scan.
func BuiltinFile(name string) ([]byte, bool) {
	if !slices.Contains(Builtin(), name) {
		return nil, false
	}
	data, err := builtin.ReadFile("scans/" + name + ".jpg")
	return data, err == nil
}

// Open finds a scan: "-" is standard input, a bare name may be a built-in one,
// and anything else is a path. errors.Is(err, fs.ErrNotExist) and
// errors.Is(err, fs.ErrInvalid) tell a name that the user has to mend; every
// other error comes from the disk.
func Open(name string, stdin io.Reader) (Source, error) {
	if data, ok := BuiltinFile(name); ok {
		return Source{File: name + " (built in)", Data: data, stem: name}, nil
	}
	if name == "-" {
		data, err := bounded(stdin)
		if err != nil {
			return Source{}, fmt.Errorf("reading standard input: %w", err)
		}
		return Source{File: "<stdin>", Data: data}, nil
	}
	file, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) && !strings.ContainsAny(name, `/\.`) {
		return Source{}, &UnknownError{Name: name}
	}
	if err != nil {
		return Source{}, err
	}
	defer file.Close()
	if about, err := file.Stat(); err == nil && about.IsDir() {
		return Source{}, &FolderError{Path: name}
	}
	data, err := bounded(file)
	base := filepath.Base(name)
	return Source{File: name, Data: data, stem: strings.TrimSuffix(base, filepath.Ext(base))}, err
}

// bounded reads one byte more than is allowed, so that Read can tell.
func bounded(from io.Reader) ([]byte, error) {
	return io.ReadAll(io.LimitReader(from, mostFileBytes+1))
}

// UnknownError says that a bare name is neither a built-in scan nor a file. It
// counts as fs.ErrNotExist.
type UnknownError struct{ Name string }

// Error names the nearest built-in scan and lists them all.
func (e *UnknownError) Error() string {
	return fmt.Sprintf("there is no scan and no file %q%s; built in: %s",
		e.Name, problem.DidYouMean(e.Name, Builtin()), strings.Join(Builtin(), ", "))
}

// Is makes the error an fs.ErrNotExist.
func (e *UnknownError) Is(target error) bool { return target == fs.ErrNotExist }

// FolderError says that a path names a folder. It counts as fs.ErrInvalid.
type FolderError struct{ Path string }

// Error says what to name instead.
func (e *FolderError) Error() string { return e.Path + " is a folder; name a picture in it" }

// Is makes the error an fs.ErrInvalid.
func (e *FolderError) Is(target error) bool { return target == fs.ErrInvalid }
