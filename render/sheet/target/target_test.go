package target_test

import (
	"bytes"
	"image"
	_ "image/png"
	"math"
	"strings"
	"testing"
	"time"

	"drawdown/geometry"
	"drawdown/geometry/trace/photo"
	"drawdown/render"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/target"
	"drawdown/render/words"
)

// The band on every paper, drawn and read back, has the size that a trace takes it
// to have (first principles: the same sheet), and its words fit in every language.
func TestBandReadsBack(t *testing.T) {
	t.Parallel()
	for _, paper := range sheet.Papers {
		for _, tag := range words.Languages() {
			w, _ := words.Find(tag)
			doc := target.Document(sheet.Request{Paper: paper, Words: w})
			if faults := scenetest.CheckLayout(doc.Pages[0]); len(faults) > 0 {
				t.Errorf("%s, %s: %s", paper.Name, tag, strings.Join(faults, "\n"))
			}
		}
		doc := target.Document(sheet.Request{Paper: paper, Words: words.English()})
		const dpi = 100
		files, err := render.Files(doc, "target", render.PNG, dpi, time.Time{})
		if err != nil {
			t.Fatal(err)
		}
		drawn, _, err := image.Decode(bytes.NewReader(files[0].Data))
		if err != nil {
			t.Fatal(err)
		}
		found, ok := photo.Find(grey(drawn), photo.Band)
		if !ok {
			t.Fatalf("%s: no band", paper.Name)
		}
		wide := paper.Landscape()
		w, h := photo.TargetSize(wide.Width, wide.Height)
		left, top := photo.MarginMm, photo.MarginMm
		want := [4]geometry.Point{{X: left, Y: top}, {X: left + w, Y: top}, {X: left + w, Y: top + h}, {X: left, Y: top + h}}
		for i, c := range found.Corners {
			if off := c.Scale(25.4 / dpi).Distance(want[i]); !(off < 0.03) { // a tenth of a pixel
				t.Errorf("%s: corner %d is %.3f mm off", paper.Name, i, off)
			}
		}
		if math.Abs(found.Lens.Barrel()) > 1e-3 {
			t.Errorf("%s: a barrel of %g", paper.Name, found.Lens.Barrel())
		}
	}
}

func grey(from image.Image) *image.Gray {
	out := image.NewGray(from.Bounds())
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			out.Set(x, y, from.At(x, y))
		}
	}
	return out
}
