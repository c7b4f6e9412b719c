package forecast

import (
	"testing"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// A number half way between two marks belongs to neither; one close to its own
// mark is clear, whatever is beyond.
func TestToldApart(t *testing.T) {
	t.Parallel()
	mark := func(name string, x float64) scene.Item {
		return scene.Shape{Path: scene.Circle(x, 20, 4), Tag: scene.Tag{Name: name, Role: scene.Mark, Core: true}}
	}
	number := func(x float64) scene.Item {
		return font.Set(scene.Text{At: scene.Point{X: x, Y: 21}, Size: 3, Anchor: scene.Middle, Content: "7", Tag: scene.Tag{Name: "A", Role: scene.Number}})
	}
	for _, c := range []struct {
		x    float64
		want bool
	}{{15.5, true}, {18, false}, {20, false}, {25, false}} {
		items := []scene.Item{mark("A", 10), mark("B", 26), number(c.x)}
		if got := toldApart(items, []string{"7"}); got != c.want {
			t.Errorf("a number at %g between marks at 10 and 26: told apart %v, want %v", c.x, got, c.want)
		}
	}
}
