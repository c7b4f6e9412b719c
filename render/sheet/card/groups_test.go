package card_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
)

// threeKinds is a part with three kinds with long names, one of them a single
// bolt.
const threeKinds = `drawdown: 1
title: Part of three kinds
kinds:
  cover bolts with a long name, upper: {thread: M12}
  cover bolts with a long name, lower: {thread: M10}
  cover bolts with a long name, last: {thread: M6}
fasteners:
  - {grid: {columns: 4, rows: 2, pitch: [95, 90], centre: [0, 0], kind: "cover bolts with a long name, upper", id: M}}
  - {row: {count: 4, pitch: 95, from: [-142.5, -90], angle: 0°, kind: "cover bolts with a long name, lower", id: F}}
  - {id: C1, at: [-142.5, 90], kind: "cover bolts with a long name, last"}
tighten:
  stages:
    - {of: ["cover bolts with a long name, upper"], torque: 30 N·m}
    - {of: ["cover bolts with a long name, upper"], torque: 60 N·m}
    - {of: ["cover bolts with a long name, upper"], angle: 90°}
    - {of: ["cover bolts with a long name, lower"], torque: 45 N·m}
    - {of: ["cover bolts with a long name, last"], torque: 9 N·m}
  source: works manual
`

// First principles: names shortened to the same beginning cannot be told apart.
// A stage without room for the names of its kinds shows the shapes of their
// marks with the numbers. A single number is not a range.
func TestStagesOfLongKinds(t *testing.T) {
	t.Parallel()
	p := planOf(t, threeKinds)
	for n, tag := range words.Languages() {
		for _, paper := range sheettest.InTurn(n, 4) {
			document, _ := card.Document(p, card.TightenSide, sheet.Request{Paper: paper, Words: sheettest.Language(t, tag)})
			seen := map[string]int{}
			for _, page := range document.Pages {
				for _, fault := range scenetest.CheckLayout(page) {
					t.Errorf("%s on %s, %g wide: %s", tag, paper.Name, paper.Width, fault)
				}
				for _, it := range page.Items {
					text, ok := it.(scene.Text)
					if !ok || text.Anchor != scene.End || text.Ink != scene.Black {
						continue
					}
					at := strings.LastIndex(text.Content, " ")
					seen[text.Content[at+1:]]++
					if strings.Contains(text.Content, "…") {
						t.Errorf("%s on %s, %g wide: %q is cut", tag, paper.Name, paper.Width, text.Content)
					}
					if at < 0 && !shapeBefore(page, text) {
						t.Errorf("%s on %s, %g wide: %q has no shape before it", tag, paper.Name, paper.Width, text.Content)
					}
				}
			}
			if seen["1–8"] != 3 || seen["9–12"] != 1 || seen["13"] != 1 {
				t.Errorf("%s on %s, %g wide: the stages are for %v", tag, paper.Name, paper.Width, seen)
			}
		}
	}
}

// shapeBefore reports whether a small outline is to the left of a text.
func shapeBefore(page scene.Page, text scene.Text) bool {
	box := text.Box()
	for _, it := range page.Items {
		if s, ok := it.(scene.Shape); ok && s.Fill == scene.White {
			if b := s.Path.Bounds(); b.Width() < 8 && b.Right <= box.Left && box.Left-b.Right < 3 && b.Top < box.Bottom && b.Bottom > box.Top {
				return true
			}
		}
	}
	return false
}

// Arrows join all numbers of a sheet or none, on each of its pages, and the
// caption matches. No two cross or merge.
func TestArrowsJoinAllOrNone(t *testing.T) {
	t.Parallel()
	w := words.English().Card.Part
	for n, name := range append(patterns.Builtin(), threeKinds, strip) {
		p := planOf(t, name)
		for _, paper := range sheettest.InTurn(n, 8) {
			for _, side := range []card.Sides{card.TightenSide, card.LoosenSide} {
				document, _ := card.Document(p, side, sheettest.English(paper))
				for _, page := range document.Pages {
					arrows, captions := arrowLines(page), captionsOf(page, w.Arrows, w.Numbers)
					if want := len(p.Joint.Fasteners) - 1; len(captions) > 0 && len(arrows) != 0 && len(arrows) != want {
						t.Errorf("%s, %s on %s: %d arrows for %d steps", p.Title, page.Name, paper.Name, len(arrows), want)
					}
					if len(captions) > 0 && (len(arrows) > 0) != slices.Contains(captions, w.Arrows) {
						t.Errorf("%s, %s on %s: %d arrows under %q", p.Title, page.Name, paper.Name, len(arrows), captions)
					}
					for i, a := range arrows {
						for _, b := range arrows[:i] {
							if crossOver(a, b) || nearest(a, b) < 0.6 {
								t.Errorf("%s, %s on %s: arrows from %.0f and %.0f meet", p.Title, page.Name, paper.Name, a[0], b[0])
							}
						}
					}
				}
			}
		}
	}
}

// strip is a part with room for arrows.
const strip = "drawdown: 1\ntitle: Strip\nkinds: {bolt: {thread: M8}}\nfasteners: [{row: {count: 4, pitch: 80, kind: bolt, id: B}}]\n" +
	"outline: [[-150, 60], [150, 60], [150, -60], [-150, -60]]\ntighten: {stages: [{torque: 20 N·m}], source: manual}\n"

// captionsOf returns which of the given sentences a page contains.
func captionsOf(page scene.Page, sentences ...string) []string {
	all := ""
	for _, it := range page.Items {
		if text, ok := it.(scene.Text); ok {
			all += text.Content + " "
		}
	}
	return slices.DeleteFunc(sentences, func(s string) bool { return !strings.Contains(all, s) })
}

// arrowLines returns the flattened lines of the arrows.
func arrowLines(page scene.Page) [][]scene.Point {
	var lines [][]scene.Point
	for _, it := range page.Items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Trail && s.Stroke == scene.Accent {
			lines = append(lines, s.Path.Flatten()[0])
		}
	}
	return lines
}

func crossOver(a, b []scene.Point) bool {
	side := func(p, q, r scene.Point) bool { return (q.X-p.X)*(r.Y-p.Y)-(q.Y-p.Y)*(r.X-p.X) > 0 }
	for i := 1; i < len(a); i++ {
		for k := 1; k < len(b); k++ {
			if side(a[i-1], a[i], b[k-1]) != side(a[i-1], a[i], b[k]) && side(b[k-1], b[k], a[i-1]) != side(b[k-1], b[k], a[i]) {
				return true
			}
		}
	}
	return false
}

func nearest(a, b []scene.Point) float64 {
	least := math.Inf(1)
	for _, p := range a {
		for _, q := range b {
			least = math.Min(least, math.Hypot(p.X-q.X, p.Y-q.Y))
		}
	}
	return least
}
