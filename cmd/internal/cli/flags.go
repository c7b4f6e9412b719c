package cli

import (
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/patterns/problem"
)

// jsonFlag adds the flag that every command with figures has.
func jsonFlag(flags *pflag.FlagSet) *bool {
	return flags.Bool("json", false, "print JSON for other programs")
}

// jobsFlag says how many patterns are worked at the same time.
type jobsFlag struct {
	flags *pflag.FlagSet
	count *int
}

func addJobsFlag(flags *pflag.FlagSet) jobsFlag {
	return jobsFlag{flags, flags.Int("jobs", 0, "`count` of patterns that are drawn at the same time; without it one a core")}
}

func (f jobsFlag) chosen() (int, error) {
	switch {
	case !f.flags.Changed("jobs"):
		return runtime.GOMAXPROCS(0), nil
	case *f.count < 1:
		return 0, fmt.Errorf("--jobs %d; allowed: 1 or more", *f.count)
	}
	return *f.count, nil
}

// choices writes a list of allowed values for a flag's help.
func choices[T ~string](values []T) string { return strings.Join(texts(values), ", ") }

func texts[T ~string](values []T) []string {
	all := make([]string, len(values))
	for i, v := range values {
		all[i] = string(v)
	}
	return all
}

// choose gives the allowed value that a flag names, in small letters or large.
func choose[T ~string](flag, value string, allowed []T) (T, error) {
	i := slices.IndexFunc(allowed, func(a T) bool { return strings.EqualFold(string(a), strings.TrimSpace(value)) })
	if i < 0 {
		return "", fmt.Errorf("--%s %q is not known%s; allowed: %s", flag, value, problem.DidYouMean(value, texts(allowed)), choices(allowed))
	}
	return allowed[i], nil
}

// flagProblem puts what is wrong with a command's flags into words that tell
// what to write instead.
func flagProblem(c command, err error) error {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		return unknownFlag(c, unknown.GetSpecifiedName(), unknown.GetSpecifiedShortnames() != "")
	case errors.As(err, &bare):
		_, usage := pflag.UnquoteUsage(bare.GetFlag())
		return fmt.Errorf("--%s needs a value: %s", bare.GetFlag().Name, usage)
	case errors.As(err, &invalid):
		_, usage := pflag.UnquoteUsage(invalid.GetFlag())
		return fmt.Errorf("--%s %q %w: %s", invalid.GetFlag().Name, invalid.GetValue(), errors.Unwrap(invalid), usage)
	}
	return err
}

func unknownFlag(c command, name string, short bool) error {
	if short {
		name = "-" + name
	} else {
		name = "--" + name
	}
	known := flagWords(c)
	return fmt.Errorf("%s has no flag %s%s; flags: %s", c.name, name, problem.DidYouMean(name, known), strings.Join(known, ", "))
}
