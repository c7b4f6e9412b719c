package scenetest_test

import (
	"bytes"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"drawdown/geometry/testkit"
	"drawdown/render/pdf"
	"drawdown/render/png"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/svg"
)

const (
	dpi   = 300
	block = 8 // pixels
)

func decode(t *testing.T, file []byte) image.Image {
	t.Helper()
	im, _, err := image.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return im
}

// averages returns the mean lightness of each block of pixels: two rasterisers
// never agree by the pixel, but they put the same ink into the same block.
func averages(im image.Image, size image.Point) []int {
	across, down := size.X/block, size.Y/block
	out := make([]int, across*down)
	for y := range down * block {
		for x := range across * block {
			r, g, b, _ := im.At(im.Bounds().Min.X+x, im.Bounds().Min.Y+y).RGBA()
			out[y/block*across+x/block] += int(r+g+b) / 3 >> 8
		}
	}
	for i := range out {
		out[i] /= block * block
	}
	return out
}

// farthest compares two pictures by blocks.
func farthest(t *testing.T, a, b image.Image) (most, over40 int) {
	t.Helper()
	sa, sb := a.Bounds().Size(), b.Bounds().Size()
	if d := sa.Sub(sb); d.X < -1 || d.X > 1 || d.Y < -1 || d.Y > 1 {
		t.Fatalf("sizes differ: %v and %v", sa, sb)
	}
	size := image.Pt(min(sa.X, sb.X), min(sa.Y, sb.Y))
	of, other := averages(a, size), averages(b, size)
	for i := range of {
		d := max(of[i]-other[i], other[i]-of[i])
		if d > 40 {
			over40++
		}
		most = max(most, d)
	}
	return most, over40
}

func painted(t *testing.T, page scene.Page) image.Image {
	t.Helper()
	var b bytes.Buffer
	if err := png.Write(&b, page, dpi); err != nil {
		t.Fatal(err)
	}
	return decode(t, b.Bytes())
}

func printed(t *testing.T, doc scene.Document) image.Image {
	t.Helper()
	program := testkit.Program(t, "pdftoppm")
	var b bytes.Buffer
	if err := pdf.Write(&b, doc, time.Time{}); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(program, "-r", "300", "-png", "-")
	cmd.Stdin = &b
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	return decode(t, out)
}

func TestPicturePrintsAsTheFile(t *testing.T) {
	t.Parallel()
	doc := scenetest.Card()
	most, over40 := farthest(t, painted(t, doc.Pages[0]), printed(t, doc))
	t.Logf("blocks differ by up to %d, %d of them by more than 40", most, over40)
	if most > 45 || over40 > 5 {
		t.Errorf("blocks differ by up to %d (45 allowed), %d of them by more than 40 (5 allowed)", most, over40)
	}
}

// The comparison must see what a reader would see.
func TestComparisonSees(t *testing.T) {
	t.Parallel()
	clean := painted(t, scenetest.Card().Pages[0])
	for name, change := range map[string]func(items []scene.Item) []scene.Item{
		"a number moved by 0.5 mm": alter("3", func(x *scene.Text) { x.At.X += 0.5 }),
		"a figure misread":         alter("90°", func(x *scene.Text) { x.Content = "96°" }),
		"± turned to +": alter("µ = 0.12 ± 0.02, F = 38 kN, M10 (8.8), −5 °C … +40 °C, ½ turn → stop.", func(x *scene.Text) {
			x.Content = "µ = 0.12 + 0.02, F = 38 kN, M10 (8.8), −5 °C … +40 °C, ½ turn → stop."
		}),
		"an upward text moved": alter("Front of the engine ↑ exhaust side", func(x *scene.Text) { x.At.Y += 0.5 }),
		"an item left out":     func(items []scene.Item) []scene.Item { return append(items[:5:5], items[6:]...) },
	} {
		page := scenetest.Card().Pages[0]
		page.Items = change(page.Items)
		if most, over40 := farthest(t, clean, painted(t, page)); most <= 45 && over40 <= 5 {
			t.Errorf("%s: goes unseen (up to %d, %d over 40)", name, most, over40)
		}
	}
}

// alter changes the first text of the given content.
func alter(content string, change func(*scene.Text)) func([]scene.Item) []scene.Item {
	return func(items []scene.Item) []scene.Item {
		for i, it := range items {
			if x, ok := it.(scene.Text); ok && x.Content == content {
				change(&x)
				items[i] = x
				return items
			}
		}
		return items
	}
}

// Shapes alone are compared: without our typeface a viewer sets text in another.
func TestVectorPicturePaintsAsThePicture(t *testing.T) {
	t.Parallel()
	program := testkit.Program(t, "rsvg-convert")
	page := scenetest.Card().Pages[0]
	shapes := page.Items[:0:0]
	for _, it := range page.Items {
		if _, ok := it.(scene.Shape); ok {
			shapes = append(shapes, it)
		}
	}
	page.Items = shapes
	var b bytes.Buffer
	if err := svg.Write(&b, page); err != nil {
		t.Fatal(err)
	}
	in := filepath.Join(t.TempDir(), "card.svg")
	if err := os.WriteFile(in, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program, "-d", "300", "-p", "300", in).Output()
	if err != nil {
		t.Fatal(err)
	}
	most, over40 := farthest(t, painted(t, page), decode(t, out))
	t.Logf("blocks differ by up to %d, %d of them by more than 40", most, over40)
	if most > 45 || over40 > 5 {
		t.Errorf("blocks differ by up to %d (45 allowed), %d of them by more than 40 (5 allowed)", most, over40)
	}
}

func TestCardIsWhatItSays(t *testing.T) {
	t.Parallel()
	lines := 0
	for _, it := range scenetest.Card().Pages[0].Items {
		if _, ok := it.(scene.Text); ok {
			lines++
		}
	}
	if lines != scenetest.Strings {
		t.Errorf("the card has %d lines of text, Strings says %d", lines, scenetest.Strings)
	}
}
