package words

// Tile is what all full-size sheets share.
type Tile struct {
	PrintFull    string // how to print, and to measure: %.0f mm
	PrintReduced string // %s: how many millimetres of the part are one on paper
	BarReduced   string // %.0f mm of the part
	Join         string // how to cut and lay the sheets
	LeftOut      string // crossed in the key plan
	OwnEdge      string // the edge is dashed: drawn round the fasteners
	Underside    string
	Top          string // at the top of a view that has no front
}

// Tray is the words of the sheets to lay fasteners on.
type Tray struct {
	Name      string // of the sheet, on its head
	Lay       string // what to do
	Numbers   string // what the large numbers are
	Beside    string // what stands beside a spot
	Stations  string // what the dashed rings are
	Clusters  string // what the outlines with a name are
	Once      string // what to do with fasteners that are used once
	Hexagon   string // %s: width across flats
	Nut       string // %s: the same of a stud's nut
	Washer    string // %s: its diameter
	RoundHead string // %s: its diameter
	NoSize    string
	NoRoom    string // %d words found no room
}
