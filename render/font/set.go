package font

import (
	"math"

	"drawdown/render/scene"
)

// Set cleans and measures a line, and rounds its place and size as every
// backend can hold them. The caller fills in all but Width.
func Set(t scene.Text) scene.Text {
	t.Content = Clean(t.Content)
	t.Size = math.Round(t.Size*100) / 100
	t.Width = Width(t.Content, t.Weight, t.Size)
	t.At = scene.Point{X: scene.Rounded(t.At.X), Y: scene.Rounded(t.At.Y)}
	return t
}
