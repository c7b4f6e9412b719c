package forecast

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// clearlyNearer is by how much a number must stand nearer to its own mark than
// to any other for nobody to take it for that of a neighbour, in millimetres.
const clearlyNearer = 1.5

func toldApart(items []scene.Item, beside []string) bool {
	marks := map[string]scene.Box{}
	for _, it := range items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark && s.Tag.Core {
			marks[s.Tag.Name] = s.Path.Bounds()
		}
	}
	for _, it := range items {
		text, ok := it.(scene.Text)
		own, marked := marks[text.Tag.Name]
		if !ok || !marked || text.Tag.Core || !slices.Contains(beside, text.Content) {
			continue
		}
		near := gap(text.Box(), own)
		for name, mark := range marks {
			if name != text.Tag.Name && gap(text.Box(), mark) < near+clearlyNearer {
				return false
			}
		}
	}
	return true
}

// gap is the distance of a text from the round mark that a box holds.
func gap(text, mark scene.Box) float64 {
	c := mark.Centre()
	x := math.Max(0, math.Max(text.Left-c.X, c.X-text.Right))
	y := math.Max(0, math.Max(text.Top-c.Y, c.Y-text.Bottom))
	return math.Hypot(x, y) - mark.Width()/2
}

// slack is what a drawing leaves empty of its box above and below.
func slack(items []scene.Item, box scene.Box) float64 {
	b := scene.Bounds(items)
	return math.Max(0, box.Height()-(max(b.Bottom, box.Top)-min(b.Top, box.Bottom)))
}
