package stiffness

import (
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// Flattening in µm of machined faces (Rz 10 to 40 µm) under a load along the
// bolt: VDI 2230-1, table 5 (values from memory).
const embeddingThread, embeddingFace, embeddingJoint = 3., 3., 2.

// embedding returns how far the surfaces flatten in µm: one thread, the faces
// under head and nut, and the joints between the parts.
func embedding(faces, joints int) float64 {
	return embeddingThread + float64(faces)*embeddingFace + float64(joints)*embeddingJoint // VDI 2230-1, section 5.4.2.1: fZ = Σ fZi
}

// SettlementLoss returns the preload lost when the surfaces flatten.
func SettlementLoss(micrometres float64, bolt, members Stiffness) unit.Force {
	return unit.Force(micrometres / 1000 / float64(bolt.Resilience()+members.Resilience())) // VDI 2230-1, section 5.4.2.1: FZ = fZ/(δS + δP)
}

// Settlement is the preload lost when the surfaces have flattened, and what
// remains.
type Settlement struct {
	Micrometres float64
	Loss        unit.Force
	LossShare   float64
	Joint       Joint

	Assumptions []finding.Finding
	Sources     []string
}

// Settle calculates the preload lost by settlement. The error says what is
// allowed.
func Settle(b screw.Bolt, g Grip, preload unit.Force) (Settlement, error) {
	joint, err := Of(b, g)
	if err != nil {
		return Settlement{}, err
	}
	if !(preload > 0 && !math.IsInf(float64(preload), 1)) {
		return Settlement{}, finding.Failed(NoPreload, finding.Values{"preload": preload})
	}
	faces, joints := 2, len(g.Layers)-1
	if g.TappedIn != "" {
		faces, joints = 1, len(g.Layers)
	}
	if b.Washer == head.NormalWasher {
		joints++ // between the washer and the part
	}
	s := Settlement{Joint: joint, Micrometres: embedding(faces, joints)}
	s.Assumptions = slices.Concat(joint.Assumptions, []finding.Finding{finding.Noted(SurfacesAssumed, nil), finding.Noted(LoadAlongAssumed, nil)})
	s.Sources = slices.Concat(joint.Sources, []string{"VDI 2230 Part 1, table 5 (settlement)"})
	s.Loss = min(SettlementLoss(s.Micrometres, joint.Bolt, joint.Members), preload)
	s.LossShare = float64(s.Loss / preload)
	return s, nil
}
