package stiffness

import (
	"fmt"
	"math"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// Roughness names a span of the mean peak-to-valley height Rz.
type Roughness string

const (
	Fine   Roughness = "Rz below 10 µm"
	Medium Roughness = "Rz 10 to 40 µm" // machined faces; the default
	Coarse Roughness = "Rz 40 to 160 µm"
)

// LoadDirection is that of the working load.
type LoadDirection string

const (
	AlongBolt  LoadDirection = "along the bolt" // the default
	AcrossBolt LoadDirection = "across the bolt"
)

// embedding holds what flattens, in µm: in the thread, under each head or nut,
// and in each joint between parts. VDI 2230-1, table 5 (values from memory).
var embedding = map[Roughness]map[LoadDirection][3]float64{
	Fine:   {AlongBolt: {3, 2.5, 1.5}, AcrossBolt: {3, 3, 2}},
	Medium: {AlongBolt: {3, 3, 2}, AcrossBolt: {3, 4.5, 2.5}},
	Coarse: {AlongBolt: {3, 4, 3}, AcrossBolt: {3, 6.5, 3.5}},
}

// Roughnesses and LoadDirections list what can be named.
var (
	Roughnesses    = []Roughness{Fine, Medium, Coarse}
	LoadDirections = []LoadDirection{AlongBolt, AcrossBolt}
)

// Embedding gives how far the surfaces flatten, by VDI 2230-1, table 5: one
// thread, the faces under head and nut, and the joints between the parts.
func Embedding(r Roughness, d LoadDirection, faces, joints int) (micrometres float64, err error) {
	if !slices.Contains(Roughnesses, r) {
		return 0, fmt.Errorf("roughness %q is not known; allowed: %s, %s, %s", r, Fine, Medium, Coarse)
	}
	if !slices.Contains(LoadDirections, d) {
		return 0, fmt.Errorf("load %q is not known; allowed: %s, %s", d, AlongBolt, AcrossBolt)
	}
	const most = 100
	if faces < 0 || faces > 2 || joints < 0 || joints > most {
		return 0, fmt.Errorf("%d faces under head and nut and %d joints; allowed: up to 2 faces and %d joints", faces, joints, most)
	}
	row := embedding[r][d]
	return row[0] + float64(faces)*row[1] + float64(joints)*row[2], nil // VDI 2230-1, section 5.4.2.1: fZ = Σ fZi
}

// SettlementLoss gives the preload lost as the surfaces flatten.
func SettlementLoss(micrometres float64, bolt, members Stiffness) unit.Force {
	return unit.Force(micrometres / 1000 / float64(bolt.Resilience()+members.Resilience())) // VDI 2230-1, section 5.4.2.1: FZ = fZ/(δS + δP)
}

// Settlement is what is left of a preload when the surfaces have flattened.
type Settlement struct {
	Micrometres float64
	Loss, Left  unit.Force
	LossShare   float64
	Joint       Joint

	Notes       []string
	Assumptions []string
	Sources     []string
}

// Settle works out the preload lost by settlement. Empty roughness and
// direction take the defaults. The error says what is allowed.
func Settle(b screw.Bolt, g Grip, preload unit.Force, r Roughness, d LoadDirection) (Settlement, error) {
	joint, err := Of(b, g)
	if err != nil {
		return Settlement{}, err
	}
	if !(preload > 0 && !math.IsInf(float64(preload), 1)) {
		return Settlement{}, fmt.Errorf("preload %.4g N; allowed: above 0", float64(preload))
	}
	s := Settlement{Joint: joint, Assumptions: joint.Assumptions[:len(joint.Assumptions):len(joint.Assumptions)]}
	if r == "" {
		r = Medium
		s.Assumptions = append(s.Assumptions, "surfaces of "+string(Medium)+", assumed")
	}
	if d == "" {
		d = AlongBolt
		s.Assumptions = append(s.Assumptions, "working load "+string(AlongBolt)+", assumed")
	}
	faces, joints := 2, len(g.Layers)-1
	if g.TappedIn != "" {
		faces, joints = 1, len(g.Layers)
	}
	if b.Washer == head.NormalWasher {
		joints++ // between the washer and the part
	}
	if s.Micrometres, err = Embedding(r, d, faces, joints); err != nil {
		return Settlement{}, err
	}
	s.Loss = min(SettlementLoss(s.Micrometres, joint.Bolt, joint.Members), preload)
	s.Left, s.LossShare = preload-s.Loss, float64(s.Loss/preload)
	if s.LossShare > muchSettlement {
		s.Notes = []string{fmt.Sprintf("the surfaces flatten by %.0f µm and take %.0f %% of the preload: a longer grip or fewer joints would keep it", s.Micrometres, s.LossShare*100)}
	}
	s.Sources = append(joint.Sources[:len(joint.Sources):len(joint.Sources)], "VDI 2230 Part 1, table 5 (settlement)")
	return s, nil
}

// muchSettlement is the share of the preload from which on a loss is worth a
// word (common practice, no source).
const muchSettlement = 0.15
