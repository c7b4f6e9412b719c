package png

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	stdpng "image/png"
	"math"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"pgregory.net/rapid"

	"drawdown/geometry/testkit"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/stopwatch"
	"drawdown/render/words"
)

func written(t testing.TB, page scene.Page, dpi int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, page, dpi); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func decoded(t testing.TB, file []byte) *image.RGBA {
	t.Helper()
	im, err := stdpng.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	indexed, ok := im.(*image.Paletted)
	if !ok {
		t.Fatalf("the picture is a %T, not indexed", im)
	}
	out := image.NewRGBA(im.Bounds())
	for i, index := range indexed.Pix {
		c := color.RGBAModel.Convert(indexed.Palette[index]).(color.RGBA)
		out.Pix[4*i], out.Pix[4*i+1], out.Pix[4*i+2], out.Pix[4*i+3] = c.R, c.G, c.B, c.A
	}
	return out
}

// differ returns the largest difference in a channel outside the blind area,
// and the number of pixels that differ by more than over.
func differ(t testing.TB, a, b *image.RGBA, blind image.Rectangle, over int) (largest, many int) {
	t.Helper()
	if a.Rect != b.Rect {
		t.Fatalf("sizes differ: %v and %v", a.Rect, b.Rect)
	}
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			if (image.Point{X: x, Y: y}).In(blind) {
				continue
			}
			i, d := a.PixOffset(x, y), 0
			for k := range 4 {
				d = max(d, int(a.Pix[i+k])-int(b.Pix[i+k]), int(b.Pix[i+k])-int(a.Pix[i+k]))
			}
			largest = max(largest, d)
			if d > over {
				many++
			}
		}
	}
	return largest, many
}

// upwardBox is the area of the card's upward text, with a margin.
func upwardBox(page scene.Page, perMM float64) image.Rectangle {
	for _, it := range page.Items {
		if t, ok := it.(scene.Text); ok && t.Upward {
			x, y, w := t.At.X*perMM, t.At.Y*perMM, (t.Width/2+t.Size)*perMM
			return image.Rect(int(x-t.Size*perMM), int(y-w), int(x+t.Size*perMM/2), int(y+w))
		}
	}
	return image.Rectangle{}
}

var looks = []struct {
	name string
	page scene.Page
	dpi  int
	most int // difference of a pixel of a band
}{
	{"card 300", scenetest.Card().Pages[0], 300, 24},
	{"card 96", scenetest.Card().Pages[0], 96, 24},
	// gg omits pieces under 1/8 pixel. A dash that ends in one may be that much
	// shorter if a point above the band is rounded the other way.
	{"dashes", dashes(), 96, 40},
	{"marks", scenetest.Marks(400).Pages[0], 150, 24},
}

// dashes is a page of dashed lines over many bands. They have corners but no
// curves: along a curve gg accumulates the rounding of many short pieces, so
// that its dashes drift.
func dashes() scene.Page {
	page := scene.Page{Width: 200, Height: 200}
	for i := range 9 {
		path := scene.Polygon(100, 100, 90-9*float64(i), 40-3*i, 10)
		page.Items = append(page.Items, scene.Shape{Path: path, Stroke: scene.Black, Width: 0.5, Dash: 2.5})
	}
	return page
}

// The bands must match the page drawn by gg in one piece, to a tenth of a
// pixel. Differences: gg divides a curve into pieces of one pixel and rounds
// each end to 1/64 pixel, which turns the edge of a stroke and shifts it by
// some 0.05 pixel. Here the pieces are longer, and deviate by 0.03 pixel from
// the curve. Neither is closer to the picture drawn eight times as fine and
// averaged. Upward text is excluded, because gg turns and blurs the finished
// letters; TestUpward covers it.
func TestBandsAreAsPlainGG(t *testing.T) {
	for _, c := range looks {
		if stopwatch.Raced && c.dpi > 100 {
			continue // the fine ones take a minute under the race detector
		}
		want := plain(t, c.page, c.dpi)
		perMM := float64(c.dpi) / mmPerInch
		got := image.NewRGBA(want.Rect)
		p := newPainter(c.page, want.Rect.Dx(), want.Rect.Dy(), perMM)
		for y := 0; y < want.Rect.Dy(); y += bandRows {
			end := min(y+bandRows, want.Rect.Dy())
			p.paint(y, end, make([]byte, bandRows*(want.Rect.Dx()+1)))
			copy(got.Pix[y*got.Stride:end*got.Stride], p.canvas.Pix[padRows*p.canvas.Stride:])
		}
		largest, many := differ(t, got, want, upwardBox(c.page, perMM), 8)
		t.Logf("%s: largest difference %d, %d pixels over 8", c.name, largest, many)
		if largest > c.most || many > len(got.Pix)/4/200 {
			t.Errorf("%s: largest difference %d (%d allowed), %d pixels over 8 (1 in 200 allowed)", c.name, largest, c.most, many)
		}
	}
}

// The file must look like the page drawn by gg. One more difference: 256
// colours cannot hold every blend of three inks. Where a blue line meets a
// black ring on white, the blend is within 32 of 255 in the worst case, and one
// between two colours may be either.
func TestLooksAsPlainGG(t *testing.T) {
	for _, c := range looks {
		if stopwatch.Raced && c.dpi > 100 {
			continue // the fine ones take a minute under the race detector
		}
		got, want := decoded(t, written(t, c.page, c.dpi)), plain(t, c.page, c.dpi)
		largest, many := differ(t, got, want, upwardBox(c.page, float64(c.dpi)/mmPerInch), 24)
		t.Logf("%s: largest difference %d, %d pixels over 24", c.name, largest, many)
		if largest > 48 || many > len(got.Pix)/4/10000 {
			t.Errorf("%s: largest difference %d (48 allowed), %d pixels over 24 (1 in 10,000 allowed)", c.name, largest, many)
		}
	}
}

// Upward text is level text turned a quarter anticlockwise: (x, y) on a page of
// width W moves to (y, W−x). At 254 dpi a millimetre is ten pixels, so that
// both pages are on the same grid.
func TestUpward(t *testing.T) {
	const s = "Front ↑ Øg·N·m"
	for _, anchor := range []scene.Anchor{scene.Start, scene.Middle, scene.End} {
		text := scene.Text{
			At: scene.Point{X: 31.13, Y: 12.37}, Size: 4, Width: font.Width(s, scene.Bold, 4),
			Weight: scene.Bold, Anchor: anchor, Ink: scene.Accent, Content: s,
		}
		level := scene.Page{Width: 60, Height: 30, Items: []scene.Item{text}}
		text.Upward, text.At = true, scene.Point{X: 12.37, Y: 60 - 31.13}
		upward := scene.Page{Width: 30, Height: 60, Items: []scene.Item{text}}

		a, b := decoded(t, written(t, level, 254)), decoded(t, written(t, upward, 254))
		turned := image.NewRGBA(b.Rect)
		for y := range a.Rect.Dy() {
			for x := range a.Rect.Dx() {
				turned.Set(y, a.Rect.Dx()-1-x, a.At(x, y))
			}
		}
		// Positions are rounded to 1/64 pixel: 4 of 255, and a step of the
		// palette.
		if largest, _ := differ(t, turned, b, image.Rectangle{}, 0); largest > 16 {
			t.Errorf("anchor %d: differs by up to %d from turned level text", anchor, largest)
		}
		if _, many := differ(t, b, plain(t, scene.Page{Width: 30, Height: 60}, 254), image.Rectangle{}, 100); many < 500 {
			t.Errorf("anchor %d: only %d pixels are painted", anchor, many)
		}
	}
}

// The golden picture is our own output, inspected by eye. It is compared by
// pixels, since compression may change with the library; processors with fused
// multiply-add round a few of them differently.
func TestGolden(t *testing.T) {
	path := filepath.Join("testdata", "card-75dpi.png")
	file := written(t, scenetest.Card().Pages[0], 75)
	golden := testkit.GoldenBytes(t, path, file)
	largest, many := differ(t, decoded(t, file), decoded(t, golden), image.Rectangle{}, 24)
	if many > 54 { // 0.01 % of 620 × 877 pixels
		t.Errorf("%d pixels differ by more than 24 from %s, by up to %d", many, path, largest)
	}
}

// The sizes and the density follow from 25.4 mm an inch.
func TestChunks(t *testing.T) {
	page := scene.Page{Width: 210, Height: 297}
	for _, c := range []struct {
		dpi, width, height int
		perMetre           uint32
	}{
		{36, 298, 421, 1417}, {150, 1240, 1754, 5906}, {300, 2480, 3508, 11811}, {600, 4961, 7016, 23622},
	} {
		file := written(t, page, c.dpi)
		if !bytes.HasPrefix(file, []byte("\x89PNG\r\n\x1a\n")) {
			t.Fatal("no PNG signature")
		}
		var order []string
		for rest := file[8:]; len(rest) > 0; {
			n := binary.BigEndian.Uint32(rest)
			kind, body := string(rest[4:8]), rest[8:8+n]
			if sum := crc32.ChecksumIEEE(rest[4 : 8+n]); sum != binary.BigEndian.Uint32(rest[8+n:]) {
				t.Errorf("%d dpi: chunk %s has a wrong checksum", c.dpi, kind)
			}
			if len(order) == 0 || order[len(order)-1] != kind {
				order = append(order, kind)
			}
			if kind == "pHYs" {
				x, y := binary.BigEndian.Uint32(body), binary.BigEndian.Uint32(body[4:])
				if x != c.perMetre || y != c.perMetre || body[8] != 1 {
					t.Errorf("%d dpi: pHYs says %d × %d, unit %d; want %d, unit 1", c.dpi, x, y, body[8], c.perMetre)
				}
			}
			rest = rest[12+n:]
		}
		if got := strings.Join(order, " "); got != "IHDR pHYs PLTE IDAT IEND" {
			t.Errorf("%d dpi: chunks are %s", c.dpi, got)
		}
		if got := decoded(t, file).Rect.Size(); got != image.Pt(c.width, c.height) {
			t.Errorf("%d dpi: picture is %v, want %d × %d", c.dpi, got, c.width, c.height)
		}
	}
}

func TestSameBytesOnAnyNumberOfCores(t *testing.T) {
	page := scenetest.Card().Pages[0]
	var first []byte
	for _, cores := range []int{1, 2, 3, 1} {
		before := runtime.GOMAXPROCS(cores)
		file := written(t, page, 150)
		runtime.GOMAXPROCS(before)
		if first == nil {
			first = file
		}
		if !bytes.Equal(first, file) {
			t.Errorf("on %d cores the bytes differ", cores)
		}
	}
}

func TestManyAtOnce(t *testing.T) {
	page := scenetest.Card().Pages[0]
	want := written(t, page, 72)
	var all sync.WaitGroup
	for range 6 {
		all.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, page, 72); err != nil || !bytes.Equal(b.Bytes(), want) {
				t.Errorf("written at once with others, the picture differs (%v)", err)
			}
		})
	}
	all.Wait()
}

func TestTurnsDown(t *testing.T) {
	item := func(it scene.Item) scene.Page {
		return scene.Page{Name: "card", Width: 210, Height: 297, Items: []scene.Item{it}}
	}
	line := func(x float64) scene.Page {
		return item(scene.Shape{Path: scene.Path{{}, {Verb: scene.Line, P: [3]scene.Point{{X: x}}}}, Stroke: scene.Black, Width: 1})
	}
	for _, c := range []struct {
		name, want string
		page       scene.Page
		dpi        int
	}{
		{"coarse", "36 to 1200 dpi", item(scene.Shape{}), 35},
		{"fine", "36 to 1200 dpi", item(scene.Shape{}), 1201},
		{"mistyped", "36 to 1200 dpi", item(scene.Shape{}), 3000},
		{"poster", "choose 311 dpi or less", scene.Page{Name: "a", Width: 841, Height: 1189}, 600},
		{"no page", "above 0", scene.Page{}, 300},
		{"NaN", "NaN", line(math.NaN()), 300},
		{"endless", "Inf", line(math.Inf(-1)), 300},
		{"far", "1e+08", line(1e8), 300},
		{"emoji", "U+1F527", item(scene.Text{Size: 3, Ink: scene.Black, Content: "🔧"}), 300},
	} {
		var b bytes.Buffer
		err := Write(&b, c.page, c.dpi)
		if err == nil || !strings.Contains(words.English().Error(err), c.want) {
			t.Errorf("%s: got %v, want an error with %q", c.name, err, c.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: %d bytes written in spite of the error", c.name, b.Len())
		}
	}
}

// Anything within the limits is painted, however unusual.
func TestPaintsTheOdd(t *testing.T) {
	far := scene.Furthest
	page := scene.Page{Width: 40, Height: 30, Items: []scene.Item{
		scene.Shape{Fill: scene.Black, Stroke: scene.Black, Width: 1},
		scene.Shape{Path: scene.Path{{}}, Fill: scene.Black, Stroke: scene.Black, Width: 1},
		scene.Shape{Path: scene.Circle(5, 5, 0), Fill: scene.Black, Stroke: scene.Black, Width: far, Dash: 0.1},
		scene.Shape{Path: scene.Polyline([]scene.Point{{X: -far, Y: -far}, {X: far, Y: far}, {X: far, Y: -far}}, true), Fill: scene.Tint, Stroke: scene.Black, Width: 1},
		scene.Text{At: scene.Point{X: -far, Y: far}, Size: 1000, Ink: scene.Black, Content: "off"},
		scene.Text{At: scene.Point{X: 5, Y: 5}, Size: 1e-9, Ink: scene.Black, Content: "small", Upward: true},
		scene.Text{At: scene.Point{X: 5, Y: 5}, Size: 3, Content: "no ink"},
		scene.Text{At: scene.Point{X: 5, Y: 5}, Size: 3, Ink: scene.Black, Content: "", Upward: true},
	}}
	decoded(t, written(t, page, 72))
	decoded(t, written(t, scene.Page{Width: 0.001, Height: 0.001}, 36))
}

// broken accepts some bytes and then fails.
type broken struct{ left int }

var errFull = errors.New("the disk is full")

func (b *broken) Write(p []byte) (int, error) {
	if b.left -= len(p); b.left < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestPassesOnWriteErrors(t *testing.T) {
	page := scenetest.Card().Pages[0]
	whole := len(written(t, page, 150))
	before := runtime.NumGoroutine()
	for left := 0; left < whole; left += 20000 {
		if err := Write(&broken{left}, page, 150); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes: got %v, want %v", left, err, errFull)
		}
	}
	for i := 0; i < 5000 && runtime.NumGoroutine() > before; i++ {
		time.Sleep(time.Millisecond) // on a busy machine they end later
	}
	if after := runtime.NumGoroutine(); after > before {
		t.Errorf("%d goroutines are left over", after-before)
	}
}

// For any path, a fill with blocks cut out has the pixels of a plain fill.
func TestCutOutFillsAreTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		// Inside the page: gg itself draws a shape across its edge wrongly.
		place := rapid.Float64Range(0, 12)
		page := scene.Page{Width: 12, Height: 12}
		var path scene.Path
		for range rapid.IntRange(1, 3).Draw(rt, "sub-paths") {
			path.MoveTo(place.Draw(rt, "x"), place.Draw(rt, "y"))
			for range rapid.IntRange(2, 7).Draw(rt, "corners") {
				path.LineTo(place.Draw(rt, "x"), place.Draw(rt, "y"))
			}
			if rapid.Bool().Draw(rt, "closed") {
				path.Close()
			}
		}
		page.Items = []scene.Item{scene.Shape{Path: path, Fill: scene.Black}}
		p := newPainter(page, 120, 120, 10)
		p.paint(0, 120, make([]byte, 121*120))
		got := p.canvas.SubImage(image.Rect(0, padRows, 120, 120+padRows)).(*image.RGBA)
		want := plain(t, page, 254)
		for y := range 120 {
			for x := range 120 {
				a, b := got.RGBAAt(x, y+padRows), want.RGBAAt(x, y)
				if a != b {
					rt.Fatalf("pixel (%d, %d) is %v, want %v", x, y, a, b)
				}
			}
		}
	})
}

// A block is completely inside: every corner has the stated winding number.
func TestCoresOfARing(t *testing.T) {
	ring := append(scene.Circle(200, 200, 150), scene.Circle(200, 200, 50)...)
	path := outlines(ring, func(q scene.Point) scene.Point { return q })
	found := cores(edges(nil, path), image.Rect(0, 0, 400, 400))
	area := 0
	for _, c := range found {
		area += c.Dx() * c.Dy()
		for _, q := range []image.Point{c.Min, c.Max, {X: c.Min.X, Y: c.Max.Y}, {X: c.Max.X, Y: c.Min.Y}} {
			r := math.Hypot(float64(q.X-200), float64(q.Y-200))
			// Both circles turn the same way, so the middle has winding number
			// 2.
			if outside := r > 150; outside || c.winding*c.winding == 1 && r < 50 || c.winding*c.winding == 4 && r > 50 {
				t.Errorf("block %v, wound round %d times, has a corner %.1f from the middle", c.Rectangle, c.winding, r)
			}
		}
	}
	if disc := math.Pi * 150 * 150; float64(area) < 0.75*disc {
		t.Errorf("the blocks cover %d of %.0f pixels", area, disc)
	}
}

// gg must have nothing left to paint in a block, in either direction of the
// path.
func TestCutOutLeavesNothing(t *testing.T) {
	square := scene.Rect(2, 2, 8, 8, 0)
	back := scene.Polyline([]scene.Point{{X: 2, Y: 2}, {X: 2, Y: 10}, {X: 10, Y: 10}, {X: 10, Y: 2}}, true)
	for name, path := range map[string]scene.Path{"clockwise": square, "anticlockwise": back} {
		p := newPainter(scene.Page{Width: 12, Height: 12}, 120, 120, 10)
		p.blank()
		lines := outlines(path, p.place)
		found := cores(edges(nil, lines), p.canvas.Rect)
		p.trace(lines, bandMargin)
		for _, c := range found {
			p.cutOut(c)
		}
		p.dc.SetColor(color.Black)
		p.dc.Fill()
		if inside, rim := p.canvas.RGBAAt(60, 60), p.canvas.RGBAAt(20, 60); inside.R != 255 || rim.R != 0 {
			t.Errorf("%s: inside is %v, the rim is %v", name, inside, rim)
		}
	}
}

func TestCurvesAreCloselyFollowed(t *testing.T) {
	for _, r := range []float64{1, 10, 100, 1000, 10000} {
		o := outlines(scene.Circle(0, 0, r), func(q scene.Point) scene.Point { return q })[0]
		for i, q := range o.points[1:] {
			m := math.Hypot((q.X+o.points[i].X)/2, (q.Y+o.points[i].Y)/2)
			// The cubic itself deviates from the circle by 0.03 % of the
			// radius.
			if short := r - m; short > straight+0.0003*r {
				t.Errorf("radius %g: a chord lies %.3f inside the circle", r, short)
			}
		}
	}
}

func TestPalette(t *testing.T) {
	if n := len(palette()); n > 256 || n < 240 {
		t.Errorf("the palette has %d colours", n)
	}
	for k := scene.Black; k < scene.Inks; k++ {
		if got := palette()[nearest(colour(k))]; got != colour(k) {
			t.Errorf("%v is kept as %v", k, got)
		}
	}
	if palette()[0] != colour(scene.White) {
		t.Error("index 0 is not white")
	}
	// A blend of two inks is within half a step of its ramp: 2158 levels on 250
	// entries, so a step is 9 levels.
	rapid.Check(t, func(rt *rapid.T) {
		ink := rapid.IntRange(int(scene.Black), int(scene.White))
		a, b := scene.Ink(ink.Draw(rt, "a")), scene.Ink(ink.Draw(rt, "b"))
		c := blend(colour(a), colour(b), rapid.IntRange(0, 255).Draw(rt, "part"), 255)
		if got := palette()[nearest(c)]; apart(got, c) > 8 {
			rt.Fatalf("%v is kept as %v", c, got)
		}
	})
}
