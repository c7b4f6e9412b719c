package flag

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/patterns/problem"
)

// Misuse is a command line that is wrong as a whole, whatever its figures.
type Misuse struct{ error }

func Misusef(format string, args ...any) error { return Misuse{fmt.Errorf(format, args...)} }

func (m Misuse) Unwrap() error { return m.error }

// spoken is what is wrong with a value, in words that name its flag.
type spoken struct{ error }

// Problem puts what is wrong with a command's flags into words that tell what
// to write instead.
func Problem(command string, flags *pflag.FlagSet, err error) error {
	if said, ok := errors.AsType[spoken](err); ok {
		return said.error
	}
	if unknown, ok := errors.AsType[*pflag.NotExistError](err); ok {
		return unknownFlag(command, flags, unknown)
	}
	if bare, ok := errors.AsType[*pflag.ValueRequiredError](err); ok {
		_, usage := pflag.UnquoteUsage(bare.GetFlag())
		return fmt.Errorf("--%s needs a value: %s", bare.GetFlag().Name, usage)
	}
	if invalid, ok := errors.AsType[*pflag.InvalidValueError](err); ok {
		_, usage := pflag.UnquoteUsage(invalid.GetFlag())
		return fmt.Errorf("--%s %q %w: %s", invalid.GetFlag().Name, invalid.GetValue(), errors.Unwrap(invalid), usage)
	}
	return err
}

func unknownFlag(command string, flags *pflag.FlagSet, unknown *pflag.NotExistError) error {
	name := "--" + unknown.GetSpecifiedName()
	if unknown.GetSpecifiedShortnames() != "" {
		name = name[1:]
	}
	known := []string{"--help"}
	flags.VisitAll(func(f *pflag.Flag) { known = append(known, "--"+f.Name) })
	slices.Sort(known)
	return fmt.Errorf("%s has no flag %s%s; flags: %s", command, name, problem.DidYouMean(name, known), strings.Join(known, ", "))
}
