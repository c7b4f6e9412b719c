// Package patterns holds the built-in pattern files and opens and reads pattern
// files. Its rooms do the work, each with one concern: source finds files, nodes
// makes lines and nodes of text, form reads keys and quantities, meaning makes a
// checked plan.Input of them. table, drawn, measured, machine and wrenches read
// the other files; write writes a pattern.
//
// What the keys mean stands at the functions that read them. In all of a file:
// unknown and repeated keys are errors; a key without a value is one too. A
// bare length is in the file's units (mm or in); torques, angles and times
// always carry their unit.
package patterns

import (
	"embed"
	"io"

	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/sequence/plan"
)

//go:embed *.yaml surveys/*.yaml machines/*.yaml
var builtin embed.FS

var (
	patterns = shelf("pattern", ".")
	surveys  = shelf("survey", "surveys")
	machines = shelf("machine", "machines")
)

func shelf(sort, folder string) *source.Shelf {
	return &source.Shelf{Sort: sort, Files: builtin, Folder: folder, Ending: ".yaml", Most: source.MostBytes}
}

func init() {
	for _, s := range []*source.Shelf{patterns, surveys, machines} {
		s.Bases = patterns
	}
	patterns.Other, machines.Other = machines, patterns
}

// Builtin lists the names of the built-in patterns, sorted.
func Builtin() []string { return patterns.Names() }

// BuiltinSurveys lists the names of the built-in survey files, sorted.
func BuiltinSurveys() []string { return surveys.Names() }

// BuiltinMachines lists the names of the built-in machine files, sorted.
func BuiltinMachines() []string { return machines.Names() }

// BuiltinText gives the file of a built-in pattern, with line feeds.
func BuiltinText(name string) ([]byte, bool) { return patterns.Text(name) }

// BuiltinSurveyText gives the file of a built-in survey, with line feeds.
func BuiltinSurveyText(name string) ([]byte, bool) { return surveys.Text(name) }

// BuiltinMachineText gives the file of a built-in machine, with line feeds.
func BuiltinMachineText(name string) ([]byte, bool) { return machines.Text(name) }

// Unknown says that a name is no built-in pattern, and which may be meant.
func Unknown(name string) error { return patterns.Unknown(name) }

// Open finds a pattern as Shelf.Open says.
func Open(name string, stdin io.Reader) (source.Source, error) { return patterns.Open(name, stdin) }

// OpenSurvey finds a survey file as Open finds a pattern.
func OpenSurvey(name string, stdin io.Reader) (source.Source, error) {
	return surveys.Open(name, stdin)
}

// OpenMachine finds a machine file as Open finds a pattern.
func OpenMachine(name string, stdin io.Reader) (source.Source, error) {
	return machines.Open(name, stdin)
}

// FromBytes gives a source for text that came from elsewhere, such as a page's
// editor. It may extend built-in patterns, but no file.
func FromBytes(file string, data []byte) source.Source { return patterns.FromBytes(file, data) }

// Read reads a pattern with all that it extends: see meaning.Read.
func Read(from source.Source) (plan.Input, problem.List) {
	input, _, problems := meaning.Read(from)
	return input, problems
}
