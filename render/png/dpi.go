package png

import "drawdown/render/scene"

// CheckDPI says whether a page of that size, in millimetres, can be painted at
// the resolution; the error says what is allowed.
func CheckDPI(dpi int, width, height float64) error {
	_, _, err := pixels(scene.Page{Name: "page", Width: width, Height: height}, dpi)
	return err
}
