package patterns

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry"
)

// The grid must find what comparing every pair finds (first principles).
func TestCoincidenceIsFoundAsByEveryPair(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.Custom(func(t *rapid.T) float64 { return float64(rapid.IntRange(-40, 40).Draw(t, "tenth")) / 10 })
		points := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) geometry.Point {
			return geometry.Point{X: coordinate.Draw(t, "x"), Y: coordinate.Draw(t, "y")}
		}), 1, 12).Draw(t, "points")
		var text strings.Builder
		text.WriteString("drawdown: 1\ntitle: Lid\ntighten: {stages: [{torque: 5 N·m}]}\nfasteners:\n")
		for i, p := range points {
			fmt.Fprintf(&text, "- {id: A%d, at: [%g, %g]}\n", i, p.X, p.Y)
		}
		near := false
		for i, p := range points {
			for _, q := range points[:i] {
				near = near || p.Distance(q) < 0.5
			}
		}
		_, problems := readText(text.String())
		if problems.Stops() != near {
			t.Fatalf("near: %v, problems: %v\n%s", near, problems, text.String())
		}
	})
}

// A generator and its places written out one by one are the same joint.
func TestGeneratorsEqualTheirPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns, rows := rapid.IntRange(2, 9).Draw(t, "columns"), rapid.IntRange(1, 7).Draw(t, "rows")
		x, y := rapid.IntRange(-500, 500).Draw(t, "x"), rapid.IntRange(-500, 500).Draw(t, "y")
		entry := rapid.SampledFrom([]string{
			fmt.Sprintf("grid: {columns: %d, rows: %d, pitch: [31, 17], centre: [%d, %d], id: A}", columns, rows, x, y),
			fmt.Sprintf("row: {count: %d, pitch: 31, from: [%d, %d], angle: %d°, id: A}", columns, x, y, 10*rows),
			fmt.Sprintf("circle: {count: %d, diameter: 400, centre: [%d, %d], first: %d°, turn: left, id: A}", columns, x, y, 7*rows),
			fmt.Sprintf("rectangle: {columns: %d, rows: %d, size: [300, 170], centre: [%d, %d], id: A}", columns, rows, x, y),
		}).Draw(t, "entry")
		const head, tail = "drawdown: 1\ntitle: Lid\nfasteners:\n", "tighten: {stages: [{torque: 5 N·m}]}\n"
		short, problems := readText(head + "- " + entry + "\n" + tail)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		var text strings.Builder
		for _, f := range short.Joint.Fasteners {
			fmt.Fprintf(&text, "- {id: %s, at: [%v, %v]}\n", f.ID, f.At.X, f.At.Y)
		}
		long, problems := readText(head + text.String() + tail)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		if a, b := fmt.Sprint(short.Joint), fmt.Sprint(long.Joint); a != b {
			t.Fatalf("%s\n%s\n%s", entry, a, b)
		}
	})
}
