package words

// Torque has the words for the figures of a bolt at a terminal. A name before a
// figure can have about 19 letters, a row name 31, a cell 13.
type Torque struct {
	WorkedOut                                   string // in every output with a calculated figure
	Tighten, Given, Set, Warning, Aim, Equation string
	StressArea, LeastSection, Stretch           string
	Stage                                       string // %d: its number
	YieldStress, Head, BearingRing              string
	UnderHead, UnderWasher                      string
	Threads, Engagement, Needed, Factors        string
	Stiffness, Cones, Settlement                string
	Low, Nominal, High                          string // friction: column headings
	Rows                                        TorqueRows
	Breaks, Yields, Yes, No                     string // cells; %s: the preload
	InUnits                                     string // above the figures in other units
	Figures                                     TorqueFigures
	AtWork                                      AtWork
	Notes, Assumed, Sources                     string // headings of lists
}

// AtWork has the words for a joint at work.
type AtWork struct {
	Badge, Holds, HoldsAsUsual, HoldsNot, Legend string // of the sheet
	Clamp, Pressed, Greatest                     string // titles of its charts
	Window, Compressed, Stress                   string // names of figures
	HotYield, Fatigue, Aim                       string
	Low, Nominal, High, Needed                   string // columns: at most 11 letters
	States                                       States
	Limits                                       LimitNames
}

// States are the names of the states of a joint.
type States struct{ Cold, Settled, Hot, UnderLoad string }

// Of returns the name of a state in the JSON output.
func (s States) Of(state string) string {
	switch state {
	case "cold":
		return s.Cold
	case "settled":
		return s.Settled
	case "hot":
		return s.Hot
	}
	return s.UnderLoad
}

// LimitNames are the names of what limits the preload.
type LimitNames struct{ Bolt, Thread, Face, Gasket string }

// Of returns the name of a limit in the JSON output.
func (l LimitNames) Of(by string) string {
	switch by {
	case "bolt":
		return l.Bolt
	case "thread":
		return l.Thread
	case "gasket":
		return l.Gasket
	}
	return l.Face
}

// TorqueRows are the names of figures that depend on friction.
type TorqueRows struct {
	NutFactor, Preload, OfProofLoad, YieldUsed string
	ToStretch, ToThread, ToHead                string // shares of the torque
	AtYield, AtBreaking                        string // torques
	Uses                                       string // %s: of the yield stress
	AtSnug, AfterAngle, AtEnd                  string
	Lasting, Reusable                          string
	ToAim, ToYield, ToGreatest, ToBreak        string // angles
}

// TorqueFigures are the names of figures available in other units.
type TorqueFigures struct {
	Torque, PreloadLow, PreloadNominal, PreloadHigh string // by friction
	ProofLoad, YieldStress, TensileStrength         string
	Diameter, Pitch, BearingFace, Hole              string
	SnugTorque, PreloadAfter                        string
}

// Wrench has the words for the setting of a wrench.
type Wrench struct {
	Set, OnScale, Gets, Adapter, Length, Take, Usable string
}
