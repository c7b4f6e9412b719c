// Package source finds the files to read: a built-in file, a path, standard
// input, or bytes from elsewhere. It knows names, folders and size limits, but
// nothing of the contents. It may import geometry/finding and patterns/problem.
package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// MostBytes limits a pattern file; ten thousand fasteners, each on its own
// line, take about one megabyte.
const MostBytes = 8 << 20

// Source is a file and its origin. A Shelf, Open or FromBytes makes one.
type Source struct {
	File string // as problems name it
	Data []byte

	// Printable returns the first character of a text that the sheets' typeface
	// lacks, and whether there is one. If it is nil the text is not checked.
	Printable func(text string) (missing rune, found bool)

	stem   string // of the output files; empty: made from the title
	folder string // searched for other files
	path   string // of the file itself; empty: built in, or from a stream
	files  bool   // it may name files, not only built-in patterns
	bases  *Shelf // the patterns that it may name; nil for none

	root  *os.Root // it may name only what is in this folder; nil: any file
	key   string   // its key in Kept
	kept  Kept     // records what it names; nil: nothing is kept
	again Kept     // what it names is read only from here; nil: from the disk
}

// Open finds a file of at most most bytes: "-" is standard input, anything else
// is a path.
func Open(name string, stdin io.Reader, most int64) (Source, error) {
	if name != "-" {
		return openFile(name, most)
	}
	data, err := readStream(stdin, most)
	if err != nil {
		return Source{}, err
	}
	return Source{File: streamName, Data: asUTF8(data, most), files: true}, nil
}

const streamName = "<stdin>"

// readStream reads a stream in pieces, so that an endless one takes no more
// memory than the limit.
func readStream(stream io.Reader, most int64) ([]byte, error) {
	var pieces [][]byte
	left := most + 1
	for size := int64(64 << 10); ; size = min(2*size, 8<<20) {
		piece := make([]byte, min(size, left))
		n, err := io.ReadFull(stream, piece)
		pieces = append(pieces, piece[:n])
		switch left -= int64(n); {
		case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
			return bytes.Join(pieces, nil), nil
		case err != nil:
			return nil, fmt.Errorf("reading standard input: %w", err)
		case left == 0:
			return nil, tooLarge(streamName, most)
		}
	}
}

func tooLarge(path string, most int64) error {
	return misnamed(TooLarge, fs.ErrInvalid, finding.Values{"path": path, "most": int(most >> 20)})
}

func openFile(path string, most int64) (Source, error) {
	about, err := os.Stat(path)
	if err != nil {
		return Source{}, err // the error names the operation, the path and the reason
	}
	data, err := readWhole(path, about, most, func() (*os.File, error) { return os.Open(path) })
	if err != nil {
		return Source{}, err
	}
	return Source{File: path, Data: asUTF8(data, most), stem: stemOf(path), folder: filepath.Dir(path), path: path, files: true}, nil
}

// readWhole reads a file of at most most bytes. It does not even open a device
// or a pipe, whose end is unknown: it could hang, or fill the memory.
func readWhole(path string, about fs.FileInfo, most int64, open func() (*os.File, error)) ([]byte, error) {
	switch {
	case about.IsDir():
		return nil, folder("pattern", path)
	case !about.Mode().IsRegular():
		return nil, misnamed(NoFile, fs.ErrInvalid, finding.Values{"path": path})
	case about.Size() > most:
		return nil, tooLarge(path, most)
	}
	file, err := open()
	if err != nil {
		return nil, err
	}
	defer file.Close()
	data := bytes.NewBuffer(make([]byte, 0, about.Size()+bytes.MinRead))
	if _, err = data.ReadFrom(io.LimitReader(file, most+1)); int64(data.Len()) > most {
		return nil, tooLarge(path, most) // it has grown since, or its size is unknown, as in /proc
	}
	return data.Bytes(), err
}

// Beside finds the pattern that the source names: first a file beside it, then
// a built-in pattern. A built-in pattern's plain name always means the built-in
// one.
func (s Source) Beside(name string) (Source, error) {
	base, err := s.found(name)
	if err == nil {
		s.keep(&base, name)
	}
	return base, err
}

func (s Source) found(name string) (Source, error) {
	if s.again != nil {
		return s.besideKept(name)
	}
	return s.beside(name)
}

// Named finds a pattern that a machine file names. Where a plain name is that of a
// built-in pattern, a file of that name beside the machine file comes first: a shop
// that has its own state of a joint goes by that.
func (s Source) Named(name string) (Source, error) {
	if strings.ContainsAny(name, `./\`) {
		return s.Beside(name)
	}
	for _, ending := range []string{".yaml", ".yml"} {
		own, err := s.found(name + ending)
		if builtin := err == nil && own.path == "" && s.again == nil; !builtin && !errors.Is(err, fs.ErrNotExist) {
			return s.Beside(name + ending)
		}
	}
	return s.Beside(name)
}

func (s Source) beside(name string) (Source, error) {
	if base, ok := s.bases.find(name); ok {
		return base, nil
	}
	err := error(fs.ErrNotExist)
	if s.files {
		path := filepath.FromSlash(name)
		if !filepath.IsAbs(path) {
			path = filepath.Join(s.folder, path)
		}
		var base Source
		if base, err = s.open(path); err == nil {
			base.bases = s.bases
			return base, nil
		}
	}
	if errors.Is(err, fs.ErrNotExist) {
		if base, ok := s.BuiltinBase(name); ok {
			return base, nil
		}
	}
	return Source{}, err
}

// open reads a file that the source names, from its folder if it has one.
func (s Source) open(path string) (Source, error) {
	if s.root != nil {
		return openIn(s.root, path)
	}
	return openFile(path, MostBytes)
}

// BuiltinBase finds the built-in pattern that a file name means.
func (s Source) BuiltinBase(name string) (Source, bool) { return s.bases.find(bareName(name)) }

// Meant returns the built-in pattern with a similar name, and lists them all.
func (s Source) Meant(name string) (meant string, all []string) {
	all = s.bases.Names()
	return problem.Nearest(bareName(name), all), all
}

// SameAs reports whether two sources are one file.
func (s Source) SameAs(other Source) bool {
	if s.path == "" || other.path == "" {
		return s.path == other.path && s.File == other.File
	}
	if s.root != nil {
		return sameIn(s.root, s.path, other.path)
	}
	about, err := os.Stat(s.path)
	aboutOther, errOther := os.Stat(other.path)
	return err == nil && errOther == nil && os.SameFile(about, aboutOther)
}

// Reason returns the system's reason, without the path.
func Reason(err error) error {
	var inPath *fs.PathError
	if errors.As(err, &inPath) {
		return inPath.Err
	}
	return err
}

func isYAMLName(name string) bool {
	extension := strings.ToLower(filepath.Ext(name))
	return extension == ".yaml" || extension == ".yml"
}

func bareName(name string) string {
	if isYAMLName(name) {
		return name[:len(name)-len(filepath.Ext(name))]
	}
	return name
}
