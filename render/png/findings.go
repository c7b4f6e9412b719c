package png

import "drawdown/geometry/finding"

// Errors of a picture.
const (
	NoResolution finding.Code = "picture resolution" // dpi, least, most
	TooLarge     finding.Code = "picture too large"  // page, width and height in mm, dpi, across, down, most: millions, best: dpi
)
