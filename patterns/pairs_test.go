package patterns

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
)

// whole is a file with every key, each with a valid block.
var whole = blocksOf(`drawdown: 1
title: Lid of the pump
machine: Fernhollow P4 pump engine
revision: 3
date: 2026-02-28
units: mm
view: from above
kinds: {main: {thread: M10, class: "10.9"}, side: {thread: M8}}
fasteners:
  - {id: A1, at: [0, 100], kind: main}
  - {id: A2, at: [100, 0], kind: main}
  - {id: A3, at: [0, -100], kind: main}
  - {id: A4, at: [-100, 0], kind: side}
clusters: [{name: cap 1, of: [A1, A2], loaded: no}]
outline: [[-150, -150], [150, -150], [150, 150], [-150, 150]]
features: [{front: left}]
stations: [{id: T1, at: [20, 20]}]
joint: {part: {material: aluminium, thickness: 60 mm}}
tighten: {source: manual, stages: [{of: [main, side], torque: 20 N·m}]}
loosen: {stages: [{turn: 90°}, {remove: true}]}
cautions: [Fit a new gasket]
`)

// block is a top-level key of a file with all of its lines.
type block struct{ key, text string }

var atTop = regexp.MustCompile(`^([a-z][a-z0-9 ]*):`)

func blocksOf(text string) (blocks []block) {
	for _, line := range strings.SplitAfter(text, "\n") {
		if m := atTop.FindStringSubmatch(line); m != nil {
			blocks = append(blocks, block{m[1], ""})
		}
		if len(blocks) > 0 {
			blocks[len(blocks)-1].text += line
		}
	}
	return blocks
}

var onLine = regexp.MustCompile(`on line \d+`)

// problemsIn reads the whole file with some blocks replaced. It names each
// problem by its block and the line in the block.
func problemsIn(t *testing.T, with ...block) map[string]bool {
	var text string
	var at []string // for each line
	for _, b := range whole {
		for _, other := range with {
			if other.key == b.key {
				b = other
			}
		}
		text += b.text
		for i := range strings.Count(b.text, "\n") {
			at = append(at, fmt.Sprintf("%s, line %d", b.key, i+1))
		}
	}
	from := FromBytes("text", []byte(text))
	from.Printable = lacksDragon
	_, problems := Read(from)
	found := map[string]bool{}
	for _, p := range said(problems) {
		found[fmt.Sprintf("%s, column %d: %s; %s", at[p.Line-1], p.Column, onLine.ReplaceAllString(p.What, "on line …"), p.Allowed)] = true
	}
	return found
}

// leansOn lists the keys that depend on others: a fastener's kind is one of
// kinds, and an order names fasteners. If the other key cannot be read the
// dependent one cannot be judged.
var leansOn = map[string][]string{
	"kinds": {"units"}, "fasteners": {"kinds", "units"}, "clusters": {"fasteners", "kinds", "tighten"},
	"outline": {"fasteners", "units"}, "features": {"fasteners", "kinds", "outline", "units", "view"}, "stations": {"fasteners", "units", "outline", "features"},
	"joint": {"fasteners", "kinds", "units"}, "tighten": {"fasteners", "kinds", "clusters"}, "loosen": {"fasteners", "kinds", "clusters"},
}

func independent(a, b string) bool {
	return a != b && !slices.Contains(leansOn[a], b) && !slices.Contains(leansOn[b], a)
}

// reachesOn matches what affects the rest of the file: the end of a document,
// and an unclosed quote.
var reachesOn = regexp.MustCompile(`(?m)^(?:---|\.\.\.|")`)

// brokenBlocks returns the blocks of all broken files that break the whole
// file, with the problems that they cause.
func brokenBlocks(t *testing.T) (blocks []block, problems []map[string]bool) {
	files, err := filepath.Glob("testdata/broken/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if len(data) > 10_000 || bytes.IndexByte(data, 0) >= 0 || strings.Contains(string(data), "extends:") {
			continue // too many, no text, or about another file
		}
		for _, b := range blocksOf(string(data)) {
			if reachesOn.MatchString(b.text) || strings.Count(b.text, `"`)%2 != 0 {
				continue
			}
			if !strings.HasSuffix(b.text, "\n") || !slices.ContainsFunc(whole, func(w block) bool { return w.key == b.key }) || slices.Contains(blocks, b) {
				continue
			}
			if found := problemsIn(t, b); len(found) > 0 {
				blocks, problems = append(blocks, b), append(problems, found)
			}
		}
	}
	return blocks, problems
}

// First principles: mistakes in unrelated keys are all reported together, and
// no others.
func TestMistakesHideNoOthers(t *testing.T) {
	if found := problemsIn(t); len(found) > 0 {
		t.Fatalf("the sound file: %v", slices.Collect(maps.Keys(found)))
	}
	blocks, problems := brokenBlocks(t)
	random := rand.New(rand.NewPCG(1, 2))
	tried := 0
	for i, a := range blocks {
		for range testkit.Samples(3, 12) {
			k := random.IntN(len(blocks))
			b := blocks[k]
			if !independent(a.key, b.key) {
				continue
			}
			tried++
			want := maps.Clone(problems[i])
			maps.Copy(want, problems[k])
			got := problemsIn(t, a, b)
			if !maps.Equal(got, want) {
				t.Errorf("%s%sgot\n\t%s\nwant\n\t%s", a.text, b.text, sorted(got), sorted(want))
			}
		}
	}
	t.Logf("%d blocks, %d pairs", len(blocks), tried)
	if tried < testkit.Samples(120, 500) {
		t.Errorf("%d pairs", tried)
	}
}

func sorted(set map[string]bool) string {
	return strings.Join(slices.Sorted(maps.Keys(set)), "\n\t")
}
