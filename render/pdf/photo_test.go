package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"strings"
	"testing"
	"time"

	"drawdown/render/scene"
)

// A photo stands in the file byte for byte, once for two places, at its box, and the
// same document gives the same bytes. From first principles: 10 mm are 28.34646 points.
func TestPhotos(t *testing.T) {
	var made bytes.Buffer
	if err := jpeg.Encode(&made, image.NewGray(image.Rect(0, 0, 30, 20)), nil); err != nil {
		t.Fatal(err)
	}
	photo := scene.Photo{JPEG: made.Bytes(), Box: scene.Box{Left: 10, Top: 20, Right: 40, Bottom: 40}}
	other := photo
	other.Box.Top, other.Box.Bottom = 60, 80
	doc := scene.Document{Pages: []scene.Page{{Width: 100, Height: 100, Photos: []scene.Photo{photo, other}}}}
	file := written(t, doc, time.Time{})
	if n := bytes.Count(file, photo.JPEG); n != 1 {
		t.Errorf("the photo stands in the file %d times", n)
	}
	if !bytes.Equal(file, written(t, doc, time.Time{})) {
		t.Error("the same document gives other bytes")
	}
	plain := read(t, file)[0].content
	for _, want := range []string{"85.03937 0 0 56.69291 28.34646 170.07874 cm"} { // its size, its left, 100 − 40 mm from below
		if !strings.Contains(plain, want) {
			t.Errorf("%s is not in\n%s", want, plain)
		}
	}
	doc.Pages[0].Photos[0].JPEG = nil
	if err := Write(&bytes.Buffer{}, doc, time.Time{}); err == nil || !strings.Contains(fmt.Sprint(err), "photo 1") {
		t.Errorf("a photo without a picture: %v", err)
	}
}
