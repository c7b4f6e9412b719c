package png_test

import (
	"bytes"
	"fmt"
	stdpng "image/png"
	"io"

	"drawdown/render/png"
	"drawdown/render/scene"
	"drawdown/render/words"
)

func ExampleWrite() {
	page := scene.Page{Name: "card", Width: 210, Height: 297}
	var file bytes.Buffer
	if err := png.Write(&file, page, 300); err != nil {
		fmt.Println(err)
	}
	size, err := stdpng.DecodeConfig(&file)
	fmt.Println(size.Width, size.Height, err)
	fmt.Println(words.English().Error(png.Write(io.Discard, page, 3000)))
	// Output:
	// 2480 3508 <nil>
	// a picture at 3000 dpi; allowed: 36 to 1200 dpi
}
