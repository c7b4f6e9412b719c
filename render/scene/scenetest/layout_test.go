package scenetest_test

import (
	"strings"
	"testing"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
)

func words(x, y float64, content string, tag scene.Tag) scene.Text {
	return font.Set(scene.Text{At: scene.Point{X: x, Y: y}, Size: 3, Ink: scene.Black, Content: content, Tag: tag})
}

func mark(x, y float64, name string) scene.Shape {
	return scene.Shape{Path: scene.Circle(x, y, 4), Fill: scene.White, Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Name: name, Role: scene.Mark}}
}

func inked(s scene.Shape, fill scene.Ink, width float64) scene.Shape {
	s.Fill, s.Width = fill, width
	return s
}

func tinted(s scene.Shape) scene.Shape { return inked(s, scene.Shade, s.Width) }

func spot(x, y float64, name string) scene.Shape {
	return scene.Shape{Path: scene.Circle(x, y, 4), Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Name: name, Role: scene.Spot}}
}

// cut is a spot of which the paper leaves two lines above and below.
func cut(left, right, top, bottom float64, name string) scene.Shape {
	var p scene.Path
	p.Stroke(left, top, right, top)
	p.Stroke(left, bottom, right, bottom)
	return scene.Shape{Path: p, Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Name: name, Role: scene.Spot}}
}

// corner is a spot of which the paper leaves its lower right quarter.
func corner(left, top, right, bottom float64, name string) scene.Shape {
	var p scene.Path
	p.MoveTo(left, bottom)
	p.LineTo((left+right)/2, bottom-2)
	p.LineTo(right, (top+bottom)/2)
	p.LineTo(right, top)
	return scene.Shape{Path: p, Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Name: name, Role: scene.Spot}}
}

func edge(role scene.Role, x, y, radius float64) scene.Shape {
	return scene.Shape{Path: scene.Circle(x, y, radius), Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Role: role}}
}

func collar(x, y float64) scene.Shape {
	return scene.Shape{Path: scene.Circle(x, y, 4.7), Fill: scene.White}
}

func trail(name string, points ...scene.Point) scene.Shape {
	return scene.Shape{Path: scene.Polyline(points, false), Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Name: name, Role: scene.Trail}}
}

func sized(t scene.Text, em float64) scene.Text {
	t.Size, t.Width = em, t.Width*em/t.Size
	return t
}

func level(from, to, y float64) scene.Shape {
	return scene.Shape{Path: scene.Polyline([]scene.Point{{X: from, Y: y}, {X: to, Y: y}}, false), Stroke: scene.Black, Width: 0.25}
}

func boxes(from, width float64, count int) (row []scene.Item) {
	for k := range count {
		row = append(row, scene.Shape{Path: scene.Rect(from+float64(k)*width, 50, width, 10, 0), Stroke: scene.Black, Width: 0.25})
	}
	return row
}

// Every kind of fault is found, and what looks alike but is sound is not.
func TestCheckLayout(t *testing.T) {
	t.Parallel()
	number := scene.Tag{Name: "M1", Role: scene.Number}
	label := scene.Tag{Name: "T1", Role: scene.Label}
	tests := []struct {
		name  string
		items []scene.Item
		want  string // empty: sound
	}{
		{"lines of a paragraph", []scene.Item{words(20, 20, "first", scene.Tag{}), words(20, 24, "second", scene.Tag{})}, ""},
		{"open and tinted mark", []scene.Item{mark(50, 50, "M1"), tinted(mark(70, 50, "M2"))}, "differs from one alike only in tone: shade, not white"},
		{"open and black mark", []scene.Item{mark(50, 50, "M1"), inked(mark(70, 50, "M2"), scene.Black, 0.3)}, ""},
		{"tinted mark with a thick edge", []scene.Item{mark(50, 50, "M1"), inked(mark(70, 50, "M2"), scene.Shade, 0.9)}, ""},
		{"tinted mark with a word in it", []scene.Item{mark(50, 50, "M1"), tinted(mark(70, 50, "M2")), words(69, 51, "low", scene.Tag{Name: "M2"})}, ""},
		{"words in open and tinted mark", []scene.Item{mark(50, 50, "M1"), words(49, 51, "92", scene.Tag{Name: "M1"}), tinted(mark(70, 50, "M2")), words(69, 51, "85", scene.Tag{Name: "M2"})}, "only in tone"},
		{"line in grey", []scene.Item{func() scene.Item {
			text := words(20, 20, "first", scene.Tag{})
			text.Ink = scene.Grey
			return text
		}()}, `"first" is in grey`},
		{"line over line", []scene.Item{words(20, 20, "first", scene.Tag{}), words(22, 21, "second", scene.Tag{})}, `"first" meets "second"`},
		{"line in the margin", []scene.Item{words(8, 20, "first", scene.Tag{})}, "reaches into the margin"},
		{"line past the margin", []scene.Item{words(85, 20, "a long line", scene.Tag{})}, "reaches into the margin"},
		{"upward line in the margin", []scene.Item{func() scene.Item {
			text := words(20, 14, "upward", scene.Tag{})
			text.Upward = true
			return text
		}()}, "reaches into the margin"},
		{"shape past the page", []scene.Item{mark(98, 50, "M1")}, "a shape M1 reaches into the margin"},
		{"number in its mark", []scene.Item{mark(50, 50, "M1"), words(49, 51, "1", number)}, ""},
		{"number beside its mark", []scene.Item{mark(50, 50, "M1"), words(55, 51, "1", number)}, ""},
		{"number far from its mark", []scene.Item{mark(50, 50, "M1"), words(60, 51, "1", number)}, "lies away from its mark M1"},
		{"number led to its mark", []scene.Item{mark(50, 50, "M1"), words(60, 51, "1", number), trail("M1", scene.Point{X: 54, Y: 50}, scene.Point{X: 59, Y: 50})}, ""},
		{"number that a leader does not reach", []scene.Item{mark(50, 50, "M1"), words(62, 51, "1", number), trail("M1", scene.Point{X: 54, Y: 50}, scene.Point{X: 59, Y: 50})}, "lies away from its mark M1"},
		{"leader that does not reach its mark", []scene.Item{mark(50, 50, "M1"), words(60, 51, "1", number), trail("M1", scene.Point{X: 56, Y: 50}, scene.Point{X: 59, Y: 50})}, "lies away from its mark M1"},
		{"number nearer to a foreign mark", []scene.Item{mark(50, 50, "M1"), mark(61, 50, "M2"), words(55.2, 51, "1", number)}, `number "1" of M1 lies nearer to M2`},
		{"number nearer to its own mark", []scene.Item{mark(50, 50, "M1"), mark(61, 50, "M2"), words(54.5, 51, "1", number)}, ""},
		{"number led past a nearer mark", []scene.Item{mark(50, 50, "M1"), mark(62.5, 38, "M2"), words(60, 46, "1", number), trail("M1", scene.Point{X: 53.8, Y: 48.5}, scene.Point{X: 59, Y: 45.5})}, ""},
		{"leader through a foreign mark", []scene.Item{mark(50, 50, "M1"), mark(60, 52, "M2"), trail("M1", scene.Point{X: 54, Y: 50}, scene.Point{X: 70, Y: 50})}, "the trail M1 meets the mark M2"},
		{"leader into a foreign mark", []scene.Item{mark(60, 52, "M2"), mark(50, 50, "M1"), trail("M1", scene.Point{X: 54, Y: 50}, scene.Point{X: 58, Y: 51})}, "the trail M1 meets the mark M2"},
		{"arrow through a mark", []scene.Item{mark(50, 50, "M1"), trail("", scene.Point{X: 40, Y: 50}, scene.Point{X: 70, Y: 50})}, "meets the mark M1"},
		{"leader past a foreign mark", []scene.Item{mark(60, 52, "M2"), trail("M1", scene.Point{X: 62, Y: 40}, scene.Point{X: 69, Y: 64})}, ""},
		{"leader from its own mark", []scene.Item{mark(50, 50, "M1"), trail("M1", scene.Point{X: 52, Y: 50}, scene.Point{X: 70, Y: 50})}, ""},
		{"leaders that cross", []scene.Item{trail("M1", scene.Point{X: 40, Y: 40}, scene.Point{X: 50, Y: 50}), trail("M2", scene.Point{X: 50, Y: 40}, scene.Point{X: 40, Y: 50})}, "the trail M2 meets the trail M1"},
		{"leaders on one line", []scene.Item{trail("M1", scene.Point{X: 40, Y: 40}, scene.Point{X: 50, Y: 40}), trail("M2", scene.Point{X: 45, Y: 40}, scene.Point{X: 60, Y: 40})}, "the trail M2 meets the trail M1"},
		{"leaders side by side", []scene.Item{trail("M1", scene.Point{X: 40, Y: 40}, scene.Point{X: 50, Y: 50}), trail("M2", scene.Point{X: 41, Y: 40}, scene.Point{X: 51, Y: 50})}, ""},
		{"leader across an arrow", []scene.Item{trail("M1", scene.Point{X: 40, Y: 40}, scene.Point{X: 50, Y: 50}), trail("", scene.Point{X: 50, Y: 40}, scene.Point{X: 40, Y: 50})}, "meets the trail M1"},
		{"arrows that cross", []scene.Item{trail("", scene.Point{X: 40, Y: 40}, scene.Point{X: 50, Y: 50}), trail("", scene.Point{X: 50, Y: 40}, scene.Point{X: 40, Y: 50})}, ""},
		{"number without a mark", []scene.Item{words(60, 51, "1", number)}, "has no mark"},
		{"number in a foreign mark", []scene.Item{mark(50, 50, "M1"), mark(52, 50, "M2"), words(49, 51, "1", number)}, `"1" meets the mark M2`},
		{"word inside a mark", []scene.Item{mark(50, 50, "M1"), words(49, 51, "x", scene.Tag{})}, `"x" meets the mark M1`},
		{"word across a trail", []scene.Item{trail("", scene.Point{X: 20, Y: 19}, scene.Point{X: 60, Y: 19}), words(30, 20, "word", scene.Tag{})}, `"word" meets the trail`},
		{"name under its spot", []scene.Item{spot(50, 50, "T1"), spot(70, 50, "T2"), words(48, 57, "in 1", label)}, ""},
		{"name in its spot", []scene.Item{spot(50, 50, "T1"), words(48, 51, "in 1", label)}, ""},
		{"name away from its spot", []scene.Item{spot(50, 50, "T1"), words(48, 68, "in 1", label)}, "mm from its T1"},
		{"large name away from its spot", []scene.Item{spot(50, 50, "T1"), sized(words(46, 66, "in 1", label), 5)}, ""},
		{"name without its spot", []scene.Item{spot(70, 50, "T2"), words(48, 57, "in 1", label)}, "mm from its T1"},
		{"name nearer to another spot", []scene.Item{spot(50, 50, "T1"), spot(63, 50, "T2"), words(56, 57, "in", label)}, `"in" of T1 stands nearer to T2`},
		{"name in another spot", []scene.Item{spot(50, 50, "T1"), spot(60, 50, "T2"), words(59, 51, "in", label)}, `"in" of T1 stands nearer to T2`},
		{"line across the page", []scene.Item{level(10, 90, 20)}, ""},
		{"line that ends short", []scene.Item{level(10, 88, 20)}, "a line ends 2.0 mm short of the margin"},
		{"line with a word behind it", []scene.Item{level(10, 80, 20), words(82, 20, "end", scene.Tag{})}, ""},
		{"line of a column", []scene.Item{level(10, 48, 20)}, ""},
		{"double line", []scene.Item{level(10, 90, 20), level(10, 90, 24)}, "a double line at 20.0 and 24.0"},
		{"lines with a word between them", []scene.Item{level(10, 90, 20), level(10, 90, 24), words(12, 23.4, "word", scene.Tag{})}, ""},
		{"lines to write on", []scene.Item{level(10, 90, 20), level(10, 90, 29)}, ""},
		{"row of boxes", boxes(10, 20, 4), ""},
		{"row of boxes that ends short", boxes(10, 19, 4), "a row of boxes ends 4.0 mm short of the margin"},
		{"row of boxes under a longer one", append(boxes(10, 16, 5), scene.Moved(boxes(10, 16, 4), scene.Point{Y: 30})...), ""},
		{"name in a spot that the paper cuts", []scene.Item{cut(30, 60, 40, 70, "T1"), words(48, 56, "in", label)}, ""},
		{"name beyond a spot that the paper cuts", []scene.Item{cut(30, 60, 40, 70, "T1"), words(68, 56, "in", label)}, "mm from its T1"},
		{"name in the corner of the paper that a spot fills", []scene.Item{corner(20, 20, 40, 70, "T1"), words(26, 40, "in", label)}, ""},
		{"name beyond the line of a spot in the corner", []scene.Item{corner(20, 20, 40, 70, "T1"), words(50, 72, "in", label)}, "mm from its T1"},
		{"word in the bow of an open trail", []scene.Item{trail("", scene.Point{X: 20, Y: 30}, scene.Point{X: 40, Y: 20}, scene.Point{X: 60, Y: 30}), words(38, 27, "x", scene.Tag{})}, ""},
		{"mark on an edge", []scene.Item{edge(scene.Edge, 50, 50, 20), mark(70, 50, "M1")}, "the mark M1 meets an edge"},
		{"mark close to an edge", []scene.Item{edge(scene.Edge, 50, 50, 20), mark(74.3, 50, "M1")}, "the mark M1 meets an edge"},
		{"mark off an edge", []scene.Item{edge(scene.Edge, 50, 50, 20), mark(75, 50, "M1")}, ""},
		{"mark with white about it on an edge", []scene.Item{edge(scene.Edge, 50, 50, 20), collar(70, 50), mark(70, 50, "M1")}, ""},
		{"edge over the white about a mark", []scene.Item{collar(70, 50), edge(scene.Edge, 50, 50, 20), mark(70, 50, "M1")}, "the mark M1 meets an edge"},
		{"number in a bore", []scene.Item{edge(scene.Hole, 40, 50, 10), mark(56, 50, "M1"), words(49, 51, "7", number)}, `"7" of M1 stands in a bore`},
		{"number in a bore with its mark", []scene.Item{edge(scene.Hole, 40, 50, 20), mark(40, 50, "M1"), words(45, 51, "7", number)}, ""},
		{"number over the edge of its mark", []scene.Item{mark(50, 50, "M1"), words(53, 51, "12", number)}, "runs into the edge of its mark M1"},
		{"word on a panel", []scene.Item{scene.Shape{Path: scene.Rect(20, 20, 40, 20, 1), Fill: scene.Tint}, words(30, 30, "word", scene.Tag{})}, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			faults := scenetest.CheckLayout(scene.Page{Name: "test", Width: 100, Height: 100, Margin: 10, Items: tt.items})
			got := strings.Join(faults, "\n")
			if tt.want == "" && got != "" || !strings.Contains(got, tt.want) {
				t.Errorf("faults %q, want %q", got, tt.want)
			}
		})
	}
}
