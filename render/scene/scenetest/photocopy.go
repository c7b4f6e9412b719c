package scenetest

import (
	"fmt"

	"drawdown/render/scene"
)

// CheckPhotocopy returns what a black-and-white copy of a page loses: type that
// merges with what is under it, lines that vanish. Tints may vanish, so nothing
// may depend on one without an outline.
func CheckPhotocopy(page scene.Page) []string {
	var faults []string
	var under []ground
	var written []scene.Text
	for _, it := range page.Items {
		switch it := it.(type) {
		case scene.Shape:
			if it.Stroke != scene.None && it.Width > 0 {
				faults = append(faults, lostLine(it)...)
			}
			if it.Fill != scene.None {
				faults = append(faults, covered(it, written)...)
				under = append(under, ground{it.Path.Bounds(), it.Path.Flatten(), dark(it.Fill)})
			}
		case scene.Text:
			written = append(written, it)
			for _, at := range spots(it.Box()) {
				if dark(it.Ink) == darkAt(under, at) {
					faults = append(faults, fmt.Sprintf("page %s: %q sinks into what lies under it at %.1f,%.1f", page.Name, it.Content, at.X, at.Y))
					break
				}
			}
		}
	}
	return faults
}

func covered(s scene.Shape, written []scene.Text) []string {
	var faults []string
	around := s.Path.Bounds()
	for _, t := range written {
		at := t.Box().Centre()
		if around.Contains(at) && encloses(s.Path.Flatten(), at) {
			faults = append(faults, fmt.Sprintf("%q is painted over at %.1f,%.1f", t.Content, at.X, at.Y))
		}
	}
	return faults
}

type ground struct {
	around scene.Box
	runs   [][]scene.Point
	dark   bool
}

func darkAt(under []ground, at scene.Point) bool {
	for k := len(under) - 1; k >= 0; k-- {
		g := under[k]
		if g.around.Contains(at) && encloses(g.runs, at) {
			return g.dark
		}
	}
	return false
}

func spots(b scene.Box) []scene.Point {
	c := b.Centre()
	x, y := b.Width()*0.45, b.Height()*0.45
	return []scene.Point{c, {X: c.X - x, Y: c.Y - y}, {X: c.X + x, Y: c.Y - y}, {X: c.X - x, Y: c.Y + y}, {X: c.X + x, Y: c.Y + y}}
}

// leastLine is the thinnest line, in millimetres, that a copier keeps (common
// practice, no source: 0.18 mm is the thinnest of technical drawings).
const leastLine = 0.18

func lostLine(s scene.Shape) []string {
	b := s.Path.Bounds()
	switch {
	case s.Stroke == scene.Shade || s.Stroke == scene.Tint:
		return []string{fmt.Sprintf("a tinted line vanishes at %.1f,%.1f", b.Left, b.Top)}
	case s.Width < leastLine:
		return []string{fmt.Sprintf("a line of %g mm vanishes at %.1f,%.1f", s.Width, b.Left, b.Top)}
	}
	return nil
}

// dark reports whether a copier makes the ink black: if it is darker than half
// (luminance by ITU-R BT.601).
func dark(k scene.Ink) bool {
	r, g, b := k.RGB()
	return 299*int(r)+587*int(g)+114*int(b) < 1000*128
}
