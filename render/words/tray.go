package words

// Tile has the words that all full-size sheets share.
type Tile struct {
	PrintFull    string // how to print and measure: %.0f mm
	PrintReduced string // %s: millimetres of the part per millimetre on paper
	BarReduced   string // %.0f mm of the part
	Join         string // how to cut and join the sheets
	LeftOut      string // crossed out in the key plan
	OwnEdge      string // the dashed edge is drawn around the fasteners
	Underside    string
	Top          string // at the top of a view without a front
}

// Tray has the words of the sheets to lay fasteners on.
type Tray struct {
	Name      string // of the sheet, in its heading
	Lay       string // what to do
	Numbers   string // meaning of the large numbers
	Beside    string // meaning of the text beside a spot
	Stations  string // meaning of the dashed rings
	Clusters  string // meaning of the outlines with a name
	Once      string // what to do with single-use fasteners
	Hexagon   string // %s: width across flats
	Nut       string // %s: the same for a stud's nut
	Washer    string // %s: its diameter
	RoundHead string // %s: its diameter
	NoSize    string
	NoRoom    string // %d words did not fit
}

// Target has the words of the sheet that a part is photographed on.
type Target struct {
	Title string
	Print string // how to print and measure: %.0f mm of the bar, %s and %s mm of the band
	Lay   string // what to do
	Trace string // the command: %s is the paper
}

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
