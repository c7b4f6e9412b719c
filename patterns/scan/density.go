package scan

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"strconv"

	"github.com/bep/imagemeta"
)

// tags holds the EXIF (CIPA DC-008) or TIFF tags of a picture.
type tags struct {
	orientation int     // 1 to 8
	x, y        float64 // dots per inch; 0 where not stated
}

// readTags reads the tags used here. A file with broken tags counts as one
// without: the pixels suffice.
func readTags(data []byte, format string) tags {
	found := tags{orientation: 1}
	formats := map[string]imagemeta.ImageFormat{"jpeg": imagemeta.JPEG, "png": imagemeta.PNG, "tiff": imagemeta.TIFF}
	unit := 2 // inch, if no unit is stated
	_, err := imagemeta.Decode(imagemeta.Options{
		R: bytes.NewReader(data), ImageFormat: formats[format], Sources: imagemeta.EXIF,
		HandleTag: func(tag imagemeta.TagInfo) error {
			switch tag.Tag {
			case "Orientation":
				if v := number(tag.Value); v >= 1 && v <= 8 {
					found.orientation = int(v)
				}
			case "XResolution":
				found.x = number(tag.Value)
			case "YResolution":
				found.y = number(tag.Value)
			case "ResolutionUnit":
				unit = int(number(tag.Value))
			}
			return nil
		},
	})
	if err != nil && found.x == 0 {
		found.y = 0
	}
	perInch := map[int]float64{2: 1, 3: 2.54}[unit] // inch, centimetre; others say nothing
	found.x, found.y = found.x*perInch, found.y*perInch
	return found
}

// number converts the types of number in tags.
func number(v any) float64 {
	f := 0.0
	switch v := v.(type) {
	case interface{ Float64() float64 }: // a ratio
		f = v.Float64()
	case uint8, uint16, uint32, int, float64:
		f, _ = strconv.ParseFloat(fmt.Sprint(v), 64)
	case []uint16:
		if len(v) > 0 {
			f = float64(v[0])
		}
	}
	if math.IsNaN(f) || math.IsInf(f, 0) || f < 0 || f > 1e6 {
		return 0
	}
	return f
}

// density returns the dots per inch that a file states: PNG and JPEG have their
// own field for it, which takes precedence over the tags.
func density(data []byte, format string, t tags) (x, y float64) {
	switch format {
	case "png":
		x, y = pngDensity(data)
	case "jpeg":
		x, y = jfifDensity(data)
	}
	if x > 0 && y > 0 && believed(x, y) {
		return x, y
	}
	if t.x > 0 && t.y > 0 {
		return t.x, t.y
	}
	return x, y
}

// pngDensity reads the chunk pHYs (ISO/IEC 15948, 11.3.5.3), which precedes the
// pixels.
func pngDensity(data []byte) (x, y float64) {
	const signature, frame = 8, 12 // length, name and check of a chunk
	for at := signature; at+frame <= len(data); {
		length := binary.BigEndian.Uint32(data[at:])
		name := string(data[at+4 : at+8])
		if name == "IDAT" || uint64(length) > uint64(len(data)-at-frame) {
			return 0, 0
		}
		if name == "pHYs" && length == 9 {
			body := data[at+8:]
			if body[8] != 1 { // no unit: only the shape of a pixel
				return 0, 0
			}
			const metresPerInch = 0.0254
			// Dots per metre are integers: 300 dpi is stored as 11811.
			tidy := func(b []byte) float64 {
				dpi := float64(binary.BigEndian.Uint32(b)) * metresPerInch
				if whole := math.Round(dpi); math.Abs(dpi-whole) < 0.03 {
					return whole
				}
				return dpi
			}
			return tidy(body), tidy(body[4:])
		}
		at += frame + int(length)
	}
	return 0, 0
}

// jfifDensity reads the segment APP0 of a JPEG file (ITU-T T.871, 10.1).
func jfifDensity(data []byte) (x, y float64) {
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		marker, length := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if marker == 0xda || length < 2 || at+2+length > len(data) { // the pixels begin
			return 0, 0
		}
		body := data[at+4 : at+2+length]
		if marker == 0xe0 && len(body) >= 12 && string(body[:5]) == "JFIF\x00" {
			perInch := map[byte]float64{1: 1, 2: 2.54}[body[7]] // inch, centimetre; others say nothing
			dots := func(b []byte) float64 { return float64(binary.BigEndian.Uint16(b)) * perInch }
			return dots(body[8:]), dots(body[10:])
		}
		at += 2 + length
	}
	return 0, 0
}
