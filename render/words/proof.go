package words

// Proof is the words of the sheet that shows what a trace found in a picture.
type Proof struct {
	Title   string            // Proof: %s
	Counts  map[string]Plural // by role: how many were found
	Nothing string
	Scale   string // %s; scale %s: the counts, and where the scale comes from

	FullSize string
	Reduced  string            // %s: how many millimetres of the part are one on paper
	Bar      string            // %s mm of the part
	Legend   string            // what the marks are
	Size     string            // %d × %s %s: count, diameter and one of Roles
	Roles    map[string]string // what a hole is taken for
	Opening  string            // %s: its id
	Caliper  string            // %s: distances
	Distance string            // %s %s %s mm: two ids and what lies between

	Look   string // %s: a doubt about the picture
	LookAt string // %s, %s: %s: id, diameter and doubt
	Specks string // %s %s %d: from, to, how many
	NoRoom string // %d: names
	More   string // %d: doubts
}
