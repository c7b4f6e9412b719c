package svg_test

import (
	"fmt"
	"os"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/svg"
)

// The length of the text is that of the typeface; the rest follows from the scene.
func ExampleWrite() {
	const figure = "40 N·m"
	page := scene.Page{Name: "stage 1", Width: 40, Height: 10, Items: []scene.Item{
		scene.Shape{Path: scene.Rect(1, 1, 38, 8, 0), Stroke: scene.Black, Width: 0.4},
		scene.Text{At: scene.Point{X: 20, Y: 7}, Size: 6, Width: font.Width(figure, scene.Bold, 6), Weight: scene.Bold, Anchor: scene.Middle, Ink: scene.Black, Content: figure},
	}}
	if err := svg.Write(os.Stdout, page); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="10mm" viewBox="0 0 40 10" role="img">
	// <title>stage 1</title>
	// <rect width="40" height="10" fill="#ffffff"/>
	// <g fill="none" stroke-linecap="round" stroke-linejoin="round" font-family="Go, Arial, 'Liberation Sans', Helvetica, sans-serif" xml:space="preserve">
	// <path d="M1,1L39,1L39,9L1,9Z" stroke="#111111" stroke-width="0.4"/>
	// <text x="20" y="7" font-size="6" font-weight="bold" text-anchor="middle" textLength="19.668" lengthAdjust="spacingAndGlyphs" fill="#111111">40 N·m</text>
	// </g>
	// </svg>
}
