package photo

// A target is a printed sheet: a dark band round the room for the part, with plain
// paper outside of it.
const (
	BandMm   = 8.0  // width of the band
	MarginMm = 12.0 // of plain paper left, right and above
	FootMm   = 36.0 // of paper below the band, with words and a check bar
)

// TargetSize returns the outer width and height of the band on a sheet.
func TargetSize(paperWidth, paperHeight float64) (width, height float64) {
	return paperWidth - 2*MarginMm, paperHeight - MarginMm - FootMm
}
