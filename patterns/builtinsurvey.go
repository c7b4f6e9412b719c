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

//go:embed surveys/*.yaml
var builtinSurveys embed.FS

// BuiltinSurveys lists the names of the built-in survey files, sorted.
func BuiltinSurveys() []string {
	entries, err := builtinSurveys.ReadDir("surveys")
	if err != nil {
		panic("the embedded surveys are broken: " + err.Error())
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".yaml")
	}
	slices.Sort(names)
	return names
}

// BuiltinSurveyText gives the file of a built-in survey, with line feeds.
func BuiltinSurveyText(name string) ([]byte, bool) {
	if !slices.Contains(BuiltinSurveys(), name) {
		return nil, false
	}
	data, err := builtinSurveys.ReadFile("surveys/" + name + ".yaml")
	if err != nil {
		return nil, false
	}
	return unixLines(data), true
}

// OpenSurvey finds a survey file: "-" is standard input, a bare name may be a
// built-in survey, and anything else is a path. Its errors are those of Open.
func OpenSurvey(name string, stdin io.Reader) (Source, error) {
	if data, ok := BuiltinSurveyText(name); ok {
		return Source{File: name + " (built in)", Data: data, stem: name}, nil
	}
	if name == "-" {
		return Open(name, stdin)
	}
	source, err := openFile(name)
	if errors.Is(err, fs.ErrNotExist) && isBare(name) {
		return Source{}, &UnknownSurveyError{Name: name}
	}
	return source, err
}

// UnknownSurveyError says that a bare name is neither a built-in survey nor a
// file. It counts as fs.ErrNotExist.
type UnknownSurveyError struct{ Name string }

// Error names the nearest built-in survey and lists them all.
func (e *UnknownSurveyError) Error() string {
	return fmt.Sprintf("there is no survey and no file %s%s; built in: %s",
		quoted(e.Name), problem.DidYouMean(e.Name, BuiltinSurveys()), strings.Join(BuiltinSurveys(), ", "))
}

// Is makes the error an fs.ErrNotExist.
func (e *UnknownSurveyError) Is(target error) bool { return target == fs.ErrNotExist }
