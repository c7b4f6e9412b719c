package scan_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/jpeg"
	"os"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns/scan"
	"drawdown/patterns/source"
)

// bombPNG is the start of a small file with a large colour picture.
func bombPNG(width, height uint32) []byte {
	head := binary.BigEndian.AppendUint32([]byte("IHDR"), width)
	head = binary.BigEndian.AppendUint32(head, height)
	head = append(head, 8, 2, 0, 0, 0)
	file := binary.BigEndian.AppendUint32([]byte("\x89PNG\r\n\x1a\n"), uint32(len(head)-4))
	file = append(file, head...)
	return binary.BigEndian.AppendUint32(file, crc32.ChecksumIEEE(head))
}

// bombJPEG is the frame of a JPEG file with a number of passes; its sampling
// gives the number of samples of each component per pixel.
func bombJPEG(side uint16, passes int, samplings ...byte) []byte {
	file := []byte("\xff\xd8\xff\xc2")
	file = binary.BigEndian.AppendUint16(file, uint16(8+3*len(samplings)))
	file = append(file, 8)
	file = binary.BigEndian.AppendUint16(file, side)
	file = binary.BigEndian.AppendUint16(file, side)
	file = append(file, byte(len(samplings)))
	for i, sampling := range samplings {
		file = append(file, byte(i+1), sampling, 0)
	}
	for range passes {
		file = append(file, "\xff\xda\x00\x08\x01\x01\x00\x00\x00\x10pixels\xff\x00\xff\xd3pixels"...)
	}
	return append(file, "\xff\xd9"...)
}

// Small files that would fill the memory, or take long, are rejected before
// decoding.
func TestBombs(t *testing.T) {
	for name, c := range map[string]struct {
		data []byte
		want finding.Code
	}{
		"colour, 79 million pixels in a few bytes": {bombPNG(9000, 8800), scan.OddlyPacked},
		"a thousand million pixels":                {bombPNG(30_000, 40_000), scan.TooManyPixels},
		"a thousand passes":                        {bombJPEG(100, 1000, 0x11, 0x11, 0x11), scan.OddlyPacked},
		// 64 million pixels, 5 bytes for each of 3 samples: 915 MB.
		"64 million pixels bit by bit": {bombJPEG(8000, 10, 0x11, 0x11, 0x11), scan.TooMuchMemory},
		// 16 million pixels, 5 bytes for each of 1.5 samples: 114 MB.
		"16 million pixels bit by bit": {bombJPEG(4000, 10, 0x22, 0x11, 0x11), scan.Damaged},
	} {
		if _, err := scan.Read(source.Source{File: name, Data: c.data}); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
	for name, data := range map[string][]byte{"png": bombPNG(7000, 7000), "jpeg": bombJPEG(100, 1000, 0x11)} {
		if _, err := scan.Photo(data); !errors.Is(err, scan.PhotoOddlyPacked) {
			t.Errorf("photo as %s: %v", name, err)
		}
	}
}

// The built-in scan, and a page of paper as encoded normally, are accepted.
func TestScansAreNoBombs(t *testing.T) {
	data, err := os.ReadFile("scans/p4-pump-gasket.jpg")
	if err != nil {
		t.Fatal(err)
	}
	blank := image.NewGray(image.Rect(0, 0, 2480, 3508)) // A4 at 300 dpi
	for name, data := range map[string][]byte{"built in": data, "blank": pngFile(t, blank), "cut": data[:len(data)-bytes.MinRead]} {
		if _, err := scan.Read(source.Source{File: name, Data: data}); errors.Is(err, scan.OddlyPacked) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// FuzzPhoto: any bytes give a JPEG picture or an error; the cost of decoding is
// known for any bytes.
func FuzzPhoto(f *testing.F) {
	p := steps(8, 4)
	f.Add(pngFile(f, p))
	f.Add(withEXIF(jpegFile(f, p, 80), 6, 300))
	f.Add(bombPNG(9000, 8800))
	f.Add(bombJPEG(100, 50, 0x22, 0x11, 0x11))
	f.Fuzz(func(t *testing.T, data []byte) {
		made, err := scan.Photo(data)
		if err != nil {
			return
		}
		if _, err := scan.Read(source.Source{File: "any", Data: made}); err != nil {
			t.Fatal(err)
		}
	})
}

// A thumbnail keeps the shape of its photo, and none is made larger. From first principles.
func TestThumbnail(t *testing.T) {
	for _, size := range [][4]int{{300, 200, 150, 100}, {200, 301, 99, 150}, {30, 20, 30, 20}} {
		var photo bytes.Buffer
		if err := jpeg.Encode(&photo, image.NewGray(image.Rect(0, 0, size[0], size[1])), nil); err != nil {
			t.Fatal(err)
		}
		small, width, height, err := scan.Thumbnail(photo.Bytes(), 150)
		if about, wrong := jpeg.DecodeConfig(bytes.NewReader(small)); err != nil || wrong != nil || about.Width != size[2] || about.Height != size[3] || width != size[2] || height != size[3] {
			t.Errorf("%v: %d × %d, %v, %v", size, width, height, err, wrong)
		}
	}
	if _, _, _, err := scan.Thumbnail([]byte("no picture"), 150); err == nil {
		t.Error("no picture has a thumbnail")
	}
}
