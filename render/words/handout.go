package words

// Handout is what the sheets for a class share: the blank sheet, the key, the
// page that tells why, the marked sheet.
type Handout struct {
	Exercise, Key string // badges
	SheetOf       string // sheet %d of %d
	Seed          string // seed %d

	Name, Class, Date string // what a student fills in

	Tighten, Loosen string // the task
	ListTask        string // and how to write it as a list
	// The task where the marks are too small to write in and hold the names.
	NamedTighten, NamedLoosen string

	YourOrder, KeyOrder string // above the boxes for the list

	WhyFirst       string   // the question below them
	KeyLead        string   // what the key is
	KeyMaker       string   // and where the maker gave the order
	Rules          string   // heading of the rules
	Spread, Circle []string // rules for parts, and for a bolt circle
	Row            []string
	SmallLast      string
	Together       string // the bolts of a cap
	Reverse        string // loosening

	Families map[string]string // titles of made-up parts: head, cover, flange, caps
	Main     string            // kinds of bolt of a made-up part
	Small    string
	Above    string // how it is seen

	Why     Why
	Graded  Graded
	Showing Showing
}

// Why is the page that tells why a joint is worked in its order.
type Why struct {
	Badge             string
	Spread, Circle    WhyLayout
	Steps             string // heading of the drawings of the part
	AfterOne          string // after the first
	AfterMany         string // after %d of %d
	AfterAll          string // all %d
	Tight, Now, Loose string // legend of the marks

	Section  string   // heading of the sections, and that they are not to scale
	Back     string   // heading of loosening
	BackText []string // in sentences
	Worked   string   // heading of the figures
	// Figures with their bands, of this order (%[1]s) and of another (%[2]s),
	// which the layout names (%[3]s).
	Lowest, Uneven  string
	NoGain          string // that the lowest bolt gains nothing by the order
	Band            string // what the brackets are, and how far to believe them
	Practice        string // where the page comes from
	Springs         string // what is left out, and the caps %s that no spring presses
	SpringsFirstOff string // the same where they come off first
	Purpose         string // heads what the order is for, in place of figures
}

// WhyLayout is what the page says of one layout: centre outwards, or crosswise
// round a circle.
type WhyLayout struct {
	Title          string
	Wrong, Right   string    // above the drawings of each way
	Wrongs, Rights [3]string // under each drawing, in a few words
	Other          string    // names the other order
	Purpose        string    // what the order is for
}

// Graded is an answer that is graded, and the summary of a class.
type Graded struct {
	Badge, Summary string            // badges
	Outcomes       map[string]string // by exercise.Outcome
	AtLine         string            // line %d of the table: where the row is that could not be read
	Keeps          string            // said where there is nothing to mend
	Look           string            // heading of the findings
	Drawn          string            // caption of the drawing: your numbers, the black ones to look at
	DrawnAll       string            // caption where none is black
	Student, Sheet string            // columns of the summary
	Verdict, What  string
	Count          string            // %d answers: %d right, ...
	Most           string            // heading: what was missed most
	Times          string            // %[2]s: %[1]d of %[3]d
	Names          map[string]string // what breaks a rule in a word or two, by judge.Rule
}

// Showing is the page and the picture that show the order at a projector.
type Showing struct {
	Play, Pause, Back, Forward string
	First, Last                string
	Speed                      string
	Slower, Faster             string
	Step                       string // step %[1]d of %[2]d
	Stage                      string // stage %[1]d of %[2]d
	Start                      string // before the first step
	Done                       string // after the last
	Keys                       string // what the keys do
	Part                       string // name of the drawing for a screen reader
	TurnBack, Out, Wait        string // what a stage does, where its figure does not say it
	BackOff                    string
	WorkedOut                  string
	Tightening, Loosening      string
}
