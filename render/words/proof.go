package words

// Proof has the words of the sheet that shows what a trace found in a picture.
type Proof struct {
	Title   string            // Proof: %s
	Counts  map[string]Plural // by role: number found
	Nothing string
	Scale   string // %s; scale %s: the counts, and the source of the scale

	FullSize string
	Reduced  string            // %s: millimetres of the part per millimetre on paper
	Bar      string            // %s mm of the part
	Legend   string            // meaning of the marks
	Size     string            // %d × %s %s: count, diameter and one of Roles
	Roles    map[string]string // roles of holes
	Opening  string            // %s: its id
	Caliper  string            // %s: distances
	Distance string            // %s %s %s mm: two ids and the distance between them

	Look   string // %s: a doubt about the picture
	LookAt string // %s, %s: %s: id, diameter and doubt
	Specks string // %s %s %d: from, to, how many
	NoRoom string // %d: names
	More   string // %d: doubts
}
