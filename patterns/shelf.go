package patterns

import (
	"embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"drawdown/patterns/problem"
)

// shelf holds built-in files of one sort besides the patterns.
type shelf struct {
	files  embed.FS
	folder string
	sort   string // in a message: survey, machine
}

//go:embed surveys/*.yaml
var surveyFiles embed.FS

//go:embed machines/*.yaml
var machineFiles embed.FS

var (
	surveys  = shelf{surveyFiles, "surveys", "survey"}
	machines = shelf{machineFiles, "machines", "machine"}
)

// BuiltinSurveys lists the names of the built-in survey files, sorted.
func BuiltinSurveys() []string { return surveys.names() }

// BuiltinMachines lists the names of the built-in machine files, sorted.
func BuiltinMachines() []string { return machines.names() }

// BuiltinSurveyText gives the file of a built-in survey, with line feeds.
func BuiltinSurveyText(name string) ([]byte, bool) { return surveys.text(name) }

// BuiltinMachineText gives the file of a built-in machine, with line feeds.
func BuiltinMachineText(name string) ([]byte, bool) { return machines.text(name) }

// OpenSurvey finds a survey file: "-" is standard input, a bare name may be a
// built-in survey, and anything else is a path. Its errors are those of Open.
func OpenSurvey(name string, stdin io.Reader) (Source, error) { return surveys.open(name, stdin) }

// OpenMachine finds a machine file as OpenSurvey finds a survey.
func OpenMachine(name string, stdin io.Reader) (Source, error) { return machines.open(name, stdin) }

func (s shelf) names() []string {
	entries, err := s.files.ReadDir(s.folder)
	if err != nil {
		panic("the embedded " + s.folder + " are broken: " + err.Error())
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".yaml")
	}
	slices.Sort(names)
	return names
}

func (s shelf) text(name string) ([]byte, bool) {
	if !slices.Contains(s.names(), name) {
		return nil, false
	}
	data, err := s.files.ReadFile(s.folder + "/" + name + ".yaml")
	if err != nil {
		return nil, false
	}
	return unixLines(data), true
}

func (s shelf) open(name string, stdin io.Reader) (Source, error) {
	if data, ok := s.text(name); ok {
		return Source{File: name + " (built in)", Data: data, stem: name}, nil
	}
	if name == "-" {
		return Open(name, stdin)
	}
	source, err := openFile(name)
	if errors.Is(err, fs.ErrNotExist) && isBare(name) {
		return Source{}, &UnknownFileError{Name: name, shelf: s}
	}
	return source, err
}

// UnknownFileError says that a bare name is neither a built-in file of its sort
// nor a path. It counts as fs.ErrNotExist.
type UnknownFileError struct {
	Name  string
	shelf shelf
}

// Error names the nearest built-in file and lists them all.
func (e *UnknownFileError) Error() string {
	if e.shelf.sort == machines.sort && slices.Contains(Builtin(), e.Name) {
		return fmt.Sprintf("%s is the pattern of one joint, not a machine; write drawdown card %[1]s", e.Name)
	}
	return fmt.Sprintf("there is no %s and no file %s%s; built in: %s", e.shelf.sort,
		quoted(e.Name), problem.DidYouMean(e.Name, e.shelf.names()), strings.Join(e.shelf.names(), ", "))
}

// Is makes the error an fs.ErrNotExist.
func (e *UnknownFileError) Is(target error) bool { return target == fs.ErrNotExist }
