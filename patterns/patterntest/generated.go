package patterntest

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/patterns"
)

// Generated writes the file of a generated pattern, from a seed: grids,
// circles, perimeters, rows, scattered ones whose heads may overlap; one to
// three kinds; with or without outline, cluster and stations; long words; up to
// eight stages.
func Generated(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 3))
	var b strings.Builder
	fmt.Fprintf(&b, "drawdown: 1\ntitle: %s\nmachine: Fernhollow P4 pump engine\nrevision: 7\ndate: 2026-05-0%d\nview: from above\n",
		strings.Repeat("Long title of a part ", 1+r.IntN(4)), 1+r.IntN(9))
	kinds := []string{"main", "side", "outermost"}[:1+r.IntN(3)]
	forms := []string{"", ", head: socket", ", head: flange", ", head: 17 mm", ", washer: 30 mm", ", hole: 14 mm"}
	b.WriteString("kinds:\n")
	for k, name := range kinds {
		fmt.Fprintf(&b, "  %s: {thread: M%d, class: \"8.8\", lubricant: engine oil, reuse: inspect%s}\n", name, 12-2*k, forms[r.IntN(len(forms))])
	}
	b.WriteString("fasteners:\n")
	writeFasteners(&b, r, int(seed)%6)
	for k, name := range kinds[1:] {
		fmt.Fprintf(&b, "  - row: {count: %d, pitch: 60, from: [-150, %d], angle: 0°, kind: %s, id: %c}\n", 2+r.IntN(4), -400-80*k, name, 'S'+k)
	}
	if seed%3 == 1 {
		b.WriteString("clusters: [{name: cap 1, of: [M1, M2]}]\n")
	}
	if r.IntN(2) == 0 {
		b.WriteString("outline: [[-300, 320], [420, 320], [420, -600], [-300, -600]]\n")
	}
	if r.IntN(2) == 0 {
		b.WriteString("stations: [{id: T1, at: [20, -60], label: in 1}, {id: T2, at: [40, -60]}]\n")
	}
	bore := freePlace(b.String())
	fmt.Fprintf(&b, "features:\n  - {front: %s}\n  - {label: EXHAUST SIDE, at: [0, -30]}\n%s",
		[]string{"left", "right", "top", "bottom"}[r.IntN(4)], bore)
	writeStages(&b, r, kinds)
	b.WriteString("cautions: [Timing pin in before anything turns]\n")
	return b.String()
}

// freePlace writes a bore clear of all fasteners, near the middle; nothing if
// there is no such place.
func freePlace(text string) string {
	const diameter, clear = 40, 30.0
	input, _ := patterns.Read(patterns.FromBytes("generated.yaml", []byte(text)))
	for step := range 20 {
		centre := geometry.Point{X: 20 + 7*float64(step), Y: 30 + 3*float64(step)}
		if !slices.ContainsFunc(input.Joint.Points(), func(p geometry.Point) bool { return p.Distance(centre) < clear }) {
			return fmt.Sprintf("  - {bore: [%g, %g], diameter: %d, label: bore}\n", centre.X, centre.Y, diameter)
		}
	}
	return ""
}

// writeFasteners writes the main kind, in a layout of one of six families, the
// last two of which are scattered.
func writeFasteners(b *strings.Builder, r *rand.Rand, family int) {
	switch family {
	case 0:
		fmt.Fprintf(b, "  - grid: {columns: %d, rows: %d, pitch: [%d, %d], kind: main, id: M}\n", 2+r.IntN(9), 1+r.IntN(5), 30+r.IntN(80), 30+r.IntN(80))
	case 1:
		fmt.Fprintf(b, "  - circle: {count: %d, diameter: 400, kind: main, id: M}\n", 3+r.IntN(40))
	case 2:
		fmt.Fprintf(b, "  - rectangle: {columns: %d, rows: %d, size: [400, 300], kind: main, id: M}\n", 2+r.IntN(10), r.IntN(8))
	case 3:
		fmt.Fprintf(b, "  - row: {count: %d, pitch: 30, from: [0, 0], angle: %d°, kind: main, id: M}\n", 3+r.IntN(40), 30*r.IntN(4))
	default:
		apart := []int{40, 70}[family-4]
		for n := range 3 + r.IntN(30) {
			fmt.Fprintf(b, "  - {id: M%d, at: [%d, %d], kind: main}\n", n, n%6*apart+r.IntN(min(40, apart-14)), n/6*apart+r.IntN(min(40, apart-14)))
		}
	}
}

func writeStages(b *strings.Builder, r *rand.Rand, kinds []string) {
	b.WriteString("tighten:\n  stages:\n")
	for n := range 1 + r.IntN(5) {
		fmt.Fprintf(b, "    - {of: [main], torque: %d N·m, note: a note that runs on for a while}\n", 20+20*n)
	}
	b.WriteString("    - {of: [main], angle: 90°}\n    - {wait: 10 min}\n    - {of: [main], torque: 200 N·m, way: circular}\n")
	for _, name := range kinds[1:] {
		fmt.Fprintf(b, "    - {of: [%s], torque: 24 lbf·ft}\n", name)
	}
	b.WriteString("  source: works manual 4.2\n")
}
