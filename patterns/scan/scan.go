// Package scan reads picture files: their pixels, the right way up, and the
// resolution that the file states. It stands beside the reader of pattern
// files because a scan, too, is a file that a joint is made from; what the
// picture shows is left to geometry/trace.
package scan

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	_ "image/jpeg" // the formats that are read
	_ "image/png"
	"path/filepath"
	"slices"
	"strings"

	_ "golang.org/x/image/tiff"

	"drawdown/geometry/trace"
	"drawdown/patterns/source"
)

// Scan is a picture as it was read.
type Scan struct {
	Name    string // stem of the files that are written
	Picture *image.Gray
	// DPIX and DPIY are the dots per inch that the file states; 0 where it
	// states none, or one that cameras and screens put in unasked.
	DPIX, DPIY float64
	// StatedDPI is what the file says, believed or not.
	StatedDPI float64
}

var formats = []string{"png", "jpeg", "tiff"}

// Limits of a picture file.
const (
	mostFileBytes = 256 << 20
	mostPixels    = 80_000_000 // A3 at 600 dpi is 70 million
	// mostUnpackedMB lets A3 at 600 dpi through in eight bits a colour.
	mostUnpackedMB = 320
)

// bytesPerPixel is what a pixel of the kind takes in memory.
func bytesPerPixel(model color.Model) int {
	switch model {
	case color.GrayModel:
		return 1
	case color.Gray16Model:
		return 2
	case color.YCbCrModel:
		return 3
	case color.RGBA64Model, color.NRGBA64Model:
		return 8
	}
	if _, ok := model.(color.Palette); ok {
		return 1
	}
	return 4
}

// Read reads a picture file. Its size is looked at before its pixels are.
func Read(from source.Source) (Scan, error) {
	s := Scan{Name: strings.TrimSuffix(from.Stem(), filepath.Ext(from.Stem()))}
	data := from.Data
	if len(data) == 0 {
		return s, fmt.Errorf("%s is empty", from.File)
	}
	if len(data) > mostFileBytes {
		return s, fmt.Errorf("%s is larger than %d MB; scan at 300 dpi in shades of grey", from.File, mostFileBytes>>20)
	}
	about, format, err := image.DecodeConfig(bytes.NewReader(data))
	if err == nil && !slices.Contains(formats, format) { // some other package reads more
		err = image.ErrFormat
	}
	if err != nil {
		return s, unreadable(from.File, data, err)
	}
	if about.Width <= 0 || about.Height <= 0 || about.Width > mostPixels/about.Height {
		return s, fmt.Errorf("%s has %d × %d pixels; at most %d million are read, which A3 at 600 dpi has", from.File, about.Width, about.Height, mostPixels/1_000_000)
	}
	if mb := about.Width * about.Height * bytesPerPixel(about.ColorModel) >> 20; mb > mostUnpackedMB {
		return s, fmt.Errorf("%s takes %d MB once unpacked, and at most %d are given to it; scan at 300 dpi in shades of grey", from.File, mb, mostUnpackedMB)
	}
	picture, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return s, fmt.Errorf("%s is a damaged %s file: %w; save or send it again", from.File, strings.ToUpper(format), err)
	}
	tags := readTags(data, format)
	s.Picture = upright(trace.Grey(picture), tags.orientation)
	x, y := density(data, format, tags)
	if tags.orientation >= 5 { // the picture lies on its side
		x, y = y, x
	}
	s.StatedDPI = x
	if believed(x, y) {
		s.DPIX, s.DPIY = x, y
	}
	return s, nil
}

// believed says whether a stated resolution can be that of a scanner. Cameras
// state 72 and screens 96 unasked.
func believed(x, y float64) bool {
	sane := func(v float64) bool { return v >= 50 && v <= 10_000 && v != 72 && v != 96 }
	return sane(x) && sane(y)
}

// unreadable names the kinds of file that are mistaken for pictures.
func unreadable(file string, data []byte, err error) error {
	const save = "save it as PNG, JPEG or TIFF"
	switch {
	case bytes.HasPrefix(data, []byte("%PDF")):
		return fmt.Errorf("%s is a PDF; let the scanner write PNG, JPEG or TIFF instead", file)
	case bytes.HasPrefix(data, []byte("GIF8")):
		return fmt.Errorf("%s is a GIF; %s", file, save)
	case len(data) > 12 && string(data[4:8]) == "ftyp":
		return fmt.Errorf("%s is a HEIC or AVIF picture, or a film; %s", file, save)
	case len(data) > 12 && string(data[:4]) == "RIFF" && string(data[8:12]) == "WEBP":
		return fmt.Errorf("%s is a WebP picture; %s", file, save)
	case errors.Is(err, image.ErrFormat):
		return fmt.Errorf("%s is not a PNG, JPEG or TIFF picture", file)
	}
	return fmt.Errorf("%s cannot be read as a picture: %w; save or send it again", file, err)
}
