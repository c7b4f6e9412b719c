package words

// Condition is the words of the sheet on which the state of every fastener is
// noted as it comes out.
type Condition struct {
	Badge string

	Order, ID, Kind string // heads of the columns
	Ticks           [6]string
	Length, Remark  string

	New      string // short mark of a fastener that is used once
	NewMeans string
	Measure  string // how to measure, against what

	Gives, Breaks Trouble
	Common        string // that it is common practice, and who goes before it
	Where         string // a line to write on: which broke, where, how deep
	AllThere      string // %d fasteners
	SmallDrawing  string // what the numbers in the drawing are
}
