package scene_test

import (
	"math"
	"testing"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
)

// First principles: an enlarged page keeps its layout, and everything grows by
// the same factor.
func TestScaled(t *testing.T) {
	tag := scene.Tag{Name: "M1", Role: scene.Mark}
	word := func(x, y float64, content string, tag scene.Tag) scene.Text {
		return font.Set(scene.Text{At: scene.Point{X: x, Y: y}, Size: 3, Ink: scene.Black, Content: content, Tag: tag})
	}
	page := scene.Page{Name: "test", Width: 100, Height: 100, Margin: 10, Items: []scene.Item{
		scene.Shape{Path: scene.Circle(50, 50, 4), Fill: scene.White, Stroke: scene.Black, Width: 0.3, Tag: tag}, word(49, 51, "1", scene.Tag{Name: "M1", Role: scene.Number}), word(20, 20, "first", scene.Tag{}),
	}}
	big := scene.Scaled(page, 200, 200, 2)
	if faults := scenetest.CheckLayout(big); len(faults) > 0 {
		t.Error(faults)
	}
	small, large := page.Items[2].(scene.Text), big.Items[2].(scene.Text)
	if math.Abs(large.Width-2*small.Width) > 1e-9 || large.Size != 2*small.Size || large.At != (scene.Point{X: 40, Y: 40}) {
		t.Errorf("%+v became %+v", small, large)
	}
	before, after := page.Items[0].(scene.Shape), big.Items[0].(scene.Shape)
	if b, a := before.Path.Bounds(), after.Path.Bounds(); a.Width() != 2*b.Width() || after.Width != 2*before.Width {
		t.Errorf("a mark of %v became one of %v", b, a)
	}
	if page.Items[0].(scene.Shape).Path.Bounds().Width() != 8 {
		t.Error("the page itself was changed")
	}
}
