package plan

import (
	"fmt"
	"math"
	"strings"
	"sync"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// usualFace is the bearing face in diameters where the thread has no standard
// head: Shigley 9th ed., section 8-5.
const usualFace = 1.5

// usualFlange is the same of a flange (ISO 4162: 1.86 to 1.93).
const usualFlange = 1.9

// settleHead doubts a head that does not go with its thread or its hole, and
// then goes on with the standard one.
func (j *judge) settleHead() {
	if hole := j.bolt.Hole; hole != 0 && float64(hole) < j.kind.Thread.MajorMm {
		size, _, _ := strings.Cut(j.kind.Thread.Name, "×")
		j.doubt(0, AboutHead, size, fmt.Sprintf("does not go through a hole of %v", hole), "thread and hole")
		j.bolt.Hole = 0
	}
	j.settleFace()
	_, err := screw.AtTorque(j.bolt, 1)
	if err == nil {
		return
	}
	stated := j.bolt.HeadAcross != 0 || j.bolt.WasherFace != 0 || j.bolt.Hole != 0
	j.bolt.HeadForm, j.bolt.HeadAcross, j.bolt.WasherFace, j.bolt.Hole = "", 0, 0, 0
	j.settleFace()
	if _, still := screw.AtTorque(j.bolt, 1); stated && still == nil {
		j.doubt(0, AboutHead, "the head does not fit:", err.Error(), "head, washer and hole")
	}
}

// settleFace takes the usual bearing face where neither the file nor a standard
// has one.
func (j *judge) settleFace() {
	if j.bolt.HeadAcross != 0 || j.bolt.WasherFace != 0 {
		return
	}
	form, face := j.bolt.HeadForm, usualFace
	switch form {
	case "":
		form = head.Hexagon
	case head.Flange:
		face = usualFlange
	}
	if _, _, err := head.Face(*j.kind.Thread, form); err != nil {
		j.bolt.WasherFace = unit.Length(face * j.kind.Thread.MajorMm)
	}
}

// judgePressure doubts a bearing face that not even the hardest of the usual
// materials bears; the file does not say what is clamped.
func (j *judge) judgePressure() {
	if j.preload == 0 {
		return
	}
	hardest := hardestMaterial()
	bolt, err := screw.Complete(j.bolt)
	if err != nil {
		return
	}
	r, err := head.UnderHead(bolt.Bearing, j.preload, hardest.Name)
	if err != nil || r.Used <= 1 {
		return
	}
	j.doubt(0, AboutHead, j.ring(), fmt.Sprintf("presses about %.0f MPa at %.0f kN (worked out), and the hardest of the usual materials bears %.0f MPa",
		math.Round(float64(r.Pressure)/50)*50, float64(j.preload)/1000, float64(r.Limit)), "head, washer and hole")
}

// ring names the bearing face as the file states it.
func (j *judge) ring() string {
	hole := "the usual hole"
	if j.bolt.Hole != 0 {
		hole = fmt.Sprintf("a hole of %v", j.bolt.Hole)
	}
	switch {
	case j.bolt.WasherFace != 0:
		return fmt.Sprintf("a bearing face of %v on %s", j.bolt.WasherFace, hole)
	case j.bolt.HeadAcross != 0:
		return fmt.Sprintf("a head of %v on %s", j.bolt.HeadAcross, hole)
	}
	if j.bolt.HeadForm != "" {
		return fmt.Sprintf("a %s head on %s", j.bolt.HeadForm, hole)
	}
	return "the usual head on " + hole
}

// hardestMaterial gives the material that bears most under a head.
var hardestMaterial = sync.OnceValue(func() strength.Material {
	var hardest strength.Material
	for _, name := range strength.Materials() {
		if m, err := strength.ParseMaterial(name); err == nil && m.LimitingPressure > hardest.LimitingPressure {
			hardest = m
		}
	}
	return hardest
})
