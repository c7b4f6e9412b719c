package words

// Book has the words of the book of a machine. A joint is named by its number
// in teardown order and its title.
type Book struct {
	SingleSided    string // how to print
	CardHead       string
	TrayHead       string
	ConditionHead  string
	LoosenHead     string
	TightenHead    string
	AllReady       string // %s: the title of a list
	RowsFilled     string // %s: the title of a list
	SizesFilled    string // %s: the same, in front of the strip
	FitNew         string // %s: what is new of a part
	LaterChecks    string
	NewGasket      string // %s
	WithSealant    string // %s
	Badge          string
	Identity       string // book %s: the fingerprint of all files
	Contents       string
	Page           string
	Overview       string
	OverviewSays   string // how to read the small drawings
	Fasteners      Plural // %d fasteners
	StripDown      string
	BuildUp        string
	StripSays      string
	BuildSays      string
	Loosen         string // %d %s: the number and title of the joint
	Tighten        string // %d %s
	Tray           string // %d %s
	Condition      string // %d %s
	Done           string
	Step           string
	Part           string // %s: a part to remove
	PartBack       string // %s: a part to put back
	Warning        string // %s
	Before         string // %s: to be done before a joint
	Ready          string
	ReadySays      string
	Joints         string
	Count          string
	Size           string
	Class          string
	State          string // whether a fastener is new
	New            string
	Inspect        string
	Reuse          string
	Mixed          string // if the file does not say
	Gaskets        string
	Sealants       string
	Lubricants     string
	Have           string // ticked when it is ready
	What           string
	Wrenches       string
	WrenchSays     string
	Joint          string
	Kind           string
	Socket         string
	Torque         string
	AngleOn        string
	Key            string // %s: the size of a hexagon key
	NoWidth        string // if the width of the head is unknown
	Gauge          string
	Checks         string
	ChecksSays     string
	CheckPass      string // %d %s: stage and torque
	Wait           string // %d %s: stage and time
	Again          string // %s: when
	When           string
	Signed         string
	NoChecks       string
	Tools          string
	ToolsSays      string
	Values         string // of the whole machine
	ValuesSay      string
	MeasuredBefore string
	MeasuredAfter  string
	Throughout     string // above what applies to the whole work
	ByManual       string // %s: the fasteners
	FiguresOnPage  string // %s, %s: the page and the fasteners
	FromManual     string
	FromManualSays string
	PartHead       string
	SizeHead       string
	Figure         string
	ManualPage     string
	TightenedBy    string
	Oiled          string // heading of the lubricant column
	Stud           string // %s: the thread
	Nut            string // %s: the thread
	ByStandard     string // meaning of ≈ before a width
}
