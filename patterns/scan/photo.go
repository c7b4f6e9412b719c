package scan

import (
	"bytes"
	"image"
	"image/draw"
	"image/jpeg"

	"drawdown/geometry/finding"
)

const (
	mostPhotoPixels = 50_000_000
	photoQuality    = 88
)

// Photo re-encodes a picture as JPEG: upright, in its colours, and without any
// metadata, such as where it was taken.
func Photo(data []byte) ([]byte, error) {
	about, format, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, finding.Failed(NotAPhoto, nil)
	}
	if about.Width <= 0 || about.Height <= 0 || about.Width > mostPhotoPixels/about.Height {
		return nil, finding.Failed(PhotoTooLarge, finding.Values{"width": about.Width, "height": about.Height, "most": mostPhotoPixels / 1_000_000})
	}
	if c := costOf(data, about, format); c.mb > mostUnpackedMB || c.odd() {
		return nil, finding.Failed(PhotoOddlyPacked, nil)
	}
	picture, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, finding.Failed(NotAPhoto, nil)
	}
	var made bytes.Buffer
	err = jpeg.Encode(&made, turnedUpright(picture, readTags(data, format).orientation), &jpeg.Options{Quality: photoQuality})
	return made.Bytes(), err
}

// turnedUpright turns a picture by its orientation. Transparent pixels become
// white: a photo has no background.
func turnedUpright(picture image.Image, orientation int) image.Image {
	if _, plain := picture.(*image.YCbCr); plain && !turns(orientation) {
		return picture
	}
	b := picture.Bounds()
	flat := image.NewRGBA(image.Rect(0, 0, b.Dx(), b.Dy()))
	draw.Draw(flat, flat.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(flat, flat.Bounds(), picture, b.Min, draw.Over)
	if !turns(orientation) {
		return flat
	}
	size, from := turning(orientation, b.Dx(), b.Dy())
	turned := image.NewRGBA(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			at := from(x, y)
			copy(turned.Pix[turned.PixOffset(x, y):][:4], flat.Pix[flat.PixOffset(at.X, at.Y):][:4])
		}
	}
	return turned
}
