package screw

import (
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/tensiontest"
)

// VDI 2230 Part 1, table A1 assumes the face of a hexagon head for socket heads
// too (published values: dw of ISO 4014). By ISO 4762 the socket's own face is
// 3 to 6 % wider, so the torque for the same preload is up to 2.5 % higher and
// never lower.
func TestSocketTorqueIsNearThatOfTheHexagon(t *testing.T) {
	for _, size := range []string{"M6", "M8", "M10", "M12", "M14", "M16", "M20", "M24"} {
		b := Bolt{Thread: tensiontest.Thread(t, size), Class: "10.9", Friction: &Friction{Between(0.12, 0.12), Between(0.12, 0.12)}}
		hexagon, err := Target(b)
		if err != nil {
			t.Fatal(err)
		}
		b.HeadForm = head.Socket
		socket, err := Target(b)
		if err != nil {
			t.Fatal(err)
		}
		if ratio := float64(socket.Torque / hexagon.Torque); ratio < 1 || ratio > 1.025 {
			t.Errorf("%s: %v N·m and %v N·m", size, socket.Torque, hexagon.Torque)
		}
		tensiontest.Near(t, size+" preload", float64(socket.Preload), float64(hexagon.Preload), 1e-12)
	}
}

// A flange wider than its washer bears only on the washer (M16: 30.6 mm on 30
// mm), and a washer does not spread the load beyond its own rim.
func TestWasherNarrowerThanTheFlange(t *testing.T) {
	b := Bolt{Thread: tensiontest.Thread(t, "M16"), Class: "12.9", Lubricant: "oil", HeadForm: head.Flange, Washer: head.NormalWasher}
	r, err := Target(b)
	if err != nil {
		t.Fatal(err)
	}
	if least := unit.Length(30) - 0.52; r.Face != least || r.PartFace != least {
		t.Errorf("face %v, pressed %v, washer at least %v", r.Face, r.PartFace, least)
	}
	if !slices.ContainsFunc(words.English().SayAll(r.Assumptions), func(line string) bool { return strings.Contains(line, "up to class 10.9") }) {
		t.Error(strings.Join(words.English().SayAll(r.Assumptions), "\n"))
	}
}

// A stated hole narrower than the washer's counts no further in than the
// washer leaves free.
func TestWasherHoleWiderThanThePart(t *testing.T) {
	r, err := Target(Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil", Hole: 10.2, Washer: head.NormalWasher})
	if err != nil || r.PartHole != 10.5 || r.Hole != 10.5 {
		t.Errorf("%v, %v, %v", r.PartHole, r.Hole, err)
	}
}
