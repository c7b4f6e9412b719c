package png_test

import (
	"bytes"
	"fmt"
	stdpng "image/png"
	"io"

	"drawdown/render/png"
	"drawdown/render/scene"
)

func ExampleWrite() {
	page := scene.Page{Name: "card", Width: 210, Height: 297}
	var file bytes.Buffer
	if err := png.Write(&file, page, 300); err != nil {
		fmt.Println(err)
	}
	size, err := stdpng.DecodeConfig(&file)
	fmt.Println(size.Width, size.Height, err)
	fmt.Println(png.Write(io.Discard, page, 3000))
	// Output:
	// 2480 3508 <nil>
	// a picture at 3000 dpi: the resolution must be from 36 to 1200 dpi
}
