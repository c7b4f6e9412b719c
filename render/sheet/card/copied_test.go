package card_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/render/font"
	paint "drawdown/render/png"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
)

const copyDPI = 300

// A card copied twice in black and white stays readable: a text recognition
// program reads back every number of the order and every figure of the stages.
//
// Each page is painted at 300 dpi, then twice blurred and thresholded at half.
// The digits are cut out by their positions in the scene, since rings and
// arrows are not text. Each cutting is put three times side by side, since the
// program takes a single 1 for a speck, and is read as one line of digits. The
// number must come back at least twice. A plain run copies one side of every
// third card, in turn.
func TestCopiedTwiceEveryFigureIsRead(t *testing.T) {
	t.Parallel()
	var pages []scene.Page
	for n, name := range patterns.Builtin() {
		sides := card.BothSides
		if !testkit.Full() {
			if n%3 > 0 {
				continue
			}
			sides = []card.Sides{card.TightenSide, card.LoosenSide}[n%2]
		}
		document, _ := card.Document(planOf(t, name), sides, sheettest.English(sheettest.Paper(t, "a4")))
		for _, page := range document.Pages {
			page.Name = name + " " + page.Name
			pages = append(pages, page)
		}
	}
	faults, _ := unread(t, pages)
	for _, fault := range faults {
		t.Error(fault)
	}
}

// First principles: print that is too small, or printed over, cannot be read
// after two copies. The test above must report it.
func TestSpoiledFiguresAreReported(t *testing.T) {
	t.Parallel()
	document, _ := card.Document(planOf(t, "p4-head"), card.TightenSide, sheettest.English(sheettest.Paper(t, "a4")))
	whole, few := document.Pages[0], testkit.Samples(2, 5) // the program takes long over what it cannot recognize
	whole.Items = nil
	for _, text := range scenetest.Texts(document.Pages[0]) {
		if text.Tag.Role == scene.Number && text.Tag.Core && len(whole.Items) < few {
			text.Ink = scene.Black // the first number is white on a mark that is missing here
			whole.Items = append(whole.Items, text)
		}
	}
	small, struck := whole, whole
	small.Items = scene.Mapped(whole.Items, nil, func(text scene.Text) scene.Text {
		text.Size, text.Width = text.Size/8, text.Width/8
		return text
	})
	struck.Items = slices.Clone(whole.Items)
	for _, d := range digitsOf(whole) {
		for _, up := range []float64{0.2, 0.4, 0.6, 0.8} {
			y := d.box.Top + up*d.box.Height()
			line := scene.Polyline([]scene.Point{{X: d.box.Left, Y: y}, {X: d.box.Right, Y: y}}, false)
			struck.Items = append(struck.Items, scene.Shape{Path: line, Stroke: scene.Black, Width: 0.9})
		}
	}
	for _, c := range []struct {
		what string
		page scene.Page
		want int // number of figures reported
	}{{"whole", whole, 0}, {"too small", small, few}, {"printed over", struck, few}} {
		if faults, of := unread(t, []scene.Page{c.page}); of != few || len(faults) != c.want {
			t.Errorf("%s: %d of %d figures are reported, want %d of %d: %q", c.what, len(faults), of, c.want, few, faults)
		}
	}
}

// unread returns a fault for every figure on the pages that is not read back
// after two copies, and the number of figures.
func unread(t *testing.T, pages []scene.Page) (faults []string, of int) {
	program := testkit.Program(t, "tesseract")
	var all []digits
	var pictures []*image.Gray // for one call of the program, which is slow to start
	for _, page := range pages {
		paper := painted(t, page)
		for _, d := range digitsOf(page) {
			d.page = page.Name
			all = append(all, d)
			pictures = append(pictures, cutOut(copiedTwice(paper, d.box), d.box))
		}
	}
	for k, got := range read(t, program, pictures) {
		if d := all[k]; strings.Count(got, d.says) < times-1 {
			faults = append(faults, fmt.Sprintf("page %s: %q at %.0f,%.0f, put %d times, is read as %q", d.page, d.says, d.box.Left, d.box.Top, times, got))
		}
	}
	return faults, len(all)
}

// digits is a run of digits on a page.
type digits struct {
	page string
	says string
	box  scene.Box
}

// digitsOf finds the numbers of the order and the figures of the stages. No
// other text has their size.
func digitsOf(page scene.Page) (all []digits) {
	for _, text := range scenetest.Texts(page) {
		if text.Tag.Role != scene.Number && text.Size != sheet.FigureEm {
			continue
		}
		line := text.Box()
		for from := 0; from < len(text.Content); {
			to := from
			for to < len(text.Content) && '0' <= text.Content[to] && text.Content[to] <= '9' {
				to++
			}
			if to > from {
				left := line.Left + font.Width(text.Content[:from], text.Weight, text.Size)
				right := line.Left + font.Width(text.Content[:to], text.Weight, text.Size)
				all = append(all, digits{says: text.Content[from:to], box: scene.Box{Left: left, Right: right, Top: text.At.Y - font.CapHeight*text.Size, Bottom: text.At.Y}})
			}
			from = to + 1
		}
	}
	return all
}

func painted(t *testing.T, page scene.Page) *image.Gray {
	picture, err := paint.Paint(page, copyDPI)
	if err != nil {
		t.Fatal(err)
	}
	var tones [256]uint8 // of the palette
	for k, ink := range picture.Palette {
		tones[k] = color.GrayModel.Convert(ink).(color.Gray).Y
	}
	grey := image.NewGray(picture.Bounds())
	for k, ink := range picture.Pix {
		grey.Pix[k] = tones[ink]
	}
	return grey
}

// copiedTwice is the area around a box on a page after two copies. The rest of
// the page is not needed: a copy depends only on what is within its blur.
func copiedTwice(page *image.Gray, box scene.Box) *image.Gray {
	const inked, around = copyDPI / 25.4, 16 // pixels around it, more than two blurs and an edge
	part := image.NewGray(image.Rect(int(box.Left*inked), int(box.Top*inked), int(box.Right*inked), int(box.Bottom*inked)).Inset(-around))
	draw.Draw(part, part.Bounds(), page, part.Bounds().Min, draw.Src)
	return copyOf(copyOf(part))
}

// copyOf blurs a picture over 5 × 5 pixels, 0.4 mm, like poor optics, and
// thresholds it at half.
func copyOf(from *image.Gray) *image.Gray {
	to, b := image.NewGray(from.Bounds()), from.Bounds()
	rows := make([]int, b.Dx()*b.Dy())
	const reach, width = 2, 5
	for y := range b.Dy() {
		for x := reach; x < b.Dx()-reach; x++ {
			for k := -reach; k <= reach; k++ {
				rows[y*b.Dx()+x] += int(from.Pix[y*from.Stride+x+k])
			}
		}
	}
	for y := range b.Dy() {
		for x := range b.Dx() {
			sum := 0
			for k := max(0, y-reach); k <= min(b.Dy()-1, y+reach); k++ {
				sum += rows[k*b.Dx()+x]
			}
			if sum > 255*width*width/2 {
				to.Pix[y*to.Stride+x] = 255
			}
		}
	}
	return to
}

const (
	digitHeight = 48 // pixels, to which all are scaled
	digitAir    = 24 // pixels of white around them
	times       = 3  // each is repeated side by side: the program takes a single 1 for a speck
	digitGap    = 10
)

// cutOut is the content of a box on a page, black on white.
func cutOut(page *image.Gray, box scene.Box) *image.Gray {
	const inked = copyDPI / 25.4
	scale := box.Height() * inked / digitHeight // pixels of the page per pixel of the result
	tone := func(x, y float64) float64 {        // interpolated, so that edges have no steps
		px, py := box.Left*inked+x*scale, box.Top*inked+y*scale
		fx, fy := px-math.Floor(px), py-math.Floor(py)
		pixel := func(dx, dy int) float64 { return float64(page.GrayAt(int(px)+dx, int(py)+dy).Y) }
		return (pixel(0, 0)*(1-fx)+pixel(1, 0)*fx)*(1-fy) + (pixel(0, 1)*(1-fx)+pixel(1, 1)*fx)*fy
	}
	white, width := tone(-1, -1) > 127, int(box.Width()*inked/scale)
	out := image.NewGray(image.Rect(0, 0, times*(width+digitGap)+2*digitAir, digitHeight+2*digitAir))
	draw.Draw(out, out.Bounds(), image.White, image.Point{}, draw.Src)
	for y := -1; y <= digitHeight; y++ {
		for x := range width {
			level := tone(float64(x), float64(y))
			if !white { // the first number is white on black
				level = 255 - level
			}
			for k := range times {
				out.SetGray(digitAir+k*(width+digitGap)+x, digitAir+y, color.Gray{Y: uint8(level)})
			}
		}
	}
	return out
}

// read has the program read pictures, one word each.
func read(t *testing.T, program string, pictures []*image.Gray) []string {
	folder, list := t.TempDir(), ""
	for k, cut := range pictures {
		name := filepath.Join(folder, strconv.Itoa(k)+".png")
		var picture bytes.Buffer
		if err := png.Encode(&picture, cut); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, picture.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		list += name + "\n"
	}
	const oneLine = "7" // page segmentation mode: a single line
	run := exec.Command(program, "stdin", "stdout", "--psm", oneLine, "--dpi", strconv.Itoa(copyDPI), "-c", "tessedit_char_whitelist=0123456789")
	run.Env = append(run.Environ(), "OMP_THREAD_LIMIT=1")
	run.Stdin = strings.NewReader(list)
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(strings.TrimSuffix(string(out), "\f"), "\f")
	if len(pages) != len(pictures) { // the program leaves out what it cannot recognize at all
		var one []string
		for _, picture := range pictures {
			one = append(one, read(t, program, []*image.Gray{picture})...)
		}
		return one
	}
	for k := range pages {
		pages[k] = strings.Join(strings.Fields(pages[k]), "")
	}
	return pages
}
