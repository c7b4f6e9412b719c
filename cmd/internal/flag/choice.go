// Package flag contains what the flags of the commands share. A flag is
// described once, where a command adds it: its usage and its possible values.
// Help, completion and the message for a wrong value are made from that.
// It imports the packages that define the values: papers, formats, languages.
// It runs nothing.
package flag

import (
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// choice is a flag whose value is one of several words.
type choice[T ~string] struct {
	name    string
	value   T
	allowed []T
}

func (c *choice[T]) String() string { return string(c.value) }
func (c *choice[T]) Type() string   { return "string" }

func (c *choice[T]) Set(text string) (err error) {
	c.value, err = Choose(c.name, text, c.allowed)
	return err
}

// Choice adds a flag for one of the allowed words; the usage ends with them.
func Choice[T ~string](flags *pflag.FlagSet, name string, usual T, allowed []T, usage string) *T {
	c := &choice[T]{name, usual, allowed}
	flags.Var(c, name, usage+Choices(allowed))
	Offer(flags, name, Texts(allowed)...)
	return &c.value
}

// list is a flag whose value is a list of words separated by commas.
type list[T ~string] struct {
	choice[T]
	values []T
}

func (l *list[T]) String() string { return strings.Join(Texts(l.values), ",") }

func (l *list[T]) Set(text string) error {
	var values []T
	for _, word := range strings.Split(text, ",") {
		if err := l.choice.Set(word); err != nil {
			return err
		}
		if !slices.Contains(values, l.value) {
			values = append(values, l.value)
		}
	}
	l.values = values
	return nil
}

// List adds a flag for one or more of the allowed words; the usage ends with
// them. Each word counts once.
func List[T ~string](flags *pflag.FlagSet, name string, usual, allowed []T, usage string) *[]T {
	l := &list[T]{choice[T]{name: name, allowed: allowed}, usual}
	flags.Var(l, name, usage+Choices(allowed))
	Offer(flags, name, Texts(allowed)...)
	annotate(flags, name, isList)
	return &l.values
}

// Choices writes a list of allowed values for a flag's help.
func Choices[T ~string](values []T) string { return strings.Join(Texts(values), ", ") }

func Texts[T ~string](values []T) []string {
	all := make([]string, len(values))
	for i, v := range values {
		all[i] = string(v)
	}
	return all
}

// Choose returns the allowed value that a flag names, regardless of case.
func Choose[T ~string](name, value string, allowed []T) (T, error) {
	i := slices.IndexFunc(allowed, func(a T) bool { return strings.EqualFold(string(a), strings.TrimSpace(value)) })
	if i < 0 {
		return "", Unknown(name, value, Texts(allowed))
	}
	return allowed[i], nil
}

// Unknown reports that a flag does not accept a value.
func Unknown(name, value string, allowed []string) error {
	return finding.Failed(NotKnown, finding.Values{"flag": name, "written": value, "meant": problem.Nearest(value, allowed), "allowed": allowed})
}
