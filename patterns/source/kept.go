package source

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Kept is a file with all the files that it names, byte for byte, so that it
// can be read again later unchanged. The file itself is stored under its own
// name, others under the names that lead to them: "right.yaml > left.yaml".
type Kept map[string][]byte

const leadsTo = " > "

// Keeping returns the source with a list that records the files it names as
// they are found.
func (s Source) Keeping() (Source, Kept) {
	s.key, s.kept = s.File, Kept{s.File: s.Data}
	return s, s.kept
}

// FromKept returns a source that reads only from a list. Stem is the name that
// its source had.
func FromKept(kept Kept, stem string) (Source, error) {
	for name, data := range kept {
		if !strings.Contains(name, leadsTo) {
			return Source{File: name, Data: data, stem: stem, key: name, again: kept}, nil
		}
	}
	return Source{}, fs.ErrNotExist
}

// Below returns a file that the first one names, by its stem, with all that it
// names; the file itself is then stored under its own name.
func (k Kept) Below(stem string) Kept {
	below := Kept{}
	for key, data := range k {
		_, rest, _ := strings.Cut(key, leadsTo)
		if name, _, _ := strings.Cut(rest, leadsTo); rest != "" && stemOf(name) == stem {
			below[rest] = data
		}
	}
	return below
}

// besideKept finds what a source names in the list from which it was read.
func (s Source) besideKept(name string) (Source, error) {
	key := s.key + leadsTo + name
	data, found := s.again[key]
	if !found {
		return Source{}, fs.ErrNotExist
	}
	return Source{File: key, Data: data, stem: stemOf(name), key: key, again: s.again}, nil
}

// keep records a file that the source names.
func (s Source) keep(base *Source, name string) {
	if s.kept != nil {
		base.key, base.kept = s.key+leadsTo+name, s.kept
		s.kept[base.key] = base.Data
	}
}

// OpenIn finds a file of a folder by its name there. Files that it names must
// be in the folder too, whatever path or link leads there.
func (s *Shelf) OpenIn(root *os.Root, name string) (Source, error) {
	found, err := openIn(root, name)
	found.bases = s.Bases
	return found, err
}

func openIn(root *os.Root, path string) (Source, error) {
	about, err := root.Stat(path)
	if err != nil {
		return Source{}, err
	}
	data, err := readWhole(path, about, MostBytes, func() (*os.File, error) { return root.Open(path) })
	if err != nil {
		return Source{}, err
	}
	return Source{File: path, Data: asUTF8(data, MostBytes), stem: stemOf(path), folder: filepath.Dir(path), path: path, root: root, files: true}, nil
}

// sameIn reports whether two paths in a folder are one file.
func sameIn(root *os.Root, path, other string) bool {
	about, err := root.Stat(path)
	aboutOther, errOther := root.Stat(other)
	return errors.Join(err, errOther) == nil && os.SameFile(about, aboutOther)
}
