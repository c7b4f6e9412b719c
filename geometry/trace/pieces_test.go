package trace

import (
	"errors"
	"image"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// What was measured goes before what was stated, and that before the file's own.
func TestFirstScale(t *testing.T) {
	t.Parallel()
	known := Known{From: geometry.Point{X: 0, Y: 0}, To: geometry.Point{X: 300, Y: 400}, Mm: 100}
	corners := [4]geometry.Point{{X: 0, Y: 0}, {X: 500, Y: 0}, {X: 500, Y: 400}, {X: 0, Y: 400}}
	for _, c := range []struct {
		name    string
		scale   Scale
		from    finding.Code
		pixelMm float64
	}{
		{"corners", Scale{WidthMm: 50, HeightMm: 40, Corners: corners, NamedX: 50, NamedY: 50, FileX: 25, FileY: 25}, ScaleFromCorners, 0.1},
		{"corners, stretched", Scale{WidthMm: 50, HeightMm: 40, Corners: corners, Known: []Known{known}}, ScaleFromCorners, 0.2},
		{"known", Scale{Known: []Known{known}, NamedX: 50, NamedY: 50, FileX: 25, FileY: 25}, ScaleFromKnown, 0.2},
		{"named", Scale{NamedX: 50, NamedY: 50, FileX: 25, FileY: 25}, ScaleNamed, 0.508},
		{"of the file", Scale{FileX: 25, FileY: 25}, ScaleFromFile, 1.016},
		{"named, with distances of holes", Scale{NamedX: 50, NamedY: 50, Known: []Known{{FromID: "F1", ToID: "F2", Mm: 5}}}, ScaleNamed, 0.508},
	} {
		got, err := c.scale.first(image.NewGray(image.Rect(0, 0, 500, 400)))
		if err != nil || got.offMm > 1e-9 || got.from.Code != c.from || !(math.Abs(got.frame.pixelMm(100, 100)-c.pixelMm) < 1e-6) {
			t.Errorf("%s: a pixel of %g mm by %v, %g mm off (%v)", c.name, got.frame.pixelMm(100, 100), got.from, got.offMm, err)
		}
	}
}

// A scanner errs by less than 2 %, distances agree within 0.1 mm (limits of the design:
// common practice, no source).
func TestDoubtsAboutTheScale(t *testing.T) {
	t.Parallel()
	measured := []Known{{Mm: 100}}
	for _, c := range []struct {
		name    string
		scale   Scale
		pixelMm float64
		offMm   float64
		want    []finding.Code
	}{
		{"sound", Scale{FileX: 100, FileY: 100}, 0.254, 0.1, nil},
		{"distances that differ", Scale{Known: measured}, 0.254, 0.101, []finding.Code{KnownDiffer}},
		{"named within the file's", Scale{NamedX: 101.9, NamedY: 98.1, FileX: 100, FileY: 100}, 0.25, 0, nil},
		{"named beside it across", Scale{NamedX: 102.1, NamedY: 100, FileX: 100, FileY: 100}, 0.25, 0, []finding.Code{OtherStated}},
		{"named beside it down", Scale{NamedX: 100, NamedY: 97.9, FileX: 100, FileY: 100}, 0.25, 0, []finding.Code{OtherStated}},
		{"named, the file says none", Scale{NamedX: 50, NamedY: 50}, 0.508, 0, nil},
		{"by corners", Scale{WidthMm: 50, NamedX: 50, NamedY: 50, FileX: 100, FileY: 100}, 0.3, 0, nil},
		{"measured as stated", Scale{Known: measured, FileX: 100, FileY: 100}, 0.254 * 1.019, 0, nil},
		{"measured beside it", Scale{Known: measured, FileX: 100, FileY: 100}, 0.254 * 1.021, 0, []finding.Code{OtherKnown}},
		{"measured less", Scale{Known: measured, FileX: 100, FileY: 100}, 0.254 * 0.979, 0, []finding.Code{OtherKnown}},
		{"measured as named", Scale{Known: measured, NamedX: 50, NamedY: 50, FileX: 100, FileY: 100}, 0.508, 0, nil},
		{"measured, nothing stated", Scale{Known: measured}, 0.4, 0, nil},
	} {
		var got []finding.Code
		for _, f := range c.scale.doubts(c.pixelMm, c.offMm) {
			got = append(got, f.Code)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	told := Scale{NamedX: 50, NamedY: 50, FileX: 100, FileY: 100}.doubts(0.508, 0)[0]
	if told.Values["times"] != 2.0 {
		t.Errorf("%v", told.Values)
	}
	told = Scale{Known: measured}.doubts(0.254, 0.3)[0]
	if told.Values["off"] != unit.Length(0.3) {
		t.Errorf("%v", told.Values)
	}
}

// The value at a place of a list is that of the sorted list.
func TestInOrder(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.Map(rapid.IntRange(0, 9), func(n int) float64 { return float64(n) }), 1, 40).Draw(t, "list")
		sorted := slices.Sorted(slices.Values(list))
		place := rapid.IntRange(0, len(list)-1).Draw(t, "place")
		if got := inOrder(slices.Clone(list), place); got != sorted[place] {
			t.Fatalf("place %d of %v: %g", place, list, got)
		}
		if got := median(list); got != sorted[len(sorted)/2] {
			t.Fatalf("median of %v: %g", list, got)
		}
	})
	if median(nil) != 0 {
		t.Error("a median of nothing")
	}
}

// A surface of the second degree is found again, with a tenth of the samples wrong; it
// does not go beyond the greys that it was laid through.
func TestFitSurface(t *testing.T) {
	t.Parallel()
	const width, height = 400, 300
	true1 := func(x, y float64) float64 { return 120 + 0.1*x - 0.05*y + 1e-4*x*x - 2e-4*x*y + 1e-4*y*y }
	var samples []sample
	for i := range 20 {
		for k := range 15 {
			x, y := float64(20*i+10), float64(20*k+10)
			grey := true1(x, y)
			if (i*15+k)%10 == 0 {
				grey += 80
			}
			samples = append(samples, sample{x, y, grey})
		}
	}
	s, ok := fitSurface(samples, width, height)
	if !ok {
		t.Fatal("no surface")
	}
	for _, p := range [][2]float64{{10, 10}, {200, 150}, {390, 290}, {30, 250}} {
		if got := s.at(p[0], p[1]); math.Abs(got-true1(p[0], p[1])) > 0.5 {
			t.Errorf("at %v %.2f, want %.2f", p, got, true1(p[0], p[1]))
		}
	}
	if far := s.at(4000, 0); far > s.high || s.high > 200 {
		t.Errorf("beyond the picture %g, the highest %g", far, s.high)
	}
	if _, ok := fitSurface(samples[:11], width, height); ok {
		t.Error("eleven samples are taken for a surface")
	}
	if _, ok := fitSurface(samples[1:10], width, height); ok {
		t.Error("nine samples are taken for a surface")
	}
}

// Otsu's variance of two classes: with half the pixels at 50 and half at 150 it is a
// quarter of the square of their distance; of one grey it is nothing.
func TestSeparation(t *testing.T) {
	t.Parallel()
	var two, one, uneven [256]int
	two[50], two[150] = 40, 40
	one[90] = 7
	uneven[0], uneven[200] = 30, 10
	for _, c := range []struct {
		counts [256]int
		want   float64
	}{{two, 2500}, {one, 0}, {uneven, 0.75 * 0.25 * 200 * 200}} {
		if got := separation(c.counts); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%g, want %g", got, c.want)
		}
	}
}

// The grey of a coloured picture is its brightness by ITU-R BT.601, unless one of its
// colours parts it clearly better.
func TestGreyOfColours(t *testing.T) {
	t.Parallel()
	paint := func(left, right [3]uint8) *image.RGBA {
		p := image.NewRGBA(image.Rect(3, 5, 103, 85)) // not from 0
		for y := 5; y < 85; y++ {
			for x := 3; x < 103; x++ {
				c := left
				if x >= 53 {
					c = right
				}
				i := p.PixOffset(x, y)
				copy(p.Pix[i:], []uint8{c[0], c[1], c[2], 255})
			}
		}
		return p
	}
	for _, c := range []struct {
		name        string
		left, right [3]uint8
		want        [2]uint8
	}{
		{"grey", [3]uint8{40, 40, 40}, [3]uint8{200, 200, 200}, [2]uint8{40, 200}},
		// 0.299·200 + 0.587·190 + 0.114·180 = 191.9; its red is not clearly better
		{"by its brightness", [3]uint8{200, 190, 180}, [3]uint8{20, 30, 15}, [2]uint8{192, 25}},
		{"by its red", [3]uint8{250, 0, 20}, [3]uint8{0, 127, 20}, [2]uint8{250, 0}},
		{"by its blue", [3]uint8{100, 100, 0}, [3]uint8{100, 100, 255}, [2]uint8{0, 255}},
	} {
		g := Grey(paint(c.left, c.right))
		if g.Rect != image.Rect(0, 0, 100, 80) || g.Pix[0] != c.want[0] || g.Pix[99] != c.want[1] || g.Pix[79*g.Stride+49] != c.want[0] || g.Pix[79*g.Stride+50] != c.want[1] {
			t.Errorf("%s: %v, %d and %d, want %v", c.name, g.Rect, g.Pix[0], g.Pix[99], c.want)
		}
	}
	clear := image.NewNRGBA(image.Rect(0, 0, 80, 80)) // nothing is painted: white paper
	if g := Grey(clear); g.Pix[0] != 255 {
		t.Errorf("what is transparent is %d", g.Pix[0])
	}
}

// First principles: the circle through three places; half of an edge may be wrong.
func TestCircleThroughThree(t *testing.T) {
	t.Parallel()
	c, ok := through(geometry.Point{X: 5, Y: 2}, geometry.Point{X: 2, Y: 5}, geometry.Point{X: -1, Y: 2})
	if !ok || c.centre.Distance(geometry.Point{X: 2, Y: 2}) > 1e-12 || math.Abs(c.radius-3) > 1e-12 {
		t.Errorf("%+v", c)
	}
	if _, ok := through(geometry.Point{}, geometry.Point{X: 1, Y: 1}, geometry.Point{X: 2, Y: 2}); ok {
		t.Error("a circle through a straight line")
	}
	edge := make([]geometry.Point, 12)
	for i := range edge {
		edge[i] = geometry.Polar(geometry.Point{X: 1, Y: 1}, 4, 30*float64(i))
	}
	if best, ok := startCircle(edge); !ok || math.Abs(best.radius-4) > 1e-9 {
		t.Errorf("twelve places: %+v, %v", best, ok)
	}
	if _, ok := startCircle(edge[:11]); ok {
		t.Error("eleven places are too few")
	}
	oval := make([]geometry.Point, 360)
	for i := range oval {
		oval[i] = geometry.Polar(geometry.Point{X: 1, Y: 1}, 4+0.2*math.Cos(2*float64(i)*math.Pi/180+1), float64(i))
	}
	if got := (circle{centre: geometry.Point{X: 1, Y: 1}, radius: 4}).oval(oval); math.Abs(got-0.2) > 1e-6 {
		t.Errorf("oval by %g, want 0.2", got)
	}
}

// Rows of holes and long sides lie level after the turn; of turns that do it alike the
// smallest is taken; a round part with one hole shows no direction.
func TestStraightTurn(t *testing.T) {
	t.Parallel()
	box := []geometry.Point{{X: -60, Y: -40}, {X: 60, Y: -40}, {X: 60, Y: 40}, {X: -60, Y: 40}}
	rows := geometry.Grid(4, 3, 30, 25, geometry.Point{})
	for _, deg := range []float64{0, 3, -7.5, 20, 44, -44, 50, 91} {
		want := -math.Remainder(deg, 90)
		turn := func(p geometry.Point) geometry.Point { return turned(p, deg) }
		for name, parts := range map[string][2][]geometry.Point{
			"holes": {rows, nil}, "outline": {nil, box}, "both": {rows, box},
		} {
			got, found := straightTurn(mapped(parts[0], turn), mapped(parts[1], turn))
			if !found || math.Abs(got-want) > 1e-6 {
				t.Errorf("%s turned by %g: %g (%v), want %g", name, deg, got, found, want)
			}
		}
	}
	round := make([]geometry.Point, 60)
	for i := range round {
		round[i] = geometry.Polar(geometry.Point{}, 50, 6*float64(i)+1)
	}
	if got, found := straightTurn([]geometry.Point{{X: 3, Y: 4}}, round); found {
		t.Errorf("a round part is turned by %g", got)
	}
}

// Ids go by rows: places of one row lie within 2 mm of the next one and 4 mm of the
// first.
func TestRowsInReadingOrder(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		at   []geometry.Point
		want []int // of the places, in reading order
	}{
		{"one row", []geometry.Point{{X: 20, Y: 10}, {X: 0, Y: 8.1}}, []int{1, 0}},
		{"two rows", []geometry.Point{{X: 20, Y: 10}, {X: 0, Y: 7.9}}, []int{0, 1}},
		{"a falling row", []geometry.Point{{X: 20, Y: 10}, {X: 10, Y: 8.1}, {X: 0, Y: 6.2}}, []int{2, 1, 0}},
		{"it falls too far", []geometry.Point{{X: 20, Y: 10}, {X: 10, Y: 8.1}, {X: 0, Y: 6.2}, {X: -10, Y: 5.9}}, []int{2, 1, 0, 3}},
	} {
		shapes := make([]Shape, len(c.at))
		for i, p := range c.at {
			shapes[i] = Shape{At: p, Group: i}
		}
		inReadingOrder(shapes)
		var got []int
		for _, s := range shapes {
			got = append(got, s.Group)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// A hole that is alone of its size is doubted where it is less than 0.65 of the usual
// one (limit of the design: common practice, no source).
func TestLoners(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		diameters []float64
		groups    []int
		role      Role
		want      bool // the last one is doubted
	}{
		{[]float64{10, 10, 10, 6.4}, []int{0, 0, 0, 1}, Fastener, true},
		{[]float64{10, 10, 10, 6.6}, []int{0, 0, 0, 1}, Fastener, false},
		{[]float64{10, 10, 10, 6.4, 6.4}, []int{0, 0, 0, 1, 1}, Fastener, false},
		{[]float64{10, 10, 10, 16}, []int{0, 0, 0, 1}, Fastener, false},
		{[]float64{10, 10, 10, 6.4}, []int{0, 0, 0, 1}, Dowel, false},
	} {
		var f Found
		for i, d := range c.diameters {
			f.Shapes = append(f.Shapes, Shape{Role: Fastener, DiameterMm: d, Group: c.groups[i]})
		}
		last := &f.Shapes[len(f.Shapes)-1]
		last.Role = c.role
		f.doubtLoners()
		if got := finding.Has(last.Doubts, Alone); got != c.want || len(f.Shapes[0].Doubts) > 0 {
			t.Errorf("%v, the last a %s: %v", c.diameters, c.role, f.Shapes)
		}
	}
}

// The lowest and highest grey of the 5 × 5 pixels about each: first principles.
func TestRanges(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		thumb := thumbnail{width: rapid.IntRange(1, 9).Draw(t, "width"), height: rapid.IntRange(1, 9).Draw(t, "height"), scale: 1}
		for range thumb.width * thumb.height {
			thumb.grey = append(thumb.grey, float64(rapid.IntRange(0, 255).Draw(t, "grey")))
		}
		lowest, highest := thumb.ranges()
		for y := range thumb.height {
			for x := range thumb.width {
				low, high := 255.0, 0.0
				for v := max(y-2, 0); v <= min(y+2, thumb.height-1); v++ {
					for u := max(x-2, 0); u <= min(x+2, thumb.width-1); u++ {
						low, high = min(low, thumb.grey[v*thumb.width+u]), max(high, thumb.grey[v*thumb.width+u])
					}
				}
				if lowest[y*thumb.width+x] != low || highest[y*thumb.width+x] != high {
					t.Fatalf("at %d, %d: %g to %g, want %g to %g", x, y, lowest[y*thumb.width+x], highest[y*thumb.width+x], low, high)
				}
			}
		}
	})
}

// A thumbnail has the mean grey of its pixels, and their places in the picture.
func TestShrink(t *testing.T) {
	t.Parallel()
	p := image.NewGray(image.Rect(0, 0, 1500, 30))
	for y := range 30 {
		for x := range 1500 {
			p.Pix[y*p.Stride+x] = uint8(x/30 + y)
		}
	}
	thumb := shrink(p)
	if thumb.scale != 3 || thumb.width != 500 || thumb.height != 10 {
		t.Fatalf("%d by %d, by %d", thumb.width, thumb.height, thumb.scale)
	}
	for _, at := range [][2]int{{0, 0}, {499, 9}, {250, 4}} {
		if got, want := thumb.grey[at[1]*500+at[0]], float64(at[0]*3/30+3*at[1]+1); got != want {
			t.Errorf("at %v %g, want %g", at, got, want)
		}
	}
	if x, y := thumb.place(2, 0); x != 7.5 || y != 1.5 {
		t.Errorf("the middle of the third is %g, %g", x, y)
	}
}

// Pixels that are clearly of one tone are samples of it; those at an edge of neither.
func TestTones(t *testing.T) {
	t.Parallel()
	thumb := thumbnail{width: 30, height: 30, scale: 1}
	for i := range 900 {
		grey := 50.0
		if i%30 >= 15 {
			grey = 200
		}
		thumb.grey = append(thumb.grey, grey)
	}
	thumb.lowest, thumb.highest = thumb.ranges()
	flat := func(grey float64) surface {
		return surface{c: [6]float64{grey}, width: 30, height: 30, low: 0, high: 255}
	}
	dark, bright := thumb.tones(light{dark: flat(50), bright: flat(200), contrast: 150})
	if len(dark) != 4*10 || len(bright) != 4*10 { // x = 1, 4, 7, 10 and 19, 22, 25, 28; 13 and 16 are at the edge
		t.Errorf("%d dark and %d bright", len(dark), len(bright))
	}
	for _, q := range append(dark, bright...) {
		if (q.grey == 50) != (q.x < 15) {
			t.Errorf("%+v", q)
		}
	}
	low, high := thumb.edgeLevels()
	if len(low) != 4*30 || len(high) != len(low) { // two pixels on either side
		t.Errorf("%d and %d at the edge", len(low), len(high))
	}
	for i := range low {
		if low[i].grey != 50 || high[i].grey != 200 || low[i].x < 13 || low[i].x > 17 {
			t.Errorf("%+v, %+v", low[i], high[i])
		}
	}
}

// Each rim of the picture counts, a corner twice.
func TestOnRim(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ x, y, want int }{{0, 0, 2}, {3, 0, 1}, {3, 4, 1}, {0, 2, 1}, {6, 2, 1}, {6, 4, 2}, {3, 2, 0}} {
		m := &mask{width: 7, height: 5, part: make([]bool, 35)}
		m.part[c.y*7+c.x] = true
		if got := m.onRim(); got != c.want {
			t.Errorf("a pixel at %d, %d counts %d times, want %d", c.x, c.y, got, c.want)
		}
	}
}

// The smoothed row is the sum under the weights 1 2 1 both ways; the rim is taken twice.
func TestSmoothRow(t *testing.T) {
	t.Parallel()
	p := image.NewGray(image.Rect(0, 0, 4, 3))
	copy(p.Pix, []uint8{
		1, 2, 3, 4,
		5, 6, 7, 8,
		9, 10, 11, 12,
	})
	weights := []int{1, 2, 1}
	out := make([]int, 4)
	for y := range 3 {
		smoothRow(p, y, out)
		for x := range 4 {
			want := 0
			for i := -1; i <= 1; i++ {
				for k := -1; k <= 1; k++ {
					want += weights[i+1] * weights[k+1] * int(p.Pix[min(max(y+i, 0), 2)*4+min(max(x+k, 0), 3)])
				}
			}
			if out[x] != want {
				t.Errorf("at %d, %d: %d, want %d", x, y, out[x], want)
			}
		}
	}
}

// The part is the largest patch, or one within a frame round the picture; a second one of
// a quarter of its size is doubted, and a part that reaches the rim. Holes are of the
// part alone, and not smaller than asked for (limits of the design: common practice, no
// source).
func TestFindPart(t *testing.T) {
	t.Parallel()
	frame := PerInch(254, 254) // 0.1 mm a pixel
	type box struct {
		x, y, width, height int
		hole                bool
	}
	for _, c := range []struct {
		name   string
		boxes  []box
		sheet  int // pixels of the part
		holes  int
		specks int
		want   []finding.Code
	}{
		{"a part", []box{{20, 20, 60, 40, false}}, 2400, 0, 0, nil},
		{"a hole, a speck, a grain", []box{{20, 20, 60, 40, false}, {30, 30, 9, 9, true}, {50, 30, 3, 2, true}, {60, 30, 5, 1, true}}, 2400 - 81 - 6 - 5, 1, 1, nil},
		{"a second part of a quarter", []box{{20, 20, 40, 40, false}, {70, 20, 20, 20, false}}, 1600, 0, 0, nil},
		{"of more", []box{{20, 20, 40, 40, false}, {70, 20, 20, 21, false}}, 1600, 0, 0, []finding.Code{SecondPart}},
		{"a hole in the second part", []box{{20, 20, 40, 40, false}, {70, 20, 20, 20, false}, {75, 25, 9, 9, true}}, 1600, 0, 0, nil},
		{"at the rim", []box{{0, 20, 60, 40, false}}, 2400, 0, 0, []finding.Code{CutOff}},
		{"a frame round it", []box{{0, 0, 100, 80, false}, {10, 10, 80, 60, true}, {20, 20, 40, 40, false}}, 1600, 0, 0, nil},
		{"a tenth within the frame", []box{{0, 0, 100, 80, false}, {10, 10, 80, 60, true}, {20, 20, 20, 16, false}}, 8000 - 4800, 1, 0, []finding.Code{CutOff}},
		{"more than a tenth", []box{{0, 0, 100, 80, false}, {10, 10, 80, 60, true}, {20, 20, 20, 17, false}}, 340, 0, 0, nil},
		{"the larger one is cut off", []box{{0, 20, 40, 40, false}, {60, 20, 38, 40, false}}, 1520, 0, 0, nil},
		{"both are cut off", []box{{0, 20, 40, 40, false}, {62, 20, 38, 40, false}}, 1600, 0, 0, []finding.Code{SecondPart, CutOff}},
	} {
		m := &mask{width: 100, height: 80, part: make([]bool, 8000), tone: ToneDark}
		for _, b := range c.boxes {
			for y := b.y; y < b.y+b.height; y++ {
				for x := b.x; x < b.x+b.width; x++ {
					m.part[y*100+x] = !b.hole
				}
			}
		}
		p, err := m.findPart(frame, Options{SmallestMm: 0.5})
		var got []finding.Code
		for _, f := range p.doubts {
			got = append(got, f.Code)
		}
		if err != nil || p.sheet.pixels != c.sheet || len(p.holes) != c.holes || p.specks != c.specks || !slices.Equal(got, c.want) {
			t.Errorf("%s: %d pixels, %d holes, %d specks, %v (%v)", c.name, p.sheet.pixels, len(p.holes), p.specks, got, err)
		}
	}
	none := &mask{width: 8, height: 8, part: make([]bool, 64), tone: ToneDark}
	if _, err := none.findPart(frame, Options{SmallestMm: 0.5}); !errors.Is(err, NoPart) {
		t.Errorf("no part: %v", err)
	}
	for holes, want := range map[int]bool{2000: false, 2001: true} {
		m := &mask{width: 102, height: 102, part: slices.Repeat([]bool{true}, 102*102), tone: ToneDark}
		for k := range holes {
			m.part[(1+2*(k/50))*102+1+2*(k%50)] = false
		}
		if _, err := m.findPart(frame, Options{SmallestMm: 0.1}); errors.Is(err, TooManyShapes) != want {
			t.Errorf("%d holes: %v", holes, err)
		}
	}
}

// The names of the holes that there are stand beside the one that is not there.
func TestKnownHoles(t *testing.T) {
	t.Parallel()
	shapes := []Shape{{ID: "F1", Pixel: geometry.Point{X: 10, Y: 20}}, {ID: "P1", Group: -1}, {ID: "F2", Pixel: geometry.Point{X: 40, Y: 60}}}
	got, err := Scale{Known: []Known{{FromID: "F1", ToID: "F2", Mm: 5}, {From: geometry.Point{X: 1}, To: geometry.Point{X: 2}, Mm: 1}}}.between(shapes)
	if err != nil || len(got) != 2 || got[0].From != shapes[0].Pixel || got[0].To != shapes[2].Pixel || got[1].From.X != 1 {
		t.Errorf("%+v, %v", got, err)
	}
	_, err = Scale{Known: []Known{{FromID: "F1", ToID: "P1", Mm: 5}}}.between(shapes)
	var f finding.Finding
	if !errors.As(err, &f) || f.Code != NoHole || f.Values["hole"] != "P1" || !slices.Equal(f.Values["allowed"].([]string), []string{"F1", "F2"}) {
		t.Errorf("%v", err)
	}
}

// A nick is up to 2 mm long and 1.2 mm deep, where the edge goes on within 8°; what is
// longer, deeper or turns stays (limits of the design: common practice, no source).
func TestNickLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name                string
		width, depth, after float64 // mm, mm, degrees by which the edge turns
		want                bool
	}{
		{"a nick", 1, 0.5, 0, true}, {"as long", 1.95, 0.5, 0, true}, {"longer", 2.05, 0.5, 0, false},
		{"as deep", 1, 1.15, 0, true}, {"deeper", 1, 1.25, 0, false}, {"turned a little", 1, 0.5, 7.5, true}, {"turned more", 1, 0.5, 8.5, false},
	} {
		end := geometry.Polar(geometry.Point{X: 20 + c.width}, 20, c.after)
		line := []geometry.Point{{}, {X: 20}, {X: 20 + c.width/2, Y: c.depth}, {X: 20 + c.width}, end, {X: 40, Y: 60}, {X: 20, Y: 70}, {X: 0, Y: 60}, {X: -10, Y: 30}}
		cut := withoutNicks(line)
		if got := len(cut) == len(line)-1 && !slices.Contains(cut, line[2]); got != c.want || !got && len(cut) != len(line) {
			t.Errorf("%s: %v", c.name, cut)
		}
	}
}

// Between the middles of four pixels the grey goes evenly from one to the other; beyond
// the picture the last ones go on.
func TestGreyBetweenPixels(t *testing.T) {
	t.Parallel()
	p := image.NewGray(image.Rect(0, 0, 2, 2))
	copy(p.Pix, []uint8{10, 30, 50, 90})
	tr := &tracer{picture: p, mask: &mask{width: 2, height: 2}}
	for _, c := range []struct{ x, y, want float64 }{
		{0.5, 0.5, 10}, {1.5, 0.5, 30}, {0.5, 1.5, 50}, {1.5, 1.5, 90}, {1, 0.5, 20}, {0.5, 1, 30}, {1, 1, 45}, {0.75, 0.5, 15}, {0.5, 1.25, 40},
		{-3, 0.5, 10}, {0.5, -3, 10}, {9, 0.5, 30}, {9, 9, 90}, {0, 0, 10}, {2, 2, 90},
	} {
		if got := tr.grey(c.x, c.y); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("at %g, %g: %g, want %g", c.x, c.y, got, c.want)
		}
	}
}

// An edge stands where the areas under both tones are equal: a pixel that is covered to
// a share puts it at that share.
func TestProfile(t *testing.T) {
	t.Parallel()
	for _, share := range []float64{0, 0.25, 0.5, 0.9} {
		p := image.NewGray(image.Rect(0, 0, 40, 40))
		for i := range p.Pix {
			switch x := i % 40; {
			case x < 20:
				p.Pix[i] = 40
			case x == 20:
				p.Pix[i] = uint8(math.Round(40*share + 200*(1-share)))
			default:
				p.Pix[i] = 200
			}
		}
		tr := &tracer{picture: p, mask: &mask{width: 40, height: 40}}
		for _, from := range []float64{19, 20, 21} {
			if offset, step := tr.profile(from, 20, 1, 0); math.Abs(from+offset-20-share) > 0.02 || step != -160 {
				t.Errorf("%g of a pixel: the edge at %g, a step of %g", share, from+offset, step)
			}
		}
		if offset, step := tr.profile(20, 20, -1, 0); math.Abs(20-offset-20-share) > 0.02 || step != 160 {
			t.Errorf("%g of a pixel, from the other side: %g, %g", share, offset, step)
		}
	}
	flat := &tracer{picture: image.NewGray(image.Rect(0, 0, 40, 40)), mask: &mask{width: 40, height: 40}}
	if offset, step := flat.profile(20, 20, 1, 0); offset != 0 || step != 0 {
		t.Errorf("no edge: %g, %g", offset, step)
	}
}

// Part and background differ by 24 greys at least.
func TestLeastContrast(t *testing.T) {
	t.Parallel()
	for bright, want := range map[uint8]bool{123: false, 124: true, 150: true} {
		p := image.NewGray(image.Rect(0, 0, 200, 160))
		for i := range p.Pix {
			p.Pix[i] = 100
			if i%200 >= 90 {
				p.Pix[i] = bright
			}
		}
		l, err := measureLight(p)
		if (err == nil) != want || err != nil && !errors.Is(err, NoContrast) {
			t.Errorf("100 and %d: %v", bright, err)
		}
		if err == nil && (math.Abs(l.contrast-float64(bright-100)) > 0.01 || math.Abs(l.middle(50, 50)-float64(bright+100)/2) > 0.01) {
			t.Errorf("100 and %d: a contrast of %g, the middle %g", bright, l.contrast, l.middle(50, 50))
		}
	}
	near := light{dark: surface{c: [6]float64{100}, width: 9, height: 9, high: 255}, bright: surface{c: [6]float64{104}, width: 9, height: 9, high: 255}, contrast: 30}
	if dark, bright := near.at(4, 4); dark != 97 || bright != 107 { // a third of the contrast about their middle
		t.Errorf("surfaces that meet: %g and %g", dark, bright)
	}
}

// Without a bolt hole there is no pattern.
func TestFoundWithoutABolt(t *testing.T) {
	t.Parallel()
	if err := (Found{Shapes: []Shape{{Role: Dowel}, {Role: Fastener}}}).Check(); err != nil {
		t.Error(err)
	}
	if err := (Found{Shapes: []Shape{{Role: Dowel}, {Role: Bore}}}).Check(); !errors.Is(err, NoFastener) {
		t.Errorf("%v", err)
	}
}

// Long sides tell a direction by their length, the longest as ten pairs of holes; a
// tenth of it tells none.
func TestSides(t *testing.T) {
	t.Parallel()
	line := []geometry.Point{{}, {X: 100}, {X: 100, Y: 50}, {X: 95, Y: 50}, {X: 0, Y: 50}}
	var got []pair
	for _, p := range sides(line) {
		got = append(got, pair{math.Round(p.deg), p.length, p.weight})
	}
	if want := []pair{{0, 100, 10}, {0, 50, 5}, {0, 95, 9.5}, {0, 50, 5}}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// The part has the tone that less than half of the rim has.
func TestToneOfTheRim(t *testing.T) {
	t.Parallel()
	flat := func(grey float64) surface {
		return surface{c: [6]float64{grey}, width: 20, height: 10, low: 0, high: 255}
	}
	l := light{dark: flat(40), bright: flat(200), contrast: 160}
	for rows, want := range map[int]Tone{2: ToneDark, 5: ToneLight, 8: ToneLight} { // of ten: 24, 30 and 36 of 60 at the rim
		p := image.NewGray(image.Rect(0, 0, 20, 10))
		for i := range p.Pix {
			p.Pix[i] = 200
			if i/20 < rows {
				p.Pix[i] = 40
			}
		}
		if m := split(p, l, ToneAuto); m.tone != want || m.part[0] != (want == ToneDark) {
			t.Errorf("%d dark rows: %s", rows, m.tone)
		}
		if m := split(p, l, ToneDark); m.tone != ToneDark || !m.part[0] {
			t.Errorf("%d dark rows, a dark part: %s", rows, m.tone)
		}
	}
}

// First principles: the distance from a stretch, beyond its ends that from them.
func TestOffSegment(t *testing.T) {
	t.Parallel()
	a, b := geometry.Point{X: 1, Y: 1}, geometry.Point{X: 5, Y: 1}
	for want, p := range map[float64]geometry.Point{0: {X: 3, Y: 1}, 2: {X: 4, Y: 3}, 3: {X: 8, Y: 1}, 5: {X: -2, Y: 5}} {
		if got := offSegment(p, a, b); math.Abs(got-want) > 1e-12 {
			t.Errorf("%v: %g, want %g", p, got, want)
		}
	}
	if got := offSegment(geometry.Point{X: 4, Y: 5}, a, a); got != 5 {
		t.Errorf("from a place: %g", got)
	}
	for mm, want := range map[float64]float64{10: 1, 4: 1, 2: 2, 1: 4, 0.5: 4, 0: 4} { // short neighbours point less exactly
		if got := nickAllowance(a, a.Add(geometry.Point{X: mm})); math.Abs(got-want) > 1e-12 {
			t.Errorf("a neighbour of %g mm: %g, want %g", mm, got, want)
		}
	}
}
