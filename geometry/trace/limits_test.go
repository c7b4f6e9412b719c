package trace

import (
	"errors"
	"image"
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// seen is a dark patch on a light part, by whether a place in pixels lies in it: what a
// tracer sees of a hole that is drawn so. Its edges are soft over a pixel.
func seen(side int, frame Frame, patch func(x, y float64) bool) (*tracer, blob) {
	const fine = 8
	p := image.NewGray(image.Rect(0, 0, side, side))
	m := &mask{width: side, height: side, part: make([]bool, side*side), tone: ToneLight}
	for i := range p.Pix {
		covered := 0
		for k := range fine * fine {
			if patch(float64(i%side)+(float64(k%fine)+0.5)/fine, float64(i/side)+(float64(k/fine)+0.5)/fine) {
				covered++
			}
		}
		p.Pix[i] = uint8(200 - 150*covered/(fine*fine))
		m.part[i] = 2*covered < fine*fine
	}
	t := &tracer{picture: p, mask: m, frame: frame, light: even(side, 50, 200), options: Options{SmallestMm: 2.5}}
	found, _ := m.blobs()
	return t, found[slices.IndexFunc(found, func(b blob) bool { return !b.part })]
}

func even(side int, dark, bright float64) light {
	flat := func(grey float64) surface {
		return surface{c: [6]float64{grey}, width: float64(side), height: float64(side), high: 255}
	}
	return light{dark: flat(dark), bright: flat(bright), contrast: bright - dark}
}

// sector is a disc of 80 pixels across in a picture of 120 without a sector.
func sector(without float64) func(x, y float64) bool {
	return func(x, y float64) bool {
		deg := math.Mod(math.Atan2(60-y, x-60)*180/math.Pi+360, 360)
		return math.Hypot(x-60, y-60) < 40 && deg >= without
	}
}

// A disc of which a sector is missing is a torn hole while the circle through its edge
// is within a fifth of its area's (limit of the design: common practice, no source). By
// first principles the diameter of the area falls with the root of what is left: at 109°
// the two part by a fifth.
func TestCircleNearItsArea(t *testing.T) {
	t.Parallel()
	for without, want := range map[float64]bool{0: true, 60: true, 104: true, 115: false, 150: false} {
		tr, b := seen(120, PerInch(254, 254), sector(without))
		s := tr.shape(b)
		if s.Round() != want {
			t.Errorf("without %g degrees: round %v, kept %.2f, %v", without, s.Round(), s.Kept, s.Doubts)
		}
		if want && (math.Abs(s.DiameterMm-8) > 0.03 || s.At.Distance(geometry.Point{X: 6, Y: -6}) > 0.03) {
			t.Errorf("without %g degrees: ø %.3f at %v", without, s.DiameterMm, s.At)
		}
		if torn := finding.Has(s.Doubts, Torn); want && torn != (without > 0) {
			t.Errorf("without %g degrees: torn %v", without, torn)
		}
	}
}

// A step of 0.35 of the contrast, within two and a half pixels of the border of the
// pixels, is an edge; else the border stands for it (limits of the design: common
// practice, no source).
func TestSoundEdges(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		grey    uint8 // of the patch, on a ground of 200
		further int   // pixels by which the mask is larger all round
		want    bool
		width   float64 // pixels of the edge
	}{
		{"clear", 50, 0, true, 20}, {"just seen", 144, 0, true, 20}, {"too faint", 150, 0, false, 20},
		{"a little off", 50, 2, true, 20}, {"too far off", 50, 3, false, 26}, {"off inwards", 50, -2, true, 20}, {"too far inwards", 50, -3, false, 14},
	} {
		tr := &tracer{picture: image.NewGray(image.Rect(0, 0, 60, 60)), frame: perPixel(1, 1), light: even(60, 50, 200),
			mask: &mask{width: 60, height: 60, part: make([]bool, 3600), tone: ToneLight}}
		in := func(i, more int) bool {
			x, y := i%60, i/60
			return min(x, y) >= 20-more && max(x, y) < 40+more
		}
		for i := range tr.picture.Pix {
			tr.picture.Pix[i] = 200
			if in(i, 0) {
				tr.picture.Pix[i] = c.grey
			}
			tr.mask.part[i] = !in(i, c.further)
		}
		e := tr.edge(blob{x: 20 - c.further, y: 20 - c.further})
		// Of the middles of the sides: at corners the profile runs aslant.
		sound, middles, across := 0, 0, geometry.Box{Min: geometry.Point{X: math.Inf(1)}, Max: geometry.Point{X: math.Inf(-1)}}
		for i, p := range e.mm {
			if math.Abs(p.Y+30) < 2 {
				middles++
				across.Min.X, across.Max.X = min(across.Min.X, p.X), max(across.Max.X, p.X)
				if e.sound[i] {
					sound++
				}
			}
		}
		if (sound == middles) != c.want || (sound == 0) == c.want || math.Abs(across.Width()-c.width) > 0.1 {
			t.Errorf("%s: %d of %d sound, %.2f pixels wide", c.name, sound, middles, across.Width())
		}
		if want := float64(200-int(c.grey)) / 150; math.Abs(e.contrast-want) > 0.02 && c.further == 0 {
			t.Errorf("%s: contrast %.3f, want %.3f", c.name, e.contrast, want)
		}
	}
}

// First principles: the side of a pixel is that in the middle of the patch, which a
// camera aslant sees larger or smaller than the others.
func TestSideOfAPixelInThePatch(t *testing.T) {
	t.Parallel()
	frame, err := FromRectangle([4]geometry.Point{{X: 30, Y: 10}, {X: 90, Y: 20}, {X: 110, Y: 110}, {X: 5, Y: 100}}, 20, 15)
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range [][2]float64{{40, 40}, {80, 45}, {60, 85}} {
		tr, b := seen(120, frame, func(x, y float64) bool { return math.Hypot(x-at[0], y-at[1]) < 12 })
		if got, want := tr.edge(b).side, frame.pixelMm(at[0], at[1]); !(math.Abs(got/want-1) < 0.01) {
			t.Errorf("at %v a pixel is %.4f mm, want %.4f", at, got, want)
		}
	}
}

// The direction out of a patch is the mean of the borders near by, up to six on either
// side and fewer on a small patch, the nearest counting most.
func TestOutward(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		side, at int // of a square; the border, from its top left corner to the right
		x, y     float64
	}{
		{30, 0, -21, -28}, {30, 15, 0, -1}, {30, 5, -1, -48}, {30, 6, 0, -1}, {30, 29, 21, -28}, {30, 30, 28, -21}, {4, 0, -1, -3}, {4, 1, 0, -1}, {2, 0, 0, -1}, {2, 1, 0, -1},
	} {
		m := &mask{width: 40, height: 40, part: make([]bool, 1600)}
		for i := range m.part {
			m.part[i] = i%40 >= 3 && i/40 >= 3 && i%40 < 3+c.side && i/40 < 3+c.side
		}
		x, y := outward(m.contour(blob{part: true, x: 3, y: 3}), c.at)
		if length := math.Hypot(c.x, c.y); math.Abs(x-c.x/length) > 1e-9 || math.Abs(y-c.y/length) > 1e-9 {
			t.Errorf("side %d, border %d: %.3f, %.3f, want %.3f, %.3f", c.side, c.at, x, y, c.x/length, c.y/length)
		}
	}
}

// A turn that lays more level is taken only where it does so by a twentieth: 20° where
// its sides are 1.1 times as long as the level ones, none where they are 1.03 times.
func TestTheSmallerTurnIsTaken(t *testing.T) {
	t.Parallel()
	for back, want := range map[float64]float64{48: 0, 55: -20} {
		line := []geometry.Point{{}, {X: 100}}
		line = append(line, geometry.Polar(line[1], 55, 110))
		line = append(line, geometry.Polar(line[2], back, 200))
		last := line[3]
		for k := 1; k < 20; k++ { // home in steps too short to tell a direction
			line = append(line, last.Scale(1-float64(k)/20))
		}
		if got, found := straightTurn(nil, line); !found || math.Abs(got-want) > 0.01 {
			t.Errorf("%g mm at 20°: turned by %.2f (%v), want %g", 55+back, got, found, want)
		}
	}
}

// Pixels are of the tone whose side of the middle they lie on, and of neither where the
// greys about them differ by more than a third of the contrast.
func TestTonesNearTheirLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		grey, span   float64
		dark, bright int
	}{
		{124, 0, 1, 0}, {126, 0, 0, 1}, {118, 0, 1, 0}, {132, 0, 0, 1}, {60, 49, 1, 0}, {60, 51, 0, 0}, {190, 49, 0, 1}, {190, 51, 0, 0},
	} {
		thumb := thumbnail{width: 3, height: 3, scale: 1}
		thumb.grey, thumb.lowest = slices.Repeat([]float64{c.grey}, 9), slices.Repeat([]float64{c.grey - c.span/2}, 9)
		thumb.highest = slices.Repeat([]float64{c.grey + c.span/2}, 9)
		if dark, bright := thumb.tones(even(3, 50, 200)); len(dark) != c.dark || len(bright) != c.bright {
			t.Errorf("grey %g, span %g: %d dark, %d bright", c.grey, c.span, len(dark), len(bright))
		}
	}
}

// Edges are half as steep as the steepest, but for a two-hundredth of the picture, and
// four greys at the least.
func TestStrongEdges(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		steepest, other float64
		want            int // of 20 pixels with the other step
	}{
		{100, 51, 20}, {100, 49, 0}, {9, 4.6, 20}, {9, 4.4, 0}, {5, 4, 20}, {5, 3.9, 0},
	} {
		thumb := thumbnail{width: 100, height: 10, scale: 1, lowest: slices.Repeat([]float64{50}, 1000)}
		thumb.highest = slices.Clone(thumb.lowest)
		for i := range 20 {
			thumb.highest[i] += c.steepest
			thumb.highest[100+i] += c.other
		}
		low, high := thumb.edgeLevels()
		if len(low) != 20+c.want || len(high) != len(low) {
			t.Errorf("steps of %g and %g: %d edges, want %d", c.steepest, c.other, len(low), 20+c.want)
		}
	}
	// Five of a thousand may be steeper: a scratch is no measure.
	thumb := thumbnail{width: 100, height: 10, scale: 1, lowest: make([]float64, 1000), highest: make([]float64, 1000)}
	for i := range 30 {
		thumb.highest[i] = 40
		if i < 4 {
			thumb.highest[i] = 200
		}
	}
	if low, _ := thumb.edgeLevels(); len(low) != 30 {
		t.Errorf("%d edges beside a scratch, want 30", len(low))
	}
}

// A colour is taken where it parts the greys by 1.2 times the variance of the
// brightness: by first principles the variance goes with the square of the step. A red of
// 100 beside a brightness of 93 is 1.16 times, beside 89 it is 1.26 times.
func TestClearlyBetterColour(t *testing.T) {
	t.Parallel()
	for other, want := range map[uint8]uint8{190: 193, 185: 200} {
		p := image.NewRGBA(image.Rect(0, 0, 80, 80))
		for i := 0; i < len(p.Pix); i += 4 {
			copy(p.Pix[i:], []uint8{100, 100, 100, 255})
			if i/4%80 < 40 {
				copy(p.Pix[i:], []uint8{200, other, other, 255})
			}
		}
		if g := Grey(p); g.Pix[0] != want || g.Pix[79] != 100 {
			t.Errorf("red 200 beside %d: %d and %d, want %d and 100", other, g.Pix[0], g.Pix[79], want)
		}
	}
}

// keyhole is the edge of a plate with a round bay in its upper side, or a round bump on
// it, a point every tenth of a millimetre.
func keyhole(half, diameter, gap float64, bump bool) []geometry.Point {
	var line []geometry.Point
	to := func(x, y float64) {
		from := line[len(line)-1]
		end := geometry.Point{X: x, Y: y}
		for steps, k := math.Round(from.Distance(end)/0.1), 1.0; k <= steps; k++ {
			line = append(line, from.Add(end.Sub(from).Scale(k/steps)))
		}
	}
	line = append(line, geometry.Point{X: half, Y: half})
	to(gap/2, half)
	radius := diameter / 2
	deep := math.Sqrt(radius*radius - gap*gap/4)
	begin, turn, centre := math.Atan2(deep, gap/2), 1.0, geometry.Point{Y: half - deep}
	if bump {
		turn, centre = -1, geometry.Point{Y: half + deep}
	}
	around := 2*math.Pi - 2*math.Asin(gap/diameter)
	for k := 1.0; k < around*radius/0.1; k++ {
		a := turn * (begin - k*0.1/radius)
		line = append(line, centre.Add(geometry.Point{X: radius * math.Cos(a), Y: radius * math.Sin(a)}))
	}
	to(-gap/2, half)
	for _, corner := range [][2]float64{{-half, half}, {-half, -half}, {half, -half}, {half, half}} {
		to(corner[0], corner[1])
	}
	return line[:len(line)-1]
}

// A bay is a stretch whose ends lie within 0.6 of its diameter, by its length, that runs
// round something outside of the part, and is no longer than that of a torn bore of
// 40 mm and a third more (limits of the design: common practice, no source).
func TestBays(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name                string
		half, diameter, gap float64
		bump                bool
		want                int
	}{
		{"a torn hole", 30, 8, 1, false, 1}, {"half open", 30, 8, 2.9, false, 1}, {"more", 30, 8, 3.5, false, 0},
		{"a bump", 30, 8, 1, true, 0}, {"a large one", 150, 50, 5, false, 1}, {"too large", 150, 62, 5, false, 0},
	} {
		line := keyhole(c.half, c.diameter, c.gap, c.bump)
		for _, way := range []string{"round", "back"} {
			found := bays(line, Options{SmallestMm: 2.5}, 0.1)
			if len(found) != c.want {
				t.Errorf("%s, %s: %+v", c.name, way, found)
			} else if c.want == 1 {
				around := float64(found[0].to-found[0].from) * 0.1
				if want := c.diameter * (math.Pi - math.Asin(c.gap/c.diameter)); math.Abs(found[0].gap-c.gap) > 0.5 || math.Abs(around-want) > 1.5 {
					t.Errorf("%s, %s: a gap of %.2f, %.1f mm round, want %.2f and %.1f", c.name, way, found[0].gap, around, c.gap, want)
				}
			}
			slices.Reverse(line)
		}
	}
}

// A place of a torn edge counts for its circle within 0.12 mm, a fiftieth of the
// diameter or a pixel and a half, whichever is most (limits of the design: common
// practice, no source). Of 300° that follow it 110° lie off.
func TestToleranceOfATornHole(t *testing.T) {
	t.Parallel()
	tr := &tracer{options: Options{SmallestMm: 2.5}}
	for _, c := range []struct {
		diameter, side, off float64
		want                bool
	}{
		{5, 0.05, 0.115, true}, {5, 0.05, 0.128, false}, {30, 0.05, 0.58, true}, {30, 0.05, 0.64, false}, {5, 0.2, 0.29, true}, {5, 0.2, 0.31, false},
	} {
		line := bayOf(c.diameter, 300)
		for k := 200; k < 420; k++ { // every half degree
			line[k] = geometry.Polar(geometry.Point{X: 20, Y: 30}, c.diameter/2+c.off, float64(k)/2)
		}
		if s, ok := tr.tornHole(edge{mm: line, side: c.side}, bay{from: 0, to: len(line)}); ok != c.want {
			t.Errorf("ø %g, %g off, a pixel of %g: %v, kept %.2f", c.diameter, c.off, c.side, ok, s.Kept)
		}
	}
}

// The middle of the part is that of its bolts from three on, else that of its outline.
func TestMiddleOfThePart(t *testing.T) {
	t.Parallel()
	outline := []geometry.Point{{X: -10, Y: -20}, {X: 50, Y: -20}, {X: 50, Y: 60}}
	shapes := []Shape{{Role: Fastener}, {Role: Fastener, At: geometry.Point{X: 8}}, {Role: Bore, At: geometry.Point{X: 90, Y: 90}}}
	if got := middle(shapes, outline, View{}); got != (geometry.Point{X: 20, Y: 20}) {
		t.Errorf("two bolts: %v", got)
	}
	shapes = append(shapes, Shape{Role: Fastener, At: geometry.Point{X: 2, Y: 6}})
	if got := middle(shapes, outline, View{}); got != (geometry.Point{X: 4, Y: 3}) {
		t.Errorf("three bolts: %v", got)
	}
}

// spiky is a large circle with so many spikes, each somewhat higher than the last.
func spiky(count int) []geometry.Point {
	line := make([]geometry.Point, 0, 2*count)
	for k := range count {
		at := 360 * float64(k) / float64(count)
		line = append(line, geometry.Polar(geometry.Point{}, 400, at), geometry.Polar(geometry.Point{}, 400+0.3*math.Pow(1.02, float64(k)), at+180/float64(count)))
	}
	return line
}

// An outline has at most 300 points, the edge of an opening at most 60; hardly more are
// left out than have to be (limits of the design: common practice, no source).
func TestMostPoints(t *testing.T) {
	t.Parallel()
	found := Found{Shapes: []Shape{{Role: Port, Group: -1, Edge: spiky(110)}}}
	(&tracer{frame: perPixel(1, 1), options: Options{AsScanned: true}}).place(&found, spiky(260))
	if n := len(found.Outline); n > 300 || n < 240 {
		t.Errorf("the outline has %d points", n)
	}
	if n := len(found.Shapes[0].Edge); n > 60 || n < 40 {
		t.Errorf("the opening has %d points", n)
	}
}

// First principles: a hole is as large as its pixels are where it lies, which a camera
// aslant sees larger or smaller than others.
func TestSmallestHoleWhereItLies(t *testing.T) {
	t.Parallel()
	frame, err := FromRectangle([4]geometry.Point{{X: 30, Y: 10}, {X: 90, Y: 20}, {X: 110, Y: 110}, {X: 5, Y: 100}}, 20, 15)
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range [][2]int{{20, 20}, {90, 25}, {30, 90}, {95, 95}} {
		m := &mask{width: 120, height: 120, part: slices.Repeat([]bool{true}, 14400), tone: ToneDark}
		for i := range 49 {
			m.part[(at[1]+i/7)*120+at[0]+i%7] = false
		}
		mm := math.Sqrt(4*49/math.Pi) * frame.pixelMm(float64(at[0])+3, float64(at[1])+3)
		for share, holes := range map[float64]int{0.97: 1, 1.03: 0} {
			if p, err := m.findPart(frame, Options{SmallestMm: share * mm}); err != nil || len(p.holes) != holes || p.specks != 1-holes {
				t.Errorf("at %v, %g of its size: %d holes, %d specks (%v)", at, share, len(p.holes), p.specks, err)
			}
		}
	}
}

// Tukey's biweight: what lies off counts by (1 − (off/limit)²)², beyond the limit of
// 4.685 times the scatter not at all; what is left has to weigh as much as six points.
func TestWeightsOfACircle(t *testing.T) {
	t.Parallel()
	around := func(n int, radius float64) (points []geometry.Point) {
		for k := range n {
			points = append(points, geometry.Polar(geometry.Point{}, radius, 360*float64(k)/float64(n)))
		}
		return points
	}
	c := circle{radius: 10, scatter: 0.1}
	for off, counts := range map[float64]bool{0.3: true, 0.46: true, 0.48: false} {
		next, ok := c.improved(append(around(18, 10), around(4, 10+off)...))
		weight := math.Pow(1-off*off/0.4685/0.4685, 2)
		if !counts {
			weight = 0
		}
		scatter := math.Sqrt(4 * weight * off * off / (18 + 4*weight))
		radius := 10 + 4*weight*off/(18+4*weight)
		if !ok || math.Abs(next.scatter-scatter) > 1e-9 || math.Abs(next.radius-radius) > 1e-9 || next.centre.Distance(geometry.Point{}) > 1e-9 {
			t.Errorf("%g off: %+v, want a scatter of %g, a radius of %g", off, next, scatter, radius)
		}
	}
	for n, want := range map[int]bool{5: false, 6: true} {
		if _, ok := c.improved(around(n, 10)); ok != want {
			t.Errorf("%d points: %v", n, ok)
		}
	}
}

// The greys of an edge are the means of the last three places on either side, half a
// pixel apart from 3 to 4 pixels off: first principles, on greys that go on changing.
func TestGreysBesideAnEdge(t *testing.T) {
	t.Parallel()
	p := image.NewGray(image.Rect(0, 0, 40, 40))
	column := func(x int) uint8 {
		if x < 20 {
			return uint8(2 * x * x / 10)
		}
		return uint8(255 - 2*(40-x)*(40-x)/10)
	}
	for i := range p.Pix {
		p.Pix[i] = column(i % 40)
	}
	tr := &tracer{picture: p, mask: &mask{width: 40, height: 40}}
	grey := func(x int) float64 { return float64(column(x)) }
	in := ((grey(15)+grey(16))/2 + grey(16) + (grey(16)+grey(17))/2) / 3
	out := ((grey(22)+grey(23))/2 + grey(23) + (grey(23)+grey(24))/2) / 3
	if _, step := tr.profile(20, 20, 1, 0); math.Abs(step-(in-out)) > 1e-9 {
		t.Errorf("a step of %g, want %g", step, in-out)
	}
}

// A known distance has 50 pixels at the least, and the error says so.
func TestShortKnownDistance(t *testing.T) {
	t.Parallel()
	for pixels, want := range map[float64]bool{49.9: false, 50: true} {
		_, _, err := FromKnown([]Known{{To: geometry.Point{X: pixels}, Mm: 10}})
		var f finding.Finding
		if (err == nil) != want || err != nil && (!errors.As(err, &f) || f.Code != KnownShort || f.Values["least"] != 50) {
			t.Errorf("%g pixels: %v", pixels, err)
		}
	}
}
