package words

// Forecast is the words of the forecast of what each bolt keeps.
type Forecast struct {
	Badge        string
	WorkedOut    string
	Negligible   string
	NeverAgain   string // %s: kinds that an angle ends
	Noticeable   string
	Strong       string
	NotOnAngle   string            // joins an advice to repeat
	Acts         string            // %s: the class in words
	ActsClass    map[string]string // by class
	LowestEnds   string            // %s: percent
	OneMore      string            // %s: percent
	NotFelt      string            // in its place where no wrench would tell
	Taken        string            // %s %s: points of percent and the bolt that takes them
	Uneven       string            // %d %s: pass and millimetres
	Foundation   string            // %s: stiffness
	InMark       string
	AtMark       string // where figures stand outside the marks, behind the number
	Small        string // what stands beside the mark
	InMarkNow    string // the same on the way
	Charts       string
	ChartSays    string
	Pass         string // %d %s: number and what is done
	AfterOneMore string
	Spread       string // %s %s %s: least, mean and most
	Step         string // %d %s %d %s: pass, what is done, number and id of the fastener
	StepUneven   string // %s: millimetres
	ToTargets    string // what a pass does that aims at a target for each bolt
	Targets      string // over those
	TargetsSay   string
	TargetOf     string // head of a column
	Doubts       string
	NotInModel   string
	EachPass     string // over a picture of every pass
	Guidance     string // stands at the foot of every forecast
	Doubt        Doubt
	Basis        Basis
	Other        OtherWays
}

// Doubt is why a forecast is not to be trusted.
type Doubt struct {
	PastYield     string // %s %s: kind and kN
	NoSnugPass    string
	SlackAtTheEnd string // %d: bolts
	SlackOnTheWay string // %d: bolts
	Hardening     string
	Thick         string // %s: times its thickness
	Preview       string
	TorqueFalls   string // %d %s %s %s %d: stage, kind, its torque, the greater torque and its stage
}

// Basis is what a forecast rests on.
type Basis struct {
	Stated, Assumed string            // %s: the facts
	Facts           map[string]string // by kind, %s each: what it is
	Gaskets         map[string]string // by the words of the pattern file
	Materials       map[string]string // by those of the list of materials
	Hundred         string            // %s: what it is, by kind
	HundredTorque   string            // %s %s %s: kind, torque and kN
	HundredMean     string            // %s: kind
	HundredYield    string            // %s %s: kind and kN
	HundredForce    string            // %s: kN
	Unlisted        string            // what else is assumed
	Separate        string            // assumed of caps and the like
	FacesMeet       string            // assumed of bare faces
}

// OtherWays is the words of the comparison with other ways to do the work.
type OtherWays struct {
	Heading                             string
	Way, Least, SD, Uneven, Path, Rules string            // heads of the table
	RuleWords                           map[string]string // by the verdict on an order
	Names                               map[string]string // of the trials; orders are among the ways of a sheet
	Says                                string
	MendFile                            string
	Leave                               string
	LeaveKeeps                          string // %s %s: percent kept, scatter of torque
	LeaveRepeat                         string // %s %s %s: percent before the file's own repeat and after, scatter of torque
	NoCure                              string // %s: percent
	NoCureWith                          string // %s %s %s: percent, name of the way, its percent
	UntilNoNutTurns                     string
	Passes                              string // %d: passes on the softest gasket
	AskFor                              string // %s: name of the way
	Lifts                               string // %s %s %s %s: percent before and with it, at the worst and nominal
	PassedOver                          string // joins a verdict without a cure
	RecipeIs                            string // the recipe where it is named as advice
	OrderOf                             string // %s %s: name of the way and ids
	OnlyToCompare                       string // of a way that leaves something out
	OnceMore                            string // %s: torques and kinds
	ButDeparts                          string
	ButUneven                           string // %s %s: millimetres with it and before
	MakerStands                         string
	SnugSame                            string
	SnugUneven                          string // %s %s: millimetres without and with the first stage
	SnugLowest                          string // %s %s: percent without and with
}
