package words

// Drawing has the words of the drawing for checking a pattern against the part.
type Drawing struct {
	Badge      string
	Hold       string // what to do with it
	Reduced    string
	Actual     string // what to do with it at actual size
	Marks      string // meaning of cross and circle
	Places     string // content of the table
	ID, Hole   string // column headings; x and y need no words
	NoRoom     string // %d ids did not fit
	InBrackets string // the number cast on the part, after an id
}

// Revised has the words of the sheet with the differences between two
// revisions.
type Revised struct {
	Badge   string
	Since   string // %s: the older revision
	Letters string // what the letters in the drawing mean
}
