package words

// Forecast is the words of the forecast of what each bolt keeps.
type Forecast struct {
	Badge        string
	WorkedOut    string
	InMark       string
	AtMark       string // where figures stand outside the marks, behind the number
	Small        string // what stands beside the mark
	EachMark     string // the same of several drawings, some with figures outside
	ThickEdge    string // what a thick edge of a mark says
	BlackMark    string // and a black mark
	InMarkNow    string // the same on the way
	Charts       string
	ChartSays    string
	Pass         string // %d %s: number and what is done
	AfterOneMore string
	Spread       string // %s %s %s: least, mean and most
	Step         string // %d %s %d %s: pass, what is done, number and id of the fastener
	StepUneven   string // %s: millimetres
	Targets      string // over those
	TargetsSay   string
	TargetOf     string // head of a column
	Doubts       string
	NotInModel   string // %s: what is not
	EachPass     string // over a picture of every pass
	Guidance     string // stands at the foot of every forecast
	Basis        Basis
	Other        OtherWays
}

// Basis is what a forecast rests on.
type Basis struct {
	Stated, Assumed string // %s: the facts
	Hundred         string // %s: what 100 % is, by kind
	Unlisted        string // what else is assumed
}

// OtherWays is the words of the comparison with other ways to do the work.
type OtherWays struct {
	Heading                             string
	Way, Least, SD, Uneven, Path, Rules string            // heads of the table
	RuleWords                           map[string]string // by the verdict on an order
	Says                                string
	OrderOf                             string // %s %s: name of the way and ids
	OnlyToCompare                       string // of a way that leaves something out
}
