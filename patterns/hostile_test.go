package patterns

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/render/stopwatch"
)

// checkPlaces makes sure that every problem lies within the text.
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

// Files that are made to hang or to eat the memory. The limit, in the
// processor's time, is generous: the reader takes well under a second, or a few
// for the largest ones; anything that grows with the square takes minutes.
func TestHostileFilesEndSoon(t *testing.T) {
	limit := 10 * time.Second
	if stopwatch.Raced {
		limit *= 10
	}
	const head = "drawdown: 1\ntitle: Lid\n"
	repeat := func(n int, format string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, format, i)
		}
		return b.String()
	}
	for name, text := range map[string]string{
		"brackets":       head + "outline: " + strings.Repeat("[", 9_000) + strings.Repeat("]", 9_000) + "\n",
		"open brackets":  head + "outline: " + strings.Repeat("[", 1_000_000) + "\n",
		"deep blocks":    head + strings.Repeat("- ", 9_000) + "\n",
		"unknown keys":   head + repeat(300_000, "key%d: 1\n"),
		"same key":       head + strings.Repeat("view: x\n", 300_000),
		"kinds":          head + "kinds:\n" + repeat(200_000, "  k%d: {thread: M8}\n"),
		"same place":     head + "fasteners:\n" + repeat(10_000, "- {id: A%d, at: [0, 0]}\n"),
		"same id":        head + "fasteners:\n" + strings.Repeat("- {id: A, at: [0, 0]}\n", 10_000),
		"grids":          head + "fasteners:\n" + strings.Repeat("- grid: {columns: 100, rows: 100, pitch: 9, id: A}\n", 50_000),
		"unknown ids":    head + "fasteners:\n" + repeat(900, "- {id: A%d, at: [%[1]d, 0]}\n") + "tighten: {stages: [{torque: 1 N·m}], order: [" + repeat(100_000, "B%d, ") + "]}\n",
		"stages":         head + "fasteners: [{id: A, at: [0, 0]}]\ntighten:\n  stages:\n" + strings.Repeat("  - {torque: 1 N·m}\n", 200_000),
		"aliased list":   head + "outline: [&p [" + strings.Repeat("[1, 2], ", 50_000) + "]" + strings.Repeat(", *p", 50_000) + "]\n",
		"comments":       strings.Repeat("# c\n", 500_000) + head,
		"one long line":  head + "fasteners: [" + repeat(100_000, "{idd: A%d}, ") + "]\n",
		"syntax at end":  head + repeat(100_000, "key%d: 1\n") + "x: ]\n",
		"quotes":         head + "view: \"" + strings.Repeat("a\n", 500_000),
		"joined keys":    head + "extends: p4-head\nkinds:\n" + repeat(100_000, "  k%d: {thread: M8}\n"),
		"deep and joint": head + "extends: p4-head\nkinds: {main: {friction: " + strings.Repeat("{thread: ", 5_000) + strings.Repeat("}", 5_000) + "}}\n",
	} {
		t.Run(name, func(t *testing.T) {
			var problems problem.List
			took := stopwatch.Worked(func() { _, problems = readText(text) })
			t.Logf("%.1f MB in %v, %d problems", float64(len(text))/1e6, took.Round(time.Millisecond), len(problems))
			if took > limit {
				t.Errorf("took %v", took)
			}
			if !problems.Stops() {
				t.Error("no problem")
			}
			checkPlaces(t, text, problems)
		})
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
