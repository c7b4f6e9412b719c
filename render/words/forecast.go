package words

// Forecast is the words of the forecast of what each bolt keeps.
type Forecast struct {
	Badge        string
	WorkedOut    string
	Negligible   string
	Noticeable   string
	Strong       string
	LowestEnds   string // %s: percent
	OneMore      string // %s: percent
	Uneven       string // %d %s: pass and millimetres
	Foundation   string // %s: stiffness
	InMark       string
	InMarkNow    string // the same on the way
	Charts       string
	ChartSays    string
	Pass         string // %d %s: number and what is done
	AfterOneMore string
	Spread       string // %s %s %s: least, mean and most
	Step         string // %d %s %d %s: pass, what is done, number and id of the fastener
	StepUneven   string // %s: millimetres
	Doubts       string
	Guidance     string // stands at the foot of every forecast
}
