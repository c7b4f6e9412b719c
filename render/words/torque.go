package words

// Torque is the words of the figures of a bolt at a terminal. A name in front of
// a figure has about 19 letters of room, one of a row 31, a cell 13.
type Torque struct {
	WorkedOut                                   string // stands in every output with a worked-out figure
	Tighten, Given, Set, Warning, Aim, Equation string
	StressArea, YieldStress, Head, BearingRing  string
	UnderHead, UnderWasher                      string
	Threads, Engagement, Needed, Factors        string
	Stiffness, Cones, Settlement                string
	Low, Nominal, High                          string // friction: heads of columns
	Rows                                        TorqueRows
	Breaks, Yields, Yes, No                     string // cells; %s: the preload
	InUnits                                     string // over the figures in other units
	Figures                                     TorqueFigures
	Notes, Assumed, Sources                     string // over lists
}

// TorqueRows are the names of what differs by friction.
type TorqueRows struct {
	NutFactor, Preload, OfProofLoad, YieldUsed string
	ToStretch, ToThread, ToHead                string // shares of the torque
	AtYield, AtBreaking                        string // torques
	Uses                                       string // %s: of the yield stress
	AtSnug, AfterAngle, AtEnd                  string
	Lasting, Reusable                          string
	ToAim, ToYield, ToGreatest, ToBreak        string // angles
}

// TorqueFigures are the names of figures that can be had in other units.
type TorqueFigures struct {
	Torque, PreloadLow, PreloadNominal, PreloadHigh string // by friction
	ProofLoad, YieldStress, TensileStrength         string
	Diameter, Pitch, BearingFace, Hole              string
	SnugTorque, PreloadAfter                        string
}

// Wrench is the words of the setting of a wrench.
type Wrench struct {
	Set, OnScale, Gets, Adapter, Length, Take, Usable string
}
