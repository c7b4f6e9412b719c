package scan_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/color/palette"
	"image/gif"
	"image/png"
	"io/fs"
	"strings"
	"testing"

	"golang.org/x/image/tiff"

	"drawdown/patterns/scan"
	"drawdown/patterns/source"
	"drawdown/render/words"
)

// steps is a picture that changes when turned or mirrored: its brightness
// identifies each pixel.
func steps(width, height int) *image.Gray {
	p := image.NewGray(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			p.SetGray(x, y, color.Gray{uint8(40 + 8*x + 50*y)})
		}
	}
	return p
}

func pngFile(t testing.TB, p image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// withPHYs inserts dots per metre into a PNG file, after its header of 33
// bytes.
func withPHYs(file []byte, x, y uint32, unit byte) []byte {
	body := append(binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32([]byte("pHYs"), x), y), unit)
	chunk := append(binary.BigEndian.AppendUint32(nil, 9), body...)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(body))
	return append(append(append([]byte{}, file[:33]...), chunk...), file[33:]...)
}

// withEXIF inserts an orientation and a resolution in dots per inch into a JPEG
// file (CIPA DC-008: big-endian TIFF in APP1).
func withEXIF(file []byte, orientation uint16, dpi uint32) []byte {
	be := binary.BigEndian
	body := append([]byte("Exif\x00\x00MM\x00\x2a"), 0, 0, 0, 8, 0, 4)
	entry := func(tag, kind uint16, count, value uint32) {
		body = be.AppendUint16(be.AppendUint16(body, tag), kind)
		body = be.AppendUint32(be.AppendUint32(body, count), value)
	}
	const values = 8 + 2 + 4*12 + 4
	entry(0x0112, 3, 1, uint32(orientation)<<16)
	entry(0x011a, 5, 1, values)
	entry(0x011b, 5, 1, values)
	entry(0x0128, 3, 1, 2<<16)
	body = be.AppendUint32(body, 0)
	body = be.AppendUint32(be.AppendUint32(body, dpi), 1)
	segment := be.AppendUint16([]byte{0xff, 0xe1}, uint16(len(body)+2))
	return append(append(append([]byte{}, file[:2]...), append(segment, body...)...), file[2:]...)
}

func TestResolution(t *testing.T) {
	p := steps(8, 4)
	jpg, pic := jpegFile(t, p, 90), pngFile(t, p)
	var tif bytes.Buffer
	if err := tiff.Encode(&tif, p, nil); err != nil { // writes 72 dpi
		t.Fatal(err)
	}
	inch := []byte{0xff, 0xe0, 0, 16, 'J', 'F', 'I', 'F', 0, 1, 2, 2, 0, 118, 0, 236, 0, 0}
	perCentimetre := append(append(append([]byte{}, jpg[:2]...), inch...), jpg[2:]...)
	for _, c := range []struct {
		name string
		data []byte
		x, y float64
	}{
		{"PNG without", pic, 0, 0},
		{"PNG, 300 dpi", withPHYs(pic, 11811, 11811, 1), 300, 300}, // 300 / 0.0254 = 11811.02
		{"PNG, 200 by 400 dpi", withPHYs(pic, 7874, 15748, 1), 200, 400},
		{"PNG, shape of a pixel only", withPHYs(pic, 11811, 11811, 0), 0, 0},
		{"PNG, no dots", withPHYs(pic, 0, 0, 1), 0, 0},
		{"PNG, far too many", withPHYs(pic, 1<<31, 1<<31, 1), 0, 0},
		{"JPEG without", jpg, 0, 0},
		{"JFIF, 600 dpi", withDensity(jpg, 600), 600, 600},
		{"JFIF, dots per centimetre", perCentimetre, 118 * 2.54, 236 * 2.54},
		{"JFIF, what a camera states", withDensity(jpg, 72), 0, 0},
		{"EXIF, 300 dpi", withEXIF(jpg, 1, 300), 300, 300},
		{"EXIF, what a camera states", withEXIF(jpg, 1, 72), 0, 0},
		{"EXIF behind a JFIF that says nothing", withDensity(withEXIF(jpg, 1, 300), 1), 300, 300},
		{"TIFF, what a screen states", tif.Bytes(), 0, 0},
	} {
		s, err := scan.Read(source.Source{File: "scan", Data: c.data})
		if err != nil || s.DPIX != c.x || s.DPIY != c.y {
			t.Errorf("%s: %g × %g dpi (%v), want %g × %g", c.name, s.DPIX, s.DPIY, err, c.x, c.y)
		}
	}
}

// The eight orientations (CIPA DC-008, tag 274), each identified by the upright
// positions of the stored top left pixel and its right neighbour.
func TestOrientation(t *testing.T) {
	const w, h = 16, 8
	p := image.NewGray(image.Rect(0, 0, w, h))
	for i := range p.Pix {
		p.Pix[i] = 128
	}
	for y := range 3 { // a light corner at the top left, longer across than down
		for x := range 6 {
			p.SetGray(x, y, color.Gray{250})
		}
	}
	file := jpegFile(t, p, 100)
	for orientation, want := range map[uint16]struct {
		w, h int
		at   image.Point // of the light corner
		long image.Point // a pixel at its long end
	}{
		1: {w, h, image.Pt(0, 0), image.Pt(5, 0)},
		2: {w, h, image.Pt(w-1, 0), image.Pt(w-6, 0)},
		3: {w, h, image.Pt(w-1, h-1), image.Pt(w-6, h-1)},
		4: {w, h, image.Pt(0, h-1), image.Pt(5, h-1)},
		5: {h, w, image.Pt(0, 0), image.Pt(0, 5)},
		6: {h, w, image.Pt(h-1, 0), image.Pt(h-1, 5)},
		7: {h, w, image.Pt(h-1, w-1), image.Pt(h-1, w-6)},
		8: {h, w, image.Pt(0, w-1), image.Pt(0, w-6)},
	} {
		s, err := scan.Read(source.Source{File: "photo.jpg", Data: withEXIF(file, orientation, 300)})
		if err != nil {
			t.Fatal(err)
		}
		if size := s.Picture.Rect.Size(); size != image.Pt(want.w, want.h) {
			t.Errorf("orientation %d: %v", orientation, size)
			continue
		}
		for _, q := range []image.Point{want.at, want.long} {
			if s.Picture.GrayAt(q.X, q.Y).Y < 200 {
				t.Errorf("orientation %d: %v is %d, want light", orientation, q, s.Picture.GrayAt(q.X, q.Y).Y)
			}
		}
	}
}

// Every kind of pixel is read with the same brightness; transparent pixels are
// on white.
func TestKindsOfPixel(t *testing.T) {
	p := steps(8, 4)
	as := func(to interface {
		image.Image
		Set(x, y int, c color.Color)
	}) image.Image {
		for y := range 4 {
			for x := range 8 {
				to.Set(x, y, p.At(x, y))
			}
		}
		return to
	}
	r := p.Rect
	greys := make(color.Palette, 256)
	for i := range greys {
		greys[i] = color.Gray{uint8(i)}
	}
	for name, picture := range map[string]image.Image{
		"grey": p, "grey 16": as(image.NewGray16(r)), "colour": as(image.NewRGBA(r)), "colour 16": as(image.NewRGBA64(r)),
		"alpha": as(image.NewNRGBA(r)), "palette": as(image.NewPaletted(r, greys)),
	} {
		s, err := scan.Read(source.Source{File: name, Data: pngFile(t, picture)})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for i := range p.Pix {
			if d := int(p.Pix[i]) - int(s.Picture.Pix[i]); d < -1 || d > 1 {
				t.Errorf("%s: pixel %d is %d, want %d", name, i, s.Picture.Pix[i], p.Pix[i])
			}
		}
	}
	clear := image.NewNRGBA(r)
	s, err := scan.Read(source.Source{File: "clear", Data: pngFile(t, clear)})
	if err != nil || s.Picture.Pix[0] != 255 {
		t.Errorf("transparent: %v, %v", s.Picture, err)
	}
}

// A blue gasket on a background of the same brightness is distinguished by
// colour.
func TestColour(t *testing.T) {
	p := image.NewRGBA(image.Rect(0, 0, 64, 64))
	for y := range 64 {
		for x := range 64 {
			c := color.RGBA{150, 140, 60, 255}
			if x > 20 && x < 44 {
				c = color.RGBA{60, 170, 160, 255} // as bright: 0.299 R + 0.587 G + 0.114 B is 136 for both
			}
			p.Set(x, y, c)
		}
	}
	s, err := scan.Read(source.Source{File: "blue.png", Data: pngFile(t, p)})
	if err != nil {
		t.Fatal(err)
	}
	if d := int(s.Picture.GrayAt(5, 5).Y) - int(s.Picture.GrayAt(30, 5).Y); d > -80 && d < 80 {
		t.Errorf("part and ground differ by %d grey levels", d)
	}
}

func TestBadFiles(t *testing.T) {
	file := pngFile(t, steps(8, 4))
	huge := append([]byte{}, file...)
	binary.BigEndian.PutUint32(huge[16:], 1_000_000)
	binary.BigEndian.PutUint32(huge[20:], 1_000_000)
	binary.BigEndian.PutUint32(huge[29:], crc32.ChecksumIEEE(huge[12:29]))
	var moving bytes.Buffer
	if err := gif.Encode(&moving, image.NewPaletted(image.Rect(0, 0, 4, 4), palette.Plan9), nil); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"nothing", nil, "nothing is empty"},
		{"words", []byte("title: Cover"), "not a PNG, JPEG or TIFF"},
		{"cut", file[:len(file)-20], "damaged PNG"},
		{"head only", file[:20], "cannot be read as a picture"},
		{"huge", huge, "1000000 × 1000000 pixels; the limit is 80 million"},
		{"paper", []byte("%PDF-1.7 and so on"), "is a PDF"},
		{"moving", moving.Bytes(), "is a GIF"},
		{"phone", append([]byte{0, 0, 0, 24}, "ftypheic0000mif1"...), "HEIC"},
		{"web", []byte("RIFF0000WEBPVP8 "), "WebP"},
	} {
		if _, err := scan.Read(source.Source{File: c.name, Data: c.data}); err == nil || !strings.Contains(words.English().Error(err), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

func TestOpen(t *testing.T) {
	if _, err := scan.Open("p4-pump-gaskt", nil); !errors.Is(err, fs.ErrNotExist) || !strings.Contains(words.English().Error(err), "did you mean p4-pump-gasket?") {
		t.Errorf("a slip: %v", err)
	}
	if _, err := scan.Open(t.TempDir(), nil); !errors.Is(err, fs.ErrInvalid) {
		t.Errorf("a folder: %v", err)
	}
	if _, err := scan.Open("none.png", nil); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	s, err := scan.Open("-", bytes.NewReader([]byte("x")))
	if err != nil || string(s.Data) != "x" {
		t.Errorf("standard input: %v, %v", s, err)
	}
}

// FuzzRead: any bytes give a picture or an error, and a possible resolution.
func FuzzRead(f *testing.F) {
	p := steps(8, 4)
	jpg := jpegFile(f, p, 80)
	f.Add(pngFile(f, p))
	f.Add(withPHYs(pngFile(f, p), 11811, 11811, 1))
	f.Add(withDensity(jpg, 300))
	f.Add(withEXIF(jpg, 6, 300))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := scan.Read(source.Source{File: "any", Data: data})
		if err != nil {
			return
		}
		if s.Picture == nil || s.DPIX != 0 && !(s.DPIX >= 50 && s.DPIX <= 10_000) || (s.DPIX == 0) != (s.DPIY == 0) {
			t.Fatalf("%v, %g × %g dpi", s.Picture, s.DPIX, s.DPIY)
		}
	})
}
