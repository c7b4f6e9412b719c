package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
)

// quantities reads flags that carry a quantity. It keeps the first error.
type quantities struct {
	flags *pflag.FlagSet
	err   error
}

func (q *quantities) fail(err error) {
	if q.err == nil {
		q.err = err
	}
}

// text gives what a flag was set to, and whether it was set.
func (q *quantities) text(flag string) (string, bool) {
	f := q.flags.Lookup(flag)
	if f == nil || !f.Changed {
		return "", false
	}
	value := strings.TrimSpace(f.Value.String())
	if value == "" {
		_, usage := pflag.UnquoteUsage(f)
		q.fail(fmt.Errorf("--%s is empty: %s", flag, usage))
	}
	return value, value != ""
}

// read gives the value of a flag by its parser; set is false where the flag
// was not set or could not be read.
func read[T any](q *quantities, flag string, parse func(string) (T, error)) (value T, set bool) {
	text, given := q.text(flag)
	if !given {
		return value, false
	}
	value, err := parse(text)
	if err != nil {
		q.fail(fmt.Errorf("--%s: %w", flag, err))
		return value, false
	}
	return value, true
}

// oneOf gives the allowed word that a flag names.
func oneOf[T ~string](q *quantities, name string, allowed []T) (word T, set bool) {
	text, given := q.text(name)
	if !given {
		return "", false
	}
	word, err := flag.Choose(name, text, allowed)
	if err != nil {
		q.fail(flag.Misusef("%w", err))
	}
	return word, err == nil
}

// above reads a quantity above zero; zero where the flag was not set.
func above[T ~float64](q *quantities, flag string, parse func(string) (T, error)) T {
	value, set := read(q, flag, parse)
	if set && !(value > 0) {
		text, _ := q.text(flag)
		q.fail(fmt.Errorf("--%s %s; allowed: above 0", flag, text))
		return 0
	}
	return value
}

// withUnit reads a length that must say its unit.
func withUnit(text string) (unit.Length, error) {
	l, err := unit.ParseLength(text, "")
	if errors.Is(err, unit.NoUnit) {
		return 0, fmt.Errorf("%q: the unit is missing; write for example %s mm or %s in", text, text, text)
	}
	return l, err
}

// sumOfAngles reads an angle, or several turns that follow each other: 90+90deg.
// The unit of the last holds for those that have none.
func sumOfAngles(text string) (unit.Angle, error) {
	parts := strings.Split(strings.TrimPrefix(text, "+"), "+")
	unitOfLast := strings.TrimLeft(parts[len(parts)-1], "0123456789.,/ ")
	var sum unit.Angle
	for _, part := range parts {
		part = strings.TrimSpace(part)
		if part == "" {
			return 0, fmt.Errorf("%q: a turn is missing; write for example 180deg or 90+90deg", text)
		}
		turn, err := unit.ParseAngle(part)
		if errors.Is(err, unit.NoUnit) && len(parts) > 1 && unitOfLast != "" {
			turn, err = unit.ParseAngle(part + " " + unitOfLast)
		}
		if err != nil {
			return 0, err
		}
		if len(parts) > 1 && !(turn > 0) {
			return 0, fmt.Errorf("%q: a turn of %v; allowed: above 0", text, turn)
		}
		sum += turn
	}
	return sum, nil
}

func torqueNm(text string) (unit.Torque, error) {
	given, err := unit.ParseTorque(text)
	return given.Nm(), err
}

func misuse(format string, args ...any) error { return flag.Misusef(format, args...) }

// refuse reports an error of a command's arguments with its status.
func (p *Program) refuse(name string, err error) Status {
	if _, ok := errors.AsType[flag.Misuse](err); ok {
		return p.misuse(name, "%v", err)
	}
	return p.fail(Wrong, err)
}

// atMostOne refuses flags that exclude each other.
func (q *quantities) atMostOne(names ...string) {
	var set []string
	for _, name := range names {
		if q.flags.Changed(name) {
			set = append(set, "--"+name)
		}
	}
	if len(set) > 1 {
		q.fail(misuse("%s stand together; allowed: one of --%s", strings.Join(set, " and "), strings.Join(names, ", --")))
	}
}

// needs refuses a flag that says nothing without another.
func (q *quantities) needs(flag, other, example string) {
	if q.flags.Changed(flag) && !q.flags.Changed(other) {
		q.fail(misuse("--%s needs --%s, for example --%s %s", flag, other, other, example))
	}
}

// ofKind says which kind of a file an error is about.
func ofKind(kind string, err error) error {
	if kind == "" {
		return err
	}
	return fmt.Errorf("kind %s: %w", kind, err)
}

func unknownKind(kind string, names []string) error {
	return fmt.Errorf("--kind %q is not in the file%s; allowed: %s", kind, problem.DidYouMean(kind, names), strings.Join(names, ", "))
}
