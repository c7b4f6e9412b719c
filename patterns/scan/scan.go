// Package scan reads picture files: their pixels, turned upright, and the
// resolution that the file states. It is beside the readers of pattern files
// because a joint can be made from a scan, too; geometry/trace finds what the
// picture shows.
package scan

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	_ "image/jpeg" // the formats that are read
	_ "image/png"
	"path/filepath"
	"slices"
	"strings"

	_ "golang.org/x/image/tiff"

	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/patterns/source"
)

// Scan is a picture that was read.
type Scan struct {
	Name    string // stem of the output files
	Picture *image.Gray
	// DPIX and DPIY are the dots per inch that the file states; 0 if it states
	// none, or a default of cameras and screens.
	DPIX, DPIY float64
	// StatedDPI is what the file states, plausible or not.
	StatedDPI float64
}

var formats = []string{"png", "jpeg", "tiff"}

// Limits of a picture file.
const (
	mostFileBytes = 256 << 20
	mostPixels    = 80_000_000 // A3 at 600 dpi is 70 million
	// mostUnpackedMB allows A3 at 600 dpi in eight bits a colour.
	mostUnpackedMB = 320
)

// bytesPerPixel returns the bytes that a pixel takes in memory.
func bytesPerPixel(model color.Model) int {
	switch model {
	case color.GrayModel:
		return 1
	case color.Gray16Model:
		return 2
	case color.RGBA64Model, color.NRGBA64Model:
		return 8
	}
	if _, ok := model.(color.Palette); ok {
		return 1
	}
	return 4
}

// Read reads a picture file. It checks the size before it reads the pixels.
func Read(from source.Source) (Scan, error) {
	s := Scan{Name: strings.TrimSuffix(from.Stem(), filepath.Ext(from.Stem()))}
	data := from.Data
	if len(data) == 0 {
		return s, finding.Failed(EmptyScan, finding.Values{"file": from.File})
	}
	if len(data) > mostFileBytes {
		return s, finding.Failed(ScanTooLarge, finding.Values{"file": from.File, "most": mostFileBytes >> 20})
	}
	about, format, err := image.DecodeConfig(bytes.NewReader(data))
	if err == nil && !slices.Contains(formats, format) { // another package registers more formats
		err = image.ErrFormat
	}
	if err != nil {
		return s, unreadable(from.File, data, err)
	}
	if about.Width <= 0 || about.Height <= 0 || about.Width > mostPixels/about.Height {
		return s, finding.Failed(TooManyPixels, finding.Values{"file": from.File, "width": about.Width, "height": about.Height, "most": mostPixels / 1_000_000})
	}
	switch c := costOf(data, about, format); {
	case c.mb > mostUnpackedMB:
		return s, finding.Failed(TooMuchMemory, finding.Values{"file": from.File, "size": c.mb, "most": mostUnpackedMB})
	case c.odd():
		return s, finding.Failed(OddlyPacked, finding.Values{"file": from.File})
	}
	picture, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return s, finding.Failed(Damaged, finding.Values{"file": from.File, "format": strings.ToUpper(format), "why": err})
	}
	tags := readTags(data, format)
	s.Picture = upright(trace.Grey(picture), tags.orientation)
	x, y := density(data, format, tags)
	if tags.orientation >= 5 { // the picture is on its side
		x, y = y, x
	}
	s.StatedDPI = x
	if believed(x, y) {
		s.DPIX, s.DPIY = x, y
	}
	return s, nil
}

// believed reports whether a stated resolution can be a scanner's. Cameras
// state 72 and screens 96 by default.
func believed(x, y float64) bool {
	sane := func(v float64) bool { return v >= 50 && v <= 10_000 && v != 72 && v != 96 }
	return sane(x) && sane(y)
}

// unreadable names the file types that are mistaken for pictures.
func unreadable(file string, data []byte, err error) error {
	values := finding.Values{"file": file}
	code := OtherPicture
	switch {
	case bytes.HasPrefix(data, []byte("%PDF")):
		code = IsPDF
	case bytes.HasPrefix(data, []byte("GIF8")):
		values["format"] = "GIF"
	case len(data) > 12 && string(data[4:8]) == "ftyp":
		values["format"] = "HEIC"
	case len(data) > 12 && string(data[:4]) == "RIFF" && string(data[8:12]) == "WEBP":
		values["format"] = "WebP"
	case errors.Is(err, image.ErrFormat):
		code = NoPicture
	default:
		code, values["why"] = Unreadable, err
	}
	return finding.Failed(code, values)
}
