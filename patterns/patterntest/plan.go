// Package patterntest plans patterns for the tests of sheets. Only tests import
// it.
package patterntest

import (
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

// Plan plans a built-in pattern by its name, or a pattern given as text.
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

// WithBore adds a bore to a plan, even over a fastener, which no file may have.
func WithBore(p plan.Plan, b geometry.Bore) plan.Plan {
	p.Joint.Bores = append(slices.Clone(p.Joint.Bores), b)
	return p
}

// Joint reads back the joint of a written pattern.
func Joint(t testing.TB, written []byte) geometry.Joint {
	t.Helper()
	input, problems := patterns.Read(patterns.FromBytes("made.yaml", written))
	if problems.Stops() {
		t.Fatalf("%s\n%s", problems.Detail(), written)
	}
	return input.Joint
}

// Within checks that every problem is inside the text.
func Within(t testing.TB, text string, problems problem.List) {
	t.Helper()
	lines := nodes.NewFile("", []byte(text)).Lines
	for _, p := range problems {
		if p.Line < 1 || p.Line > len(lines) {
			t.Fatalf("%v: the text has %d lines", p, len(lines))
		}
		if width := len([]rune(lines[p.Line-1])); p.Column < 1 || p.Column > width+1 {
			t.Fatalf("%v: the line has %d characters", p, width)
		}
		p.Detail()
	}
}
