package proof_test

import (
	"image"
	"math"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/proof"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
)

// found traces a drawn plate: x, y and diameter of its holes, in mm.
func found(t *testing.T, width, height float64, holes [][3]float64) (*image.Gray, trace.Found) {
	t.Helper()
	const perMM = 4
	p := image.NewGray(image.Rect(0, 0, int((width+10)*perMM), int((height+10)*perMM)))
	for y := range p.Rect.Dy() {
		for x := range p.Rect.Dx() {
			mx, my := (float64(x)+0.5)/perMM-width/2-5, height/2+5-(float64(y)+0.5)/perMM
			inside := math.Min(width/2-math.Abs(mx), height/2-math.Abs(my))
			for _, h := range holes {
				inside = math.Min(inside, math.Hypot(mx-h[0], my-h[1])-h[2]/2)
			}
			p.Pix[y*p.Stride+x] = uint8(150 - 90*math.Max(-1, math.Min(1, inside*perMM)))
		}
	}
	f, err := trace.Trace(p, trace.Scale{FileX: perMM * 25.4, FileY: perMM * 25.4}, trace.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p, f
}

func grid(columns, rows int, pitch, diameter float64) [][3]float64 {
	var holes [][3]float64
	for _, p := range geometry.Grid(columns, rows, pitch, pitch, geometry.Point{}) {
		holes = append(holes, [3]float64{p.X, p.Y, diameter})
	}
	return holes
}

// No text meets another, a mark or the margin, on small, wide, high, large and
// crowded parts.
func TestLayout(t *testing.T) {
	for _, c := range []struct {
		name          string
		width, height float64
		holes         [][3]float64
		want          int // shapes
	}{
		{"small", 40, 30, [][3]float64{{-12, 8, 5}, {13, -7, 5}, {2, 1, 8}}, 3},
		{"wide", 260, 60, grid(6, 2, 40, 7), 12},
		{"high", 90, 240, grid(2, 6, 38, 8.4), 12},
		{"large", 420, 300, append(grid(5, 4, 70, 11), [3]float64{35, 35, 40}), 21},
		{"crowded", 110, 110, grid(14, 14, 7, 3.5), 196},
	} {
		picture, f := found(t, c.width, c.height, c.holes)
		if len(f.Shapes) != c.want {
			t.Fatalf("%s: %d shapes, want %d", c.name, len(f.Shapes), c.want)
		}
		f.Shapes[0].Doubts = append(f.Shapes[0].Doubts, finding.Warned(trace.Torn, finding.Values{"round": 0.81}))
		f.Doubts = append(f.Doubts, finding.Warned(trace.CutOff, nil))
		in := proof.Traced{Title: "A plate with a long name that has to be cut somewhere before the margin comes, by the typesetter", Found: f}
		for _, paper := range sheet.Papers {
			for _, w := range wordstest.All() {
				laid := proof.Lay(in, sheet.Request{Paper: paper, Words: w})
				for _, fault := range scenetest.CheckLayout(laid.Page) {
					t.Errorf("%s on %s in %s: %s", c.name, paper.Name, w.Language, fault)
				}
				if err := scene.Check(laid.Page); err != nil {
					t.Errorf("%s on %s in %s: %v", c.name, paper.Name, w.Language, err)
				}
			}
		}
		sheet := proof.Lay(in, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
		marks := map[string]bool{}
		for _, item := range sheet.Page.Items {
			if s, ok := item.(scene.Shape); ok && s.Tag.Role == scene.Mark {
				marks[s.Tag.Name] = true
			}
		}
		fasteners := 0
		for _, s := range f.Shapes {
			if s.Role == trace.Fastener {
				fasteners++
			}
		}
		if len(marks) != fasteners {
			t.Errorf("%s: %d marks for %d holes", c.name, len(marks), fasteners)
		}
		width, height := int(sheet.Page.Width*8), int(sheet.Page.Height*8)
		checkUnder(t, c.name, sheet, sheet.Under(picture, width, height))
	}
}

// checkUnder looks at the picture below each mark: ground in the middle of a
// hole, part just outside of it.
func checkUnder(t *testing.T, name string, sheet proof.Overlay, under *image.Gray) {
	t.Helper()
	for _, item := range sheet.Page.Items {
		s, ok := item.(scene.Shape)
		if !ok || s.Tag.Role != scene.Mark {
			continue
		}
		b := s.Path.Bounds()
		c := b.Centre()
		level := func(x, y float64) uint8 { return under.GrayAt(int(x*8), int(y*8)).Y }
		if in, out := level(c.X, c.Y), level(b.Right+0.5, c.Y); in < 230 || out > 190 {
			t.Errorf("%s: %s covers %d, beside it is %d", name, s.Tag.Name, in, out)
		}
	}
}

// The lines of the head and the legend are whole in every language, full size
// and reduced, on every paper.
func TestNothingIsCutOff(t *testing.T) {
	for name, c := range map[string]struct {
		side  float64
		holes [][3]float64
	}{"full size": {40, [][3]float64{{-12, 8, 5}, {13, -7, 5}}}, "reduced": {300, grid(3, 3, 90, 9)}} {
		_, f := found(t, c.side, c.side, c.holes)
		for _, w := range wordstest.All() {
			for _, paper := range sheet.Papers {
				all := ""
				for _, item := range proof.Lay(plate(f), sheet.Request{Paper: paper, Words: w}).Page.Items {
					if text, ok := item.(scene.Text); ok {
						all += text.Content + " "
					}
				}
				legend := strings.ReplaceAll(w.Proof.Legend, "\u00a0", " ")
				if strings.Contains(all, "…") || !strings.Contains(strings.ReplaceAll(all, "\u00a0", " "), legend) {
					t.Errorf("%s on %s in %s: cut off: %s", name, paper.Name, w.Language, all)
				}
			}
		}
	}
}

func plate(f trace.Found) proof.Traced {
	return proof.Traced{Title: "Plate", Found: f}
}

func TestCounts(t *testing.T) {
	of := func(roles ...trace.Role) (f trace.Found) {
		for _, r := range roles {
			f.Shapes = append(f.Shapes, trace.Shape{Role: r})
		}
		return f
	}
	for want, f := range map[string]trace.Found{
		"nothing found": of(),
		"1 bolt hole":   of(trace.Fastener),
		"2 bolt holes, 1 dowel, 2 bores, 1 opening, 2 spots left out": of(trace.Spot, trace.Fastener, trace.Bore, trace.Dowel, trace.Bore, trace.Port, trace.Fastener, trace.Spot),
	} {
		if got := proof.Counts(words.English(), f); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What a person dropped is crossed, with its id, and counts for nothing.
func TestDroppedIsCrossed(t *testing.T) {
	t.Parallel()
	_, f := found(t, 120, 60, grid(3, 2, 30, 8))
	gone := f.Shapes[5]
	gone.Role = trace.Spot
	f.Shapes, f.Dropped = f.Shapes[:5], []trace.Shape{gone}
	laid := proof.Lay(proof.Traced{Title: "Plate", Found: f}, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	lines, label := 0, false
	for _, item := range laid.Page.Items {
		switch s := item.(type) {
		case scene.Shape:
			if s.Tag.Name == gone.ID && s.Stroke == scene.Black {
				lines++
			}
		case scene.Text:
			label = label || s.Content == gone.ID
		}
	}
	if lines != 2 || !label || proof.Counts(words.English(), f) != "5 bolt holes" {
		t.Errorf("%d lines, label %v, %q", lines, label, proof.Counts(words.English(), f))
	}
	for _, fault := range scenetest.CheckLayout(laid.Page) {
		t.Error(fault)
	}
}
