// Package patterntest plans patterns for the tests of what is drawn from them.
// Tests alone import it.
package patterntest

import (
	"testing"

	"drawdown/patterns"
	"drawdown/sequence/plan"
)

// Plan plans a built-in pattern by its name, or else the text of a pattern.
func Plan(t testing.TB, nameOrText string) plan.Plan {
	t.Helper()
	source := patterns.FromBytes("test.yaml", []byte(nameOrText))
	if text, ok := patterns.BuiltinText(nameOrText); ok {
		source = patterns.FromBytes(nameOrText, text)
	}
	input, problems := patterns.Read(source)
	if problems.Stops() {
		t.Fatal(problems.Error())
	}
	p, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
