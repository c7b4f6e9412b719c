package waytest_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/fogleman/gg"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way"
	"drawdown/sequence/way/waytest"
)

// The sheet on which technicians review the orders, eight parts a page.
// DRAWDOWN_SHEET=/tmp go test ./sequence/way/waytest -run Sheet draws it into a
// folder. Every mark is inside its part's square.
func TestSheet(t *testing.T) {
	t.Parallel()
	const columns, rows, side = 4, 2, 480.0
	parsed, err := opentype.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: 22, DPI: 72})
	if err != nil {
		t.Fatal(err)
	}
	folder := os.Getenv("DRAWDOWN_SHEET")
	if folder == "" {
		folder = t.TempDir()
	}
	parts := waytest.Parts()
	for page := 0; page*columns*rows < len(parts); page++ {
		dc := gg.NewContext(columns*side, rows*side)
		dc.SetRGB(1, 1, 1)
		dc.Clear()
		dc.SetFontFace(face)
		for k := 0; k < columns*rows && page*columns*rows+k < len(parts); k++ {
			number := page*columns*rows + k
			drawPart(t, dc, parts[number], number+1, float64(k%columns)*side, float64(k/columns)*side, side)
		}
		if err := dc.SavePNG(filepath.Join(folder, fmt.Sprintf("orders-%d.png", page+1))); err != nil {
			t.Fatal(err)
		}
	}
}

func drawPart(t *testing.T, dc *gg.Context, p waytest.Part, number int, left, top, side float64) {
	const head, mark = 60.0, 18.0
	box := geometry.Bounds(p.Points)
	middle := box.Min.Add(box.Max).Scale(0.5)
	scale := math.Min((side-5*mark)/math.Max(box.Width(), 1), (side-head-5*mark)/math.Max(box.Height(), 1))
	at := func(i int) (x, y float64) {
		q := p.Points[i].Sub(middle).Scale(scale)
		return left + side/2 + q.X, top + (side+head)/2 - q.Y
	}
	dc.SetRGB(0.8, 0.8, 0.8)
	dc.DrawRectangle(left+2, top+2, side-4, side-4)
	dc.Stroke()
	dc.SetRGB(0, 0, 0)
	dc.DrawString(fmt.Sprintf("%d  %s", number, p.Name), left+10, top+26)
	dc.DrawString(string(family.Of(p.Points).Family), left+10, top+52)
	order := way.Places(p.Points, way.Auto, way.TurnDefault)
	dc.SetRGB(0.6, 0.75, 0.95)
	for k := 1; k < len(order); k++ {
		x, y := at(order[k-1])
		u, v := at(order[k])
		dc.DrawLine(x, y, u, v)
		dc.Stroke()
	}
	for k, i := range order {
		x, y := at(i)
		if x-mark < left || x+mark > left+side || y-mark < top+head-mark || y+mark > top+side {
			t.Errorf("%s: mark %d lies outside its square", p.Name, k+1)
		}
		dc.SetRGB(1, 1, 1)
		dc.DrawCircle(x, y, mark)
		dc.FillPreserve()
		dc.SetRGB(0, 0, 0)
		dc.Stroke()
		dc.DrawStringAnchored(fmt.Sprint(k+1), x, y, 0.5, 0.35)
	}
}
