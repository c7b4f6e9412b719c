package words

// Handout has the words of the sheets for a class: the blank sheet, the key,
// the explanation page, the marked sheet.
type Handout struct {
	Exercise, Key string // badges
	SheetOf       string // sheet %d of %d
	Seed          string // seed %d

	Name, Class, Date string // for the student to fill in

	Tighten, Loosen string // the task
	ListTask        string // how to write it as a list
	// The task if the marks are too small to write in, and have the names in
	// them.
	NamedTighten, NamedLoosen string

	YourOrder, KeyOrder string // above the boxes for the list

	WhyFirst       string   // the question below the boxes
	KeyLead        string   // what the key is
	KeyMaker       string   // the same if the maker gave the order
	Rules          string   // heading of the rules
	Spread, Circle []string // rules for parts in general, and for a bolt circle
	Row            []string
	SmallLast      string
	Together       string // the bolts of a cap
	Reverse        string // loosening

	Families map[string]string // titles of generated parts: head, cover, flange, caps
	Main     string            // kinds of bolts of a generated part
	Small    string
	Above    string // name of the view

	Why     Why
	Graded  Graded
	Showing Showing
}

// Why has the words of the page that explains the order of a joint.
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
	BackText []string // sentences
	Worked   string   // heading of the figures
	// Figures with their ranges, of this order (%[1]s) and of another (%[2]s),
	// named by the layout (%[3]s).
	Lowest, Uneven  string
	NoGain          string // that the order does not help the lowest bolt
	Band            string // meaning of the brackets, and how reliable they are
	Practice        string // basis of the page
	Springs         string // what is left out, and the caps %s without spring load
	SpringsFirstOff string // the same if they come off first
	Purpose         string // heading of the purpose of the order, instead of figures
}

// WhyLayout has the texts for one layout: centre outwards, or crosswise around
// a circle.
type WhyLayout struct {
	Title          string
	Wrong, Right   string    // above the drawings of each way
	Wrongs, Rights [3]string // below each drawing, in a few words
	Other          string    // name of the other order
	Purpose        string    // purpose of the order
}

// Graded has the words of a graded answer, and of the summary of a class.
type Graded struct {
	Badge, Summary string            // badges
	Outcomes       map[string]string // by exercise.Outcome
	AtLine         string            // line %d of the table: the row that could not be read
	Keeps          string            // if there is nothing to correct
	Look           string            // heading of the findings
	Drawn          string            // caption of the drawing: your numbers, check the black ones
	DrawnAll       string            // caption if none is black
	Student, Sheet string            // columns of the summary
	Verdict, What  string
	Count          string            // %d answers: %d right, ...
	Most           string            // heading: what was missed most
	Times          string            // %[2]s: %[1]d of %[3]d
	Names          map[string]string // short names of broken rules, by judge.Rule
}

// Showing has the words of the page and the picture that show the order on a
// projector.
type Showing struct {
	Play, Pause, Back, Forward string
	First, Last                string
	Speed                      string
	Slower, Faster             string
	Step                       string // step %[1]d of %[2]d
	Stage                      string // stage %[1]d of %[2]d
	Start                      string // before the first step
	Done                       string // after the last
	Keys                       string // the keys and their functions
	Part                       string // name of the drawing for a screen reader
	TurnBack, Out, Wait        string // action of a stage, if its figure does not say it
	BackOff                    string
	WorkedOut                  string
	Tightening, Loosening      string
}
