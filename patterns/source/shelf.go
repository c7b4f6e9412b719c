package source

import (
	"errors"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// Shelf holds the built-in files of one sort.
type Shelf struct {
	Sort   string // pattern, survey, machine, scan: a form in package words
	Files  fs.FS
	Folder string
	Ending string // of its files: .yaml
	Most   int64  // bytes of a file of the sort
	// Bases holds the patterns that a file may name; nil for none.
	Bases *Shelf
	// Other is a shelf whose names are confused with this one's; nil for none.
	Other *Shelf
}

// Names lists the built-in files, sorted.
func (s *Shelf) Names() []string {
	if s == nil {
		return nil
	}
	entries, err := fs.ReadDir(s.Files, s.Folder)
	if err != nil {
		panic("the embedded " + s.Folder + " are broken: " + err.Error())
	}
	var names []string
	for _, e := range entries {
		if stem, ok := strings.CutSuffix(e.Name(), s.Ending); ok {
			names = append(names, stem)
		}
	}
	slices.Sort(names)
	return names
}

// Text returns a built-in file, byte for byte; a text has line feeds, whatever
// the checkout made of them.
func (s *Shelf) Text(name string) ([]byte, bool) {
	if !slices.Contains(s.Names(), name) {
		return nil, false
	}
	data, err := fs.ReadFile(s.Files, path.Join(s.Folder, name+s.Ending))
	if err != nil {
		return nil, false
	}
	if s.Ending == ".yaml" {
		data = UnixLines(data)
	}
	return data, true
}

// FromBytes returns a Source for text from elsewhere, such as a page's editor.
// It may name built-in patterns, but no files.
func (s *Shelf) FromBytes(file string, data []byte) Source {
	return Source{File: file, Data: asUTF8(data, MostBytes), bases: s.Bases}
}

func (s *Shelf) find(name string) (Source, bool) {
	data, ok := s.Text(name)
	if !ok {
		return Source{}, false
	}
	return Source{File: name + " (built in)", Data: data, stem: name, bases: s.Bases}, true
}

// Open finds a file of the sort: "-" is standard input, a bare name may be a
// built-in file, and anything else is a path.
// Errors that match fs.ErrNotExist or fs.ErrInvalid (errors.Is) mean that the
// user has to correct the name; every other error comes from the disk or from
// its permissions.
func (s *Shelf) Open(name string, stdin io.Reader) (Source, error) {
	if found, ok := s.find(name); ok {
		return found, nil
	}
	found, err := Open(name, stdin, s.Most)
	found.bases = s.Bases
	switch {
	case errors.Is(err, IsFolder):
		return Source{}, folder(s.Sort, name)
	case errors.Is(err, fs.ErrNotExist) && s.isBare(name):
		return Source{}, s.Unknown(name)
	}
	return found, err
}

func (s *Shelf) isBare(name string) bool {
	if strings.ContainsAny(name, `/\`) {
		return false
	}
	return !isYAMLName(name) && (s.Ending == ".yaml" || !strings.Contains(name, "."))
}

// Unknown reports that a bare name is neither a built-in file of the sort nor a
// path. It counts as fs.ErrNotExist.
func (s *Shelf) Unknown(name string) error {
	if s.Other != nil && slices.Contains(s.Other.Names(), name) {
		return misnamed(OtherSort, fs.ErrNotExist, finding.Values{"sort": s.Sort, "name": name})
	}
	all := s.Names()
	return misnamed(NotThere, fs.ErrNotExist, finding.Values{
		"sort": s.Sort, "name": problem.Quoted(name), "meant": problem.Nearest(name, all), "all": all,
	})
}
