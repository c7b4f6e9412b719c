package scan

import (
	"bytes"
	"image"
	"image/jpeg"

	"golang.org/x/image/draw"
)

// Thumbnail makes a photo small, for print: its longer side has at most so many pixels.
// It returns the JPEG with its size.
func Thumbnail(photo []byte, most int) (small []byte, width, height int, err error) {
	picture, err := jpeg.Decode(bytes.NewReader(photo))
	if err != nil {
		return nil, 0, 0, err
	}
	size := picture.Bounds().Size()
	if longer := max(size.X, size.Y); longer > most {
		size.X, size.Y = max(1, size.X*most/longer), max(1, size.Y*most/longer)
	}
	made := image.NewRGBA(image.Rectangle{Max: size})
	draw.ApproxBiLinear.Scale(made, made.Bounds(), picture, picture.Bounds(), draw.Src, nil)
	var to bytes.Buffer
	err = jpeg.Encode(&to, made, &jpeg.Options{Quality: photoQuality})
	return to.Bytes(), size.X, size.Y, err
}
