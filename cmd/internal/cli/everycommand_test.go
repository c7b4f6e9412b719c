package cli_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/cmd/internal/cli"
	"drawdown/geometry/testkit"
)

// drawn generates a file, sound or not, piece by piece.
type drawn struct {
	*rand.Rand
	lines []string
	kinds []string
}

func (d *drawn) one(of ...string) string      { return of[d.IntN(len(of))] }
func (d *drawn) sometimes(share float64) bool { return d.Float64() < share }

func (d *drawn) line(format string, values ...any) {
	d.lines = append(d.lines, fmt.Sprintf(format, values...))
}

func aFile(seed uint64) string {
	d := &drawn{Rand: rand.New(rand.NewPCG(seed, 1))}
	d.line("drawdown: 1\ntitle: Part %d", seed)
	if d.sometimes(0.1) {
		d.line("units: in")
	}
	d.kinds = []string{"main", "side", "cap"}[:1+d.IntN(3)]
	d.line("kinds:")
	for _, kind := range d.kinds {
		d.line("  %s: {%s}", kind, strings.Join(d.kind(), ", "))
	}
	d.places()
	d.joint()
	d.tighten()
	d.loosen()
	return strings.Join(d.lines, "\n") + "\n"
}

func (d *drawn) kind() (keys []string) {
	size := []int{6, 8, 10, 12, 16}[d.IntN(5)]
	maybe := func(share float64, format string, values ...any) {
		if d.sometimes(share) {
			keys = append(keys, fmt.Sprintf(format, values...))
		}
	}
	mm := func(from, to float64) string {
		return fmt.Sprintf("%.0f mm", (from+d.Float64()*(to-from))*float64(size))
	}
	maybe(0.9, "thread: M%d", size)
	maybe(0.8, "class: \"%s\"", d.one("5.6", "8.8", "10.9", "12.9", "A2-70", "9.9"))
	maybe(0.7, "lubricant: %s", d.one("engine oil", "dry", "anti-seize", "soap"))
	maybe(0.2, "friction: %s", d.one("0.12", "0.3", "0.5", "[0.1, 0.14]"))
	maybe(0.6, "grip: %s", mm(2, 10))
	maybe(0.5, "length: %s", mm(4, 14))
	maybe(0.3, "thread length: %s", d.one("full", mm(2, 5)))
	maybe(0.4, "into: %s", d.one("aluminium", "cast iron", "steel", "stainless steel"))
	maybe(0.4, "engagement: %s", mm(0.6, 3))
	maybe(0.3, "hole: %s", mm(0.9, 1.4))
	maybe(0.3, "head: %s", mm(1.2, 2.2))
	maybe(0.2, "nut: %s", mm(1.4, 1.8))
	maybe(0.5, "reuse: %s", d.one("once", "inspect", "yes"))
	return keys
}

// places gives each kind its own places, in rows one above the other; some of
// them wrong.
func (d *drawn) places() {
	d.line("fasteners:")
	for i, kind := range d.kinds {
		y := 300 * i
		switch d.IntN(4) {
		case 0:
			d.line("  - {circle: {count: %d, diameter: 200, centre: [0, %d], kind: %s, id: %s}}", 3+d.IntN(8), y, kind, kind)
		case 1:
			d.line("  - {row: {count: %d, pitch: %d, from: [-100, %d], kind: %s, id: %s}}", 2+d.IntN(5), 5+d.IntN(70), y, kind, kind)
		case 2:
			for n := range 4 {
				cast := ""
				if d.sometimes(0.8) {
					cast = fmt.Sprintf(", cast: %d", n+1+d.IntN(2)*d.IntN(2))
				}
				d.line("  - {id: %s%d, at: [%d, %d], kind: %s%s}", kind, n+1, 60*n, y+10*(n%2), kind, cast)
			}
		default:
			d.line("  - {grid: {columns: 3, rows: 2, pitch: [70, 50], centre: [0, %d], kind: %s, id: %s}}", y, kind, kind)
		}
	}
	if d.sometimes(0.3) {
		d.line("clusters:\n  - {name: cap 1, of: [%s1, %s2]%s}", d.kinds[0], d.kinds[0], d.one("", ", loaded: no"))
	}
	if d.sometimes(0.3) {
		d.line("features: [{bore: [%d, 0], diameter: %d}, {front: left}]", d.IntN(200)-100, 10+d.IntN(60))
	}
}

func (d *drawn) joint() {
	if d.sometimes(0.5) {
		d.line("joint: {part: {material: %s, thickness: %d mm}, gasket: {kind: %s}}", d.one("cast aluminium", "steel", "cast iron"), 5+d.IntN(60), d.one("none", "composite", "fibre sheet"))
	}
}

func (d *drawn) tighten() {
	if d.sometimes(0.05) {
		return
	}
	d.line("tighten:")
	switch d.IntN(5) {
	case 0:
		d.line("  order: %s", d.one("auto", "spiral", "cross", "row", "star", "circular", "cast"))
	case 1:
		d.line("  order: [%s1, %s2, %s3]", d.kinds[0], d.kinds[0], d.kinds[0])
	}
	d.line("  stages:")
	for range 1 + d.IntN(6) {
		of := "of: [" + d.one(d.kinds...) + "], "
		if d.sometimes(0.3) {
			of = ""
		}
		act := d.one(
			fmt.Sprintf("torque: %d N·m", 1+d.IntN(90)), fmt.Sprintf("torque: %d N·m", 1+d.IntN(90)), fmt.Sprintf("torque: %d lbf·ft, way: circular", 1+d.IntN(60)),
			fmt.Sprintf("angle: %d°", 5+d.IntN(200)), fmt.Sprintf("percent: %d", 10+d.IntN(91)), "back off: 90°", "wait: 5 min")
		if act == "wait: 5 min" {
			of = ""
		}
		d.line("    - {%s%s}", of, act)
	}
	if d.sometimes(0.5) {
		d.line("  source: a manual")
	}
}

func (d *drawn) loosen() {
	if d.sometimes(0.3) {
		d.line("loosen: {stages: [{turn: %d°%s}, {remove: true}]}", 30+d.IntN(400), d.one("", ", until: no spring presses"))
	}
}

// told returns the problems of a file that a command prints, in order.
func told(stderr, path string) []string {
	problems := []string{}
	for line := range strings.Lines(stderr) {
		if rest, is := strings.CutPrefix(line, path+":"); is {
			problems = append(problems, strings.TrimSpace(rest))
		}
	}
	slices.Sort(problems)
	return problems
}

// First principles: the same facts give the same verdict, whatever the command.
// A command may fail for its own reasons, such as a kind without a thread for
// torque. But an error in the file stops all commands, and each prints what
// check prints.
func TestEveryCommandTellsTheSame(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path, machine, out := filepath.Join(dir, "part.yaml"), filepath.Join(dir, "machine.yaml"), filepath.Join(dir, "out")
	strip := "drawdown: 1\ntitle: Strip\nmachine: P4\nstrip: [{joint: part.yaml}]\n"
	if err := os.WriteFile(machine, []byte(strip), 0o600); err != nil {
		t.Fatal(err)
	}
	sound, broken := 0, 0
	for seed := range uint64(testkit.Samples(15, 500)) {
		text := aFile(seed)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		_, stderr, checked := run("check", path)
		want := told(stderr, path)
		if checked == cli.Done {
			sound++
		} else {
			broken++
		}
		for _, call := range []string{
			"check %s --json", "torque %s", "order %s", "order %s --json", "card %s --format svg", "predict %s",
			"tray %s --format svg", "condition %s --format svg", "handout %s --format svg", "book",
		} {
			args := strings.Fields(strings.Replace(call, "%s", path, 1))
			if call == "book" {
				args = []string{"book", machine, "--trays", "none", "--format", "svg"}
			}
			if strings.HasSuffix(call, "svg") || call == "book" {
				args = append(args, "-o", out)
			}
			_, stderr, status := run(args...)
			if checked != cli.Done && status != checked {
				t.Errorf("%s: status %d, check %d\n%s\n%s", call, status, checked, stderr, text)
			}
			if strings.HasSuffix(call, "--json") && call != "order %s --json" {
				continue // the problems are in the JSON
			}
			if diff := cmp.Diff(tells(call, want), tells(call, told(stderr, path))); diff != "" {
				t.Errorf("%s (- check, + it): %s\n%s", call, diff, text)
			}
		}
		if t.Failed() {
			t.FailNow()
		}
	}
	if sound < 5 || broken < 5 {
		t.Errorf("%d sound files and %d broken ones say little", sound, broken)
	}
}

// tells returns the problems that a command must print: all of them, except
// missing figures if only the places are needed.
func tells(call string, all []string) []string {
	places := []string{"tray", "condition", "handout"}
	name, _, _ := strings.Cut(call, " ")
	return slices.DeleteFunc(slices.Clone(all), func(problem string) bool {
		return slices.Contains(places, name) && strings.Contains(problem, "tighten is missing")
	})
}
