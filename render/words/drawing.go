package words

// Drawing is the words of the drawing that a pattern is checked by, against the
// part.
type Drawing struct {
	Badge      string
	Hold       string // what to do with it
	Reduced    string
	Actual     string // what to do with it at its true size
	Marks      string // what cross and circle are
	Places     string // what the table gives
	ID, Hole   string // heads of columns; x and y need no words
	NoRoom     string // %d ids found no room
	InBrackets string // the number cast on the part, behind an id
}
