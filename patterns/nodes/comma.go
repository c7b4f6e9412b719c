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

// listKeys take several values, which stand in [ ].
var listKeys = []string{"of", "omit", "cast", "mark", "kind", "order"}

// pairs returns the keys and values of a map. In { } a comma begins a new
// entry, so that torque: 30,5 N·m comes as torque: 30 and a key 5 N·m without a
// value. Such halves are reported and joined again with a point.
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
		case joined: // 1,000,5 is one slip
			pairs[last].Value += "." + key.Value
		case isPlain(pairs[last]) && wholeNumber.MatchString(pairs[last].Value):
			pairs[last], joined = c.joinedByPoint(pairs[last-1], pairs[last], key), true
		default:
			pairs = append(pairs, key, value)
		}
	}
	return pairs
}

// isTornOff reports whether an entry is but a number, perhaps with a unit.
func isTornOff(key, value *yaml.Node) bool {
	return isPlain(key) && behindAComma.MatchString(key.Value) &&
		value.Kind == yaml.ScalarNode && value.Value == "" && value.ShortTag() == "!!null"
}

func isPlain(y *yaml.Node) bool {
	const quotes = yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle
	return y.Kind == yaml.ScalarNode && y.Style&quotes == 0
}

// joinedByPoint reports a torn number and returns it as a whole. Three digits may
// be a decimal as well as the rest of thousands; these are then read on.
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

// Found returns what stands where two numbers should, as a value of a finding.
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

// oneEntry returns what stands alone in a list, and whether it may be two.
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

// decimal returns the first two whole numbers between which no blank stands, as
// the decimal that they seem to be; empty where there are none.
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
