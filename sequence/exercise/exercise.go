// Package exercise invents parts for a class to put in order: cylinder heads,
// covers, flanges and rows of bearing caps, each of a different size. A seed
// in, parts out: the same seed gives the same parts, and a longer list begins
// with the shorter one. No part is copied from a real one. The package also
// marks the answers of a class, by the rules of package judge. It sees plans
// and no paper.
package exercise

import (
	"fmt"
	"math/rand/v2"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Family is the kind of a part.
type Family string

const (
	Head   Family = "head"   // a grid of main bolts, often with a row of small ones
	Cover  Family = "cover"  // bolts around the rim
	Flange Family = "flange" // one bolt circle
	Caps   Family = "caps"   // bearing caps with two bolts each, in a row
)

// Families lists them in the order in which they alternate.
var Families = []Family{Head, Cover, Flange, Caps}

// Most is the largest number of parts for one seed: a class, with some to
// spare. All of them differ.
const Most = 60

// Exercise is one part. The ids of its fasteners are letters, row by row from
// the top left, or clockwise from the top on a circle. They reveal nothing
// about the order.
type Exercise struct {
	Family Family
	Joint  geometry.Joint

	threads [2]string // of the main and of the small kind; "": none
}

// Names are the words for a part in the language of the sheet.
type Names struct {
	Title, Machine, View string
	Main, Small          string // kinds of bolts; they must differ
}

// Kinds as named by the makers of the joints, until Input replaces them.
const main, small = "main", "small"

// Make returns the first n parts of a seed, all different, family after family.
func Make(seed uint64, n int) ([]Exercise, error) {
	if n < 1 || n > Most {
		return nil, finding.Failed(HowMany, finding.Values{"count": n, "most": Most})
	}
	random := rand.New(rand.NewPCG(seed, 0))
	first := random.IntN(len(Families))
	seen := map[string]bool{}
	var all []Exercise
	for k := range n {
		family := Families[(first+k)%len(Families)]
		e := makers[family](random)
		for seen[e.key()] {
			e = makers[family](random)
		}
		seen[e.key()] = true
		all = append(all, e)
	}
	return all, nil
}

var makers = map[Family]func(*rand.Rand) Exercise{Head: head, Cover: cover, Flange: flange, Caps: caps}

// key distinguishes parts by the places of their fasteners.
func (e Exercise) key() string { return fmt.Sprint(e.Joint.Fasteners, e.Joint.Front) }

// Input returns the part as the input of a plan, with the order and no figures.
func (e Exercise) Input(stem string, names Names) plan.Input {
	in := plan.Input{Heading: plan.Heading{Name: stem, Title: names.Title, Machine: names.Machine}, View: names.View, Joint: e.Joint}
	words := map[string]string{main: names.Main, small: names.Small}
	in.Joint.Fasteners = nil
	for _, f := range e.Joint.Fasteners {
		f.Kind = words[f.Kind]
		in.Joint.Fasteners = append(in.Joint.Fasteners, f)
	}
	for k, kind := range []string{main, small} {
		if e.threads[k] == "" {
			continue
		}
		size, err := thread.Parse(e.threads[k])
		if err != nil {
			panic("a thread of our own is wrong: " + err.Error())
		}
		in.Kinds = append(in.Kinds, plan.Kind{Name: words[kind], Thread: &size})
		in.Groups = append(in.Groups, sequence.Group{Kinds: []string{words[kind]}, Way: sequence.Auto})
	}
	return in
}
