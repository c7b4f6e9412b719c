package words

// Forecast has the words of the forecast of the preload each bolt keeps.
type Forecast struct {
	Badge        string
	WorkedOut    string
	InMark       string
	AtMark       string // if figures are outside the marks, after the number
	Small        string // meaning of the text beside the mark
	EachMark     string // the same for several drawings, some with figures outside
	ThickEdge    string // meaning of a thick edge
	BlackMark    string // meaning of a black mark
	InMarkNow    string // the same during the work
	Charts       string
	ChartSays    string
	Pass         string // %d %s: number and action
	AfterOneMore string
	Spread       string // %s %s %s: least, mean and most
	Step         string // %d %s %d %s: pass, action, number and id of the fastener
	StepUneven   string // %s: millimetres
	Targets      string // heading
	TargetsSay   string
	TargetOf     string // column heading
	Doubts       string
	NotInModel   string // %s: what is not in the model
	EachPass     string // above a picture of every pass
	Guidance     string // at the foot of every forecast
	Basis        Basis
	Other        OtherWays
}

// Basis is what a forecast is based on.
type Basis struct {
	Stated, Assumed string // %s: the facts
	Hundred         string // %s: the meaning of 100 %, by kind
	Unlisted        string // other assumptions
}

// OtherWays has the words of the comparison with other ways to do the work.
type OtherWays struct {
	Heading                             string
	Way, Least, SD, Uneven, Path, Rules string            // table headings
	RuleWords                           map[string]string // by the verdict on the order
	Says                                string
	OrderOf                             string // %s %s: name of the way, and ids
	OnlyToCompare                       string // for a way that leaves something out
}
