package nodes

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

var (
	wholeNumber  = regexp.MustCompile(`^[-+]?[0-9]+$`)
	anyNumber    = regexp.MustCompile(`^[-+]?[0-9]*[.]?[0-9]+$`)
	behindAComma = regexp.MustCompile(`^[0-9]`)
	threeDigits  = regexp.MustCompile(`^[0-9]{3}([^0-9]|$)`)
)

// listKeys take several values in [ ].
var listKeys = []string{"of", "omit", "cast", "mark", "kind", "order"}

// pairs returns the keys and values of a map. In { } a comma starts a new
// entry, so that torque: 30,5 N·m becomes torque: 30 and a key 5 N·m without a
// value. Such halves are reported and joined again with a decimal point.
func (c *converter) pairs(y *yaml.Node) []*yaml.Node {
	if y.Style&yaml.FlowStyle == 0 {
		return y.Content
	}
	pairs := make([]*yaml.Node, 0, len(y.Content))
	joined := false
	for i := 0; i+1 < len(y.Content); i += 2 {
		key, value := y.Content[i], y.Content[i+1]
		if len(pairs) == 0 || !isTornOff(key, value) {
			pairs, joined = append(pairs, key, value), false
			continue
		}
		last := len(pairs) - 1
		switch {
		case joined: // 1,000,5 is reported once
			pairs[last].Value += "." + key.Value
		case isPlain(pairs[last]) && wholeNumber.MatchString(pairs[last].Value):
			pairs[last], joined = c.joinedByPoint(pairs[last-1], pairs[last], key), true
		default:
			pairs = append(pairs, key, value)
		}
	}
	return pairs
}

// isTornOff reports whether an entry is only a number, with or without a unit.
func isTornOff(key, value *yaml.Node) bool {
	return isPlain(key) && behindAComma.MatchString(key.Value) &&
		value.Kind == yaml.ScalarNode && value.Value == "" && value.ShortTag() == "!!null"
}

func isPlain(y *yaml.Node) bool {
	const quotes = yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle
	return y.Kind == yaml.ScalarNode && y.Style&quotes == 0
}

// joinedByPoint reports a split number and returns it joined. Three digits may
// be decimals or thousands; reading continues with the joined number.
func (c *converter) joinedByPoint(key, head, tail *yaml.Node) *yaml.Node {
	whole := *head
	whole.Tag = ""
	whole.Value += "." + tail.Value
	code, values := CommaInNumber, finding.Values{
		"written": problem.Quoted(head.Value + "," + tail.Value), "braces": "{ }", "whole": problem.Shortened(whole.Value),
	}
	switch {
	case slices.Contains(listKeys, key.Value):
		code = CommaInList
		values["key"], values["first"], values["second"] = key.Value, problem.Shortened(head.Value), problem.Shortened(tail.Value)
	case threeDigits.MatchString(tail.Value):
		code, whole.Value = CommaInThousands, head.Value+tail.Value
	}
	c.problems.Fail(c.node(head), code, values)
	return &whole
}

// Found describes what is there instead of two numbers, for a finding.
func (n *Node) Found() any {
	if n.Shape != List {
		return n.Called()
	}
	switch len(n.Items) {
	case 0:
		return finding.Term("an empty list")
	case 1:
		return n.Items[0].oneEntry()
	}
	for _, item := range n.Items {
		if item.Shape != Scalar || !anyNumber.MatchString(item.Text) {
			return finding.Failed(Entries, finding.Values{"count": len(n.Items)})
		}
	}
	return finding.Failed(Numbers, finding.Values{"count": len(n.Items), "decimal": n.decimal()})
}

// oneEntry describes a single value, and whether it may be two.
func (n *Node) oneEntry() any {
	if n.Shape != Scalar || n.Null {
		return finding.Term("one entry")
	}
	apart := "no"
	if len(strings.Fields(n.Text)) > 1 {
		apart = "yes"
	}
	return finding.Failed(OneEntry, finding.Values{"written": problem.Shortened(n.Text), "apart": apart})
}

// decimal returns the first two integers without a space between them, as the
// decimal number that was probably meant, or "".
func (n *Node) decimal() string {
	for i, a := range n.Items[1:] {
		b := n.Items[i]
		touching := a.Line == b.Line && a.Column == b.Column+utf8.RuneCountInString(b.Text)+1
		if touching && wholeNumber.MatchString(b.Text) && behindAComma.MatchString(a.Text) {
			return problem.Shortened(b.Text + "." + a.Text)
		}
	}
	return ""
}
