package scan

import (
	"bytes"
	"encoding/binary"
	"image"
)

// cost is the cost of unpacking a picture, known beforehand.
type cost struct {
	mb     int // of memory
	packed int // bytes of the file
	passes int // over all pixels
}

func costOf(data []byte, about image.Config, format string) cost {
	perPixel, passes := float64(bytesPerPixel(about.ColorModel)), 1
	if format == "jpeg" {
		perPixel, passes = jpegCost(data)
	}
	return cost{int(float64(about.Width) * float64(about.Height) * perPixel / (1 << 20)), len(data), passes}
}

// odd reports whether a file is packed as no scanner or camera would: to fill
// the memory or to take long.
func (c cost) odd() bool {
	const (
		mostPasses = 40  // a progressive JPEG has about ten
		fewMB      = 128 // any computer has them
		leastShare = 400 // a blank page of a scanner is packed to a hundredth
	)
	return c.passes > mostPasses || c.mb > fewMB && c.mb > c.packed*leastShare>>20
}

// jpegCost returns the bytes of memory per pixel of a JPEG file, and the number
// of passes over all pixels. A progressive file keeps four bytes a sample until
// the last pass.
func jpegCost(data []byte) (perPixel float64, passes int) {
	perPixel = 3
	for at := 2; at+4 <= len(data); {
		marker, length := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		switch {
		case data[at] != 0xff || marker == 0xff:
			at++ // padding, or something that the decoder refuses
			continue
		case marker == 0 || marker == 1 || marker >= 0xd0 && marker <= 0xd8: // markers without a length
			at += 2
			continue
		case marker == 0xd9: // the end
			return perPixel, passes
		case at+2+length > len(data):
			return perPixel, passes
		}
		body := data[at+4 : max(at+4, at+2+length)]
		at += 2 + length
		switch marker {
		case 0xc0, 0xc1:
			perPixel = samplesPerPixel(body)
		case 0xc2:
			perPixel = 5 * samplesPerPixel(body)
		case 0xda:
			passes++
			at += packedBytes(data[at:])
		}
	}
	return perPixel, passes
}

// samplesPerPixel reads the frame of a JPEG file: 3, or less if colours are
// coarser than brightness.
func samplesPerPixel(frame []byte) float64 {
	const head, component = 6, 3
	sum, across, down := 0, 1, 1
	for at := head; at+component <= len(frame); at += component {
		h, v := int(frame[at+1]>>4), int(frame[at+1]&15)
		sum, across, down = sum+h*v, max(across, h), max(down, v)
	}
	return float64(sum) / float64(across*down)
}

// packedBytes counts the bytes up to the next marker with a length.
func packedBytes(data []byte) int {
	at := 0
	for {
		next := bytes.IndexByte(data[at:], 0xff)
		if next < 0 || at+next+1 >= len(data) {
			return len(data)
		}
		at += next
		if following := data[at+1]; following != 0 && (following < 0xd0 || following > 0xd7) {
			return at
		}
		at += 2
	}
}
