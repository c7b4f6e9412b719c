package words

// Revised has the words of the sheet with the differences between two
// revisions.
type Revised struct {
	Badge   string
	Since   string // %s: the older revision
	Letters string // what the letters in the drawing mean
}
