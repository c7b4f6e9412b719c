package flag

import (
	"errors"
	"slices"

	"github.com/spf13/pflag"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// Misuse is an error in a command line as a whole, whatever its values.
type Misuse struct{ error }

// Misused returns a Misuse with a finding.
func Misused(code finding.Code, values finding.Values) error {
	return Misuse{finding.Failed(code, values)}
}

func (m Misuse) Unwrap() error { return m.error }

// Problem returns an error about a command's flags.
func Problem(command string, flags *pflag.FlagSet, err error) error {
	if found, ok := errors.AsType[finding.Finding](err); ok {
		return found
	}
	if unknown, ok := errors.AsType[*pflag.NotExistError](err); ok {
		return unknownFlag(command, flags, unknown)
	}
	if bare, ok := errors.AsType[*pflag.ValueRequiredError](err); ok {
		return missing(bare.GetFlag())
	}
	if invalid, ok := errors.AsType[*pflag.InvalidValueError](err); ok {
		f := invalid.GetFlag()
		return finding.Failed(Unread, finding.Values{"flag": f.Name, "written": invalid.GetValue(), "sort": f.Value.Type()})
	}
	return err
}

// missing reports that a flag has no value.
func missing(f *pflag.Flag) error {
	return finding.Failed(NoValue, finding.Values{"flag": f.Name, "words": f.Annotations[offered]})
}

func unknownFlag(command string, flags *pflag.FlagSet, unknown *pflag.NotExistError) error {
	name := "--" + unknown.GetSpecifiedName()
	if unknown.GetSpecifiedShortnames() != "" {
		name = name[1:]
	}
	known := []string{"--help"}
	flags.VisitAll(func(f *pflag.Flag) { known = append(known, "--"+f.Name) })
	slices.Sort(known)
	return finding.Failed(NotThere, finding.Values{"command": command, "flag": name, "meant": problem.Nearest(name, known), "flags": known})
}
