package cli_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"

	"github.com/rogpeppe/go-internal/testscript"
)

// tracePictures writes the pictures that the scripts trace: a light part with
// four holes and soft edges, a blank page, and half a file.
func tracePictures(env *testscript.Env) error {
	gasket, blank := image.NewGray(image.Rect(0, 0, 600, 400)), image.NewGray(image.Rect(0, 0, 600, 400))
	for y := range 400 {
		for x := range 600 {
			inside := math.Min(math.Min(float64(x)-50, 550-float64(x)), math.Min(float64(y)-50, 350-float64(y)))
			for _, c := range [][2]float64{{100, 100}, {500, 100}, {100, 300}, {480, 290}} {
				inside = math.Min(inside, math.Hypot(float64(x)-c[0], float64(y)-c[1])-16)
			}
			gasket.SetGray(x, y, color.Gray{uint8(140 + 80*math.Max(-1, math.Min(1, inside)))})
			blank.SetGray(x, y, color.Gray{200})
		}
	}
	for name, picture := range map[string]image.Image{"gasket.png": gasket, "blank.png": blank} {
		var b bytes.Buffer
		if err := png.Encode(&b, picture); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(env.WorkDir, name), b.Bytes(), 0o644); err != nil {
			return err
		}
		if name == "gasket.png" {
			if err := os.WriteFile(filepath.Join(env.WorkDir, "half.png"), b.Bytes()[:b.Len()/2], 0o644); err != nil {
				return err
			}
		}
	}
	return nil
}
