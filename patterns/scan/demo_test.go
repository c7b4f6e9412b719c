package scan_test

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/fogleman/gg"

	"drawdown/geometry/holes"
	"drawdown/geometry/testkit"
	"drawdown/geometry/trace"
	"drawdown/patterns/scan"
)

// demoDPI keeps the built-in scan small; the holes are still found to a
// hundredth of a millimetre.
const demoDPI = 150

// drawDemo draws the pump cover gasket of the Fernhollow P4, as in the survey
// p4-pump-cover: 3 × 2 holes of 8.4 mm at 72 × 84 mm. Two dowel holes of 6 mm,
// the bore and the kidney-shaped port are invented. One hole has a torn edge,
// and there is dust on the glass.
func drawDemo() *image.Gray {
	const width, height = 1240, 880
	dc := gg.NewContext(width, height)
	dc.SetColor(color.Gray{231})
	dc.Clear()
	dc.Translate(width/2+7.3, height/2-4.6)
	dc.Rotate(gg.Radians(-1.8))
	dc.Scale(demoDPI/25.4, -demoDPI/25.4)
	dc.SetColor(color.Gray{74})
	dc.DrawRoundedRectangle(-88, -57, 176, 114, 12)
	dc.Fill()
	dc.SetColor(color.Gray{231})
	for _, at := range demoHoles {
		dc.DrawCircle(at[0], at[1], at[2]/2)
		dc.Fill()
	}
	for k := range 76 { // the kidney shape is a thick arc
		a := gg.Radians(float64(140 + k))
		dc.DrawCircle(18+40*math.Cos(a), 40*math.Sin(a), 6)
		dc.Fill()
	}
	dc.MoveTo(72, 38.2) // the tear
	dc.LineTo(75.3, 35.1)
	dc.LineTo(73.4, 40.1)
	dc.ClosePath()
	dc.Fill()
	r := rand.New(rand.NewPCG(4, 1986))
	for k := range 160 {
		level := uint8(74)
		if k%2 == 0 {
			level = 231
		}
		dc.SetColor(color.Gray{level})
		dc.DrawEllipse(200*r.Float64()-100, 140*r.Float64()-70, 0.1+0.35*r.Float64(), 0.1+0.35*r.Float64())
		dc.Fill()
	}
	grey := image.NewGray(image.Rect(0, 0, width, height))
	rgba := dc.Image().(*image.RGBA)
	for i := range grey.Pix {
		x := float64(i % width)
		v := float64(rgba.Pix[4*i])*(0.9+0.1*x/width) + 2.5*r.NormFloat64()
		grey.Pix[i] = uint8(min(max(math.Round(v), 0), 255))
	}
	return grey
}

// demoHoles are x, y and diameter.
var demoHoles = [][3]float64{
	{-72, 42, 8.4}, {0, 42, 8.4}, {72, 42, 8.4}, {-72, -42, 8.4}, {0, -42, 8.4}, {72, -42, 8.4},
	{-72, 12.5, 6}, {72, -14, 6},
	{18, 0, 52},
}

// withDensity inserts the resolution into a JPEG file (JFIF), which the
// standard encoder omits.
func withDensity(file []byte, dpi uint16) []byte {
	segment := append([]byte{0xff, 0xe0, 0, 16}, "JFIF\x00\x01\x02\x01"...)
	segment = binary.BigEndian.AppendUint16(segment, dpi)
	segment = binary.BigEndian.AppendUint16(segment, dpi)
	segment = append(segment, 0, 0)
	return append(append(append([]byte{}, file[:2]...), segment...), file[2:]...)
}

func jpegFile(t testing.TB, p image.Image, quality int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, p, &jpeg.Options{Quality: quality}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The gasket is reconstructed from the built-in scan.
func TestDemo(t *testing.T) {
	if testkit.Updating() {
		if err := os.WriteFile("scans/p4-pump-gasket.jpg", withDensity(jpegFile(t, drawDemo(), 62), demoDPI), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	source, err := scan.Open("p4-pump-gasket", nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(source.Data) > 150_000 {
		t.Errorf("the built-in scan has %d bytes", len(source.Data))
	}
	s, err := scan.Read(source)
	if err != nil || s.DPIX != demoDPI || s.DPIY != demoDPI || s.Name != "p4-pump-gasket" {
		t.Fatalf("%v, %g × %g dpi, %q", err, s.DPIX, s.DPIY, s.Name)
	}
	found, err := trace.Find(s.Picture, trace.PerInch(s.DPIX, s.DPIY), trace.Options{Holes: holes.Rule{Dowels: holes.Range{FromMm: 5.5, ToMm: 6.5}}})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range found.Shapes {
		t.Logf("%s %s %.2f %.2f ø %.2f kept %.2f %q", s.ID, s.Role, s.At.X, s.At.Y, s.DiameterMm, s.Kept, s.Doubts)
	}
	for _, want := range demoHoles {
		ok := false
		for _, s := range found.Shapes {
			if math.Hypot(s.At.X-want[0], s.At.Y-want[1]) < 0.05 && math.Abs(s.DiameterMm-want[2]) < 0.1 {
				ok = true
			}
		}
		if !ok {
			t.Errorf("no hole at %v", want)
		}
	}
	if len(found.Shapes) != len(demoHoles)+1 {
		t.Errorf("%d shapes, want the holes and one port", len(found.Shapes))
	}
}
