package card_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
)

// scattered writes a joint with positions in whole sixteenths of an inch, in
// inches or in millimetres.
func scattered(seed uint64, inches bool) string {
	r := rand.New(rand.NewPCG(seed, 16))
	in, text := 25.4, "mm"
	if inches {
		in, text = 1, "in"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "drawdown: 1\ntitle: Lid\nunits: %s\nkinds: {main: {thread: M10, class: \"8.8\"}}\nfasteners:\n", text)
	for n := range 4 + r.IntN(16) {
		x, y := float64(16*(n%5)+r.IntN(8))/16, float64(16*(n/5)+r.IntN(8))/16
		fmt.Fprintf(&b, "  - {id: M%d, at: [%.10g, %.10g], kind: main}\n", n+1, 2*x*in, 2*y*in)
	}
	fmt.Fprintf(&b, "features: [{bore: [%.10g, %.10g], diameter: %.10g}]\n", -2*in, -2*in, 1.5*in)
	b.WriteString("tighten: {stages: [{torque: 20 N·m}, {torque: 40 N·m}], source: works manual}\n")
	return b.String()
}

// First principles: an inch is 25.4 mm, so the same joint in either unit gives
// the same card, except for the fingerprint of the file.
func TestInchesGiveTheSameCard(t *testing.T) {
	t.Parallel()
	for seed := range testkit.Samples(10, 200) {
		var cards [2]bytes.Buffer
		var joints [2]geometry.Joint
		for k, inches := range []bool{true, false} {
			p := planOf(t, scattered(uint64(seed), inches))
			p.Fingerprint, joints[k] = "", p.Joint
			document, _ := card.Document(p, card.BothSides, sheettest.English(sheettest.Paper(t, "a4")))
			if err := scenetest.Dump(&cards[k], document); err != nil {
				t.Fatal(err)
			}
		}
		for i, f := range joints[0].Fasteners {
			if f.At.Distance(joints[1].Fasteners[i].At) > 1e-9 {
				t.Errorf("joint %d: %s at %v and %v", seed, f.ID, f.At, joints[1].Fasteners[i].At)
			}
		}
		if cards[0].String() != cards[1].String() {
			t.Errorf("joint %d differs: %s", seed, firstDifference(cards[0].String(), cards[1].String()))
		}
	}
}

func firstDifference(a, b string) string {
	other := strings.Split(b, "\n")
	for k, line := range strings.Split(a, "\n") {
		if k >= len(other) || line != other[k] {
			return fmt.Sprintf("line %d: %q, %q", k+1, line, other[min(k, len(other)-1)])
		}
	}
	return "one is longer"
}
