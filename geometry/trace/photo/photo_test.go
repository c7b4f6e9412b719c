package photo

import (
	"image"
	"math"
	"testing"

	"drawdown/geometry"
)

// A lens bends back what it straightened, to a thousandth of a pixel (first principles:
// the reverse), and a lens of a piece of the picture is the same lens.
func TestLensThereAndBack(t *testing.T) {
	t.Parallel()
	for _, l := range []Lens{{}, lens(0.05, 0.01), lens(-0.04, 0.005), lens(0.1, -0.02)} {
		for _, p := range []geometry.Point{{X: 600, Y: 450}, {X: 3, Y: 8}, {X: 1190, Y: 200}} {
			if back := l.Bent(l.Straight(p)); back.Distance(p) > 1e-3 {
				t.Errorf("%+v: %v comes back to %v", l, p, back)
			}
			corner := geometry.Point{X: 100, Y: 40}
			if piece := l.From(100, 40).Straight(p.Sub(corner)).Add(corner); piece.Distance(l.Straight(p)) > 1e-9 {
				t.Errorf("%+v: %v lies elsewhere in a piece", l, p)
			}
		}
	}
	// First principles: the corner is drawn where r·(1 + 0.05·r²) is 1.
	if b := lens(0.05, 0).Barrel(); math.Abs((1-b)*(1+0.05*(1-b)*(1-b))-1) > 1e-9 {
		t.Errorf("a barrel of %g", b)
	}
}

func lens(second, fourth float64) Lens {
	return Lens{middle: geometry.Point{X: 600, Y: 450}, half: 750, second: second, fourth: fourth}
}

// quad is a photo, pixel by pixel, of a bright rectangle that a lens has bent, with a
// strip of the bench over a third of its upper side and a dark part in it.
func quad(corners [4]geometry.Point, l Lens, inside, bench uint8) *image.Gray {
	out := image.NewGray(image.Rect(0, 0, 1200, 900))
	for y := range 900 {
		for x := range 1200 {
			in, p := math.Inf(1), l.Straight(geometry.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5})
			for i, a := range corners { // the distance from the nearest side is the share of the pixel
				d, q := corners[(i+1)%4].Sub(a), p.Sub(a)
				in = min(in, (d.X*q.Y-d.Y*q.X)/math.Hypot(d.X, d.Y))
			}
			share := min(max(in+0.5, 0), 1)
			v := share*float64(inside) + (1-share)*float64(bench)
			if x > 400 && x < 700 && y > 300 && y < 500 {
				v = 40
			}
			out.Pix[y*out.Stride+x] = uint8(v)
		}
	}
	return out
}

var sheetCorners = [4]geometry.Point{{X: 180, Y: 130}, {X: 1040, Y: 170}, {X: 1010, Y: 760}, {X: 150, Y: 740}}

// The corners come out as drawn, to a tenth of a pixel, where a finger covers a part of
// a side, whatever the lens (first principles: the rectangle that was drawn).
func TestSheetIsFound(t *testing.T) {
	t.Parallel()
	for _, l := range []Lens{{middle: geometry.Point{X: 600, Y: 450}, half: 750}, lens(0.05, 0.01), lens(-0.03, 0)} {
		for _, edge := range []Edge{Paper, Band} {
			inside, bench := uint8(220), uint8(90)
			if edge == Band {
				inside, bench = bench, inside
			}
			picture := quad(sheetCorners, l, inside, bench)
			for y := 120; y < 175; y++ { // a finger
				for x := 500; x < 620; x++ {
					picture.Pix[y*picture.Stride+x] = 150
				}
			}
			found, ok := Find(picture, edge)
			if !ok {
				t.Fatalf("%v, edge %v: not found", l, edge)
			}
			for i, c := range found.Corners {
				if off := found.Lens.Bent(c).Distance(l.Bent(sheetCorners[i])); off > 0.1 {
					t.Errorf("%v, edge %v: corner %d is %.2f pixels off", l, edge, i, off)
				}
			}
			if off := math.Abs(found.Lens.Barrel() - l.Barrel()); off > 0.004 {
				t.Errorf("%v, edge %v: a barrel of %.4f", l, edge, found.Lens.Barrel())
			}
		}
	}
}

// Corners named some pixels off are moved to the edge; corners that no edge runs
// between are none, and neither is a sheet whose side is out of the picture.
func TestNearNamedCorners(t *testing.T) {
	t.Parallel()
	picture := quad(sheetCorners, Lens{}, 220, 90)
	rough := sheetCorners
	for i, d := range []geometry.Point{{X: 4, Y: -3}, {X: -3, Y: 4}, {X: 2, Y: 4}, {X: -4, Y: -2}} {
		rough[i] = rough[i].Add(d)
	}
	found, ok := Near(picture, rough, Paper)
	if !ok || found.OffPixels > 0.1 {
		t.Fatalf("found %v, %.2f pixels off", ok, found.OffPixels)
	}
	for i, c := range found.Corners {
		if off := c.Distance(sheetCorners[i]); off > 0.1 {
			t.Errorf("corner %d is %.2f pixels off", i, off)
		}
	}
	elsewhere := [4]geometry.Point{{X: 300, Y: 260}, {X: 900, Y: 260}, {X: 900, Y: 600}, {X: 300, Y: 600}}
	if _, ok := Near(picture, elsewhere, Paper); ok {
		t.Error("a sheet where no edge is")
	}
	if _, ok := Near(picture, rough, Band); ok {
		t.Error("bright paper is taken for a dark band")
	}
	cut := sheetCorners
	cut[1], cut[2] = geometry.Point{X: 1300, Y: 170}, geometry.Point{X: 1290, Y: 760}
	if _, ok := Find(quad(cut, Lens{}, 220, 90), Paper); ok {
		t.Error("a sheet that reaches out of the picture")
	}
}

// A round patch is no sheet.
func TestRoundIsNoSheet(t *testing.T) {
	t.Parallel()
	picture := image.NewGray(image.Rect(0, 0, 600, 500))
	for i := range picture.Pix {
		picture.Pix[i] = 80
		if math.Hypot(float64(i%600)-300, float64(i/600)-250) < 200 {
			picture.Pix[i] = 220
		}
	}
	if s, ok := Find(picture, Paper); ok {
		t.Errorf("found %v", s.Corners)
	}
}
