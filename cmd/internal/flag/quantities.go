package flag

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Quantities reads flags with quantities. It keeps the first error.
type Quantities struct {
	Flags *pflag.FlagSet
	Err   error
}

// reader reads flags, and keeps the first error.
type reader interface {
	Text(flag string) (string, bool)
	Fail(err error)
}

// Fail keeps the first non-nil error.
func (q *Quantities) Fail(err error) {
	if q.Err == nil {
		q.Err = err
	}
}

// Text returns the value of a flag, and whether it was set.
func (q *Quantities) Text(flag string) (string, bool) {
	f := q.Flags.Lookup(flag)
	if f == nil || !f.Changed {
		return "", false
	}
	value := strings.TrimSpace(f.Value.String())
	if value == "" {
		q.Fail(missing(f))
	}
	return value, value != ""
}

// Read returns the value of a flag by its parser; set is false if the flag was
// not set or could not be read.
func Read[T any](q reader, flag string, parse func(string) (T, error)) (value T, set bool) {
	text, given := q.Text(flag)
	if !given {
		return value, false
	}
	value, err := parse(text)
	if err != nil {
		q.Fail(fmt.Errorf("--%s: %w", flag, err))
		return value, false
	}
	return value, true
}

// Over replaces a value by that of a flag, if it was set.
func Over[T any](q reader, flag string, parse func(string) (T, error), to *T) {
	if value, set := Read(q, flag, parse); set {
		*to = value
	}
}

// Word reads any words.
func Word(text string) (string, error) { return text, nil }

// OneOf returns the allowed word that a flag names.
func OneOf[T ~string](q reader, name string, allowed []T) (word T, set bool) {
	text, given := q.Text(name)
	if !given {
		return "", false
	}
	word, err := Choose(name, text, allowed)
	if err != nil {
		q.Fail(Misuse{err})
	}
	return word, err == nil
}

// Within reads a quantity within limits; it is zero if the flag was not set.
func Within[T ~float64](q reader, flag string, limits unit.Limits, parse func(string) (T, error)) T {
	value, _ := Read(q, flag, unit.Within(limits, parse))
	return value
}

// WithUnit reads a length that must have a unit.
func WithUnit(text string) (unit.Length, error) {
	l, err := unit.ParseLength(text, "")
	if errors.Is(err, unit.NoUnit) {
		return 0, finding.Failed(unit.NoUnit, finding.Values{"written": text, "examples": []string{text + " mm", text + " in"}})
	}
	return l, err
}

// SumOfAngles reads an angle, or the sum of several turns: 90+90deg. The unit
// of the last applies to those without one.
func SumOfAngles(text string) (unit.Angle, error) {
	parts := strings.Split(strings.TrimPrefix(text, "+"), "+")
	unitOfLast := strings.TrimLeft(parts[len(parts)-1], "0123456789.,/ ")
	var sum unit.Angle
	for _, part := range parts {
		part = strings.TrimSpace(part)
		if part == "" {
			return 0, finding.Failed(TurnMissing, finding.Values{"written": text})
		}
		turn, err := unit.ParseAngle(part)
		if errors.Is(err, unit.NoUnit) && len(parts) > 1 && unitOfLast != "" {
			turn, err = unit.ParseAngle(part + " " + unitOfLast)
		}
		if err != nil {
			return 0, err
		}
		if len(parts) > 1 && !(turn > 0) {
			return 0, finding.Failed(NoTurn, finding.Values{"written": text, "turn": turn})
		}
		sum += turn
	}
	return sum, nil
}

func TorqueNm(text string) (unit.Torque, error) {
	given, err := unit.ParseTorque(text)
	return given.Nm(), err
}

// AtMostOne refuses flags that exclude each other.
func (q *Quantities) AtMostOne(names ...string) {
	var set, all []string
	for _, name := range names {
		all = append(all, "--"+name)
		if q.Flags.Changed(name) {
			set = append(set, "--"+name)
		}
	}
	if len(set) > 1 {
		q.Fail(Misused(Together, finding.Values{"flags": set, "allowed": all}))
	}
}

// Needs refuses a flag that means nothing without another.
func (q *Quantities) Needs(flag, other, example string) {
	if q.Flags.Changed(flag) && !q.Flags.Changed(other) {
		q.Fail(Misused(NeedsOther, finding.Values{"flag": flag, "other": other, "example": example}))
	}
}
