package patterns

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/testkit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/render/stopwatch"
)

// checkPlaces checks that every problem is within the text.
func checkPlaces(t *testing.T, text string, problems problem.List) {
	t.Helper()
	lines := nodes.NewFile("", []byte(text)).Lines
	for _, p := range problems {
		if p.Line == 0 && p.Found.Code == nodes.MoreProblems {
			continue
		}
		if p.File != "text" {
			continue // a built-in pattern that the text extends
		}
		if p.Line < 1 || p.Line > len(lines) {
			t.Fatalf("%v: the text has %d lines", p, len(lines))
		}
		if width := len([]rune(lines[p.Line-1])); p.Column < 1 || p.Column > width+1 {
			t.Fatalf("%v: the line has %d characters", p, width)
		}
		p.Detail()
	}
}

func FuzzRead(f *testing.F) {
	for _, pattern := range []string{"*.yaml", "testdata/*/*.yaml"} {
		paths, _ := filepath.Glob(pattern)
		for _, path := range paths {
			data, err := os.ReadFile(path)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		from := FromBytes("text", data)
		from.Printable = lacksDragon
		in, problems := Read(from)
		checkPlaces(t, string(data), problems)
		if !problems.Stops() && (in.Title == "" || in.Name == "" || len(in.Joint.Fasteners) == 0) {
			t.Errorf("no problem, and yet %+v", in)
		}
	})
}

// hostile returns files made to hang the program or fill the memory, at a share
// of their full size.
func hostile(share int) map[string]string {
	const head = "drawdown: 1\ntitle: Lid\n"
	repeat := func(n int, format string) string {
		var b strings.Builder
		for i := range n / share {
			fmt.Fprintf(&b, format, i)
		}
		return b.String()
	}
	same := func(text string, n int) string { return strings.Repeat(text, n/share) }
	return map[string]string{
		"brackets":       head + "outline: " + same("[", 9_000) + same("]", 9_000) + "\n",
		"open brackets":  head + "outline: " + same("[", 1_000_000) + "\n",
		"deep blocks":    head + same("- ", 9_000) + "\n",
		"unknown keys":   head + repeat(300_000, "key%d: 1\n"),
		"same key":       head + same("view: x\n", 300_000),
		"kinds":          head + "kinds:\n" + repeat(200_000, "  k%d: {thread: M8}\n"),
		"same place":     head + "fasteners:\n" + repeat(10_000, "- {id: A%d, at: [0, 0]}\n"),
		"same id":        head + "fasteners:\n" + same("- {id: A, at: [0, 0]}\n", 10_000),
		"grids":          head + "fasteners:\n" + same("- grid: {columns: 100, rows: 100, pitch: 9, id: A}\n", 50_000),
		"unknown ids":    head + "fasteners:\n" + repeat(900, "- {id: A%d, at: [%[1]d, 0]}\n") + "tighten: {stages: [{torque: 1 N·m}], order: [" + repeat(100_000, "B%d, ") + "]}\n",
		"stages":         head + "fasteners: [{id: A, at: [0, 0]}]\ntighten:\n  stages:\n" + same("  - {torque: 1 N·m}\n", 200_000),
		"aliased list":   head + "outline: [&p [" + same("[1, 2], ", 50_000) + "]" + same(", *p", 50_000) + "]\n",
		"comments":       same("# c\n", 500_000) + head,
		"one long line":  head + "fasteners: [" + repeat(100_000, "{idd: A%d}, ") + "]\n",
		"syntax at end":  head + repeat(100_000, "key%d: 1\n") + "x: ]\n",
		"quotes":         head + "view: \"" + same("a\n", 500_000),
		"joined keys":    head + "extends: p4-head\nkinds:\n" + repeat(100_000, "  k%d: {thread: M8}\n"),
		"deep and joint": head + "extends: p4-head\nkinds: {main: {friction: " + same("{thread: ", 5_000) + same("}", 5_000) + "}}\n",
	}
}

func TestHostileFiles(t *testing.T) {
	for name, text := range hostile(testkit.Samples(40, 1)) {
		t.Run(name, func(t *testing.T) {
			_, problems := readText(text)
			if !problems.Stops() {
				t.Error("no problem")
			}
			checkPlaces(t, text, problems)
		})
	}
}

// The result of a text takes at most a kilobyte for each separator, and nothing
// is made of a text with more separators than any joint needs.
func TestManySignsTakeNoMemory(t *testing.T) {
	const head = "drawdown: 1\ntitle: Lid\na: ["
	for name, entry := range map[string]string{"maps": "a: b,", "texts": `"",`, "lists": "[],", "aliases": "*a,", "words": "a,"} {
		for _, n := range []int{testkit.Samples(20_000, 100_000), 2_000_000} {
			text := head + strings.Repeat(entry, n) + "a]\n"
			made := allocated(func() {
				if _, problems := readText(text); !problems.Stops() {
					t.Errorf("%d %s: no problem", n, name)
				}
			})
			if made > 600<<20 {
				t.Errorf("%d %s: %d MB are made of %d kB", n, name, made>>20, len(text)>>10)
			}
		}
	}
}

// allocated returns the total memory that a function allocates, freed or not.
func allocated(work func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	work()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// BenchmarkSpeedLimit: a hostile file may take ten times as long as one of a
// tenth of its size, and twice that to allow for noise and memory; quadratic
// work takes a hundred times as long.
func BenchmarkSpeedLimit(b *testing.B) {
	const most = 20
	const least = 5 * time.Millisecond // a shorter time is no evidence
	small, large := hostile(10), hostile(1)
	for name := range large {
		tenth, whole, ratio := time.Hour, time.Hour, 1e9
		for round := 0; round < 5 && (round < 1 || ratio > most); round++ {
			tenth = min(tenth, stopwatch.Worked(func() { readText(small[name]) }))
			whole = min(whole, stopwatch.Worked(func() { readText(large[name]) }))
			ratio = float64(whole) / float64(max(tenth, least))
		}
		b.Logf("%s: %v for a tenth, %v for %.1f MB", name, tenth, whole, float64(len(large[name]))/1e6)
		if ratio > most {
			b.Errorf("%s: %.1f times as long as a tenth of it: at most %d is allowed", name, ratio, most)
		}
	}
}

func TestTooManyOutlinePoints(t *testing.T) {
	const head = "drawdown: 1\ntitle: Lid\nfasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [{torque: 5 N·m}]}\n"
	for count, want := range map[int]int{form.MostOutlinePoints: 0, form.MostOutlinePoints + 1: 1} {
		_, problems := readText(head + "outline: [[-9, -9], [9, -9], [9, 9], " + strings.Repeat("[-9, 9], ", count-3) + "]\n")
		if len(problems) != want || want == 1 && said(problems)[0].What != "the outline has too many points" {
			t.Errorf("%d points: %v", count, problems)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	for _, count := range []int{100, 1_000, 10_000} {
		var text strings.Builder
		text.WriteString("drawdown: 1\ntitle: Lid\nfasteners:\n")
		for i := range count {
			fmt.Fprintf(&text, "- {id: A%d, at: [%d, %d]}\n", i, 7*(i%100), 7*(i/100))
		}
		text.WriteString("tighten: {stages: [{torque: 20 N·m}]}\n")
		b.Run(fmt.Sprintf("fasteners=%d", count), func(b *testing.B) {
			for b.Loop() {
				if _, problems := readText(text.String()); len(problems) > 0 {
					b.Fatal(problems)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(count), "ns/fastener")
		})
	}
}
