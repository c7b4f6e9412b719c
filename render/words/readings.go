package words

// Readings has the words of the sheet for the distances measured on a part.
type Readings struct {
	Badge           string
	About           string // heading: %[1]d holes, %[2]d distances
	Measure         string // what to do
	Enter           string // how to enter it: %s is the file
	Part            string // heading of the drawing
	Rough           string // meaning of the drawing of what was measured until now
	Draw            string // in the empty frame: %s are the names of the holes
	Diameters       string // heading
	DiametersStated string // the same, if some are printed
	Distances       string // heading
	Hole            string // column headings
	Diameter        string
	Number          string
	Holes           string
	Outside         string
	Inside          string
	Centres         string
	By              string // fields to sign
	Caliper         string
}
