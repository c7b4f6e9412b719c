package strength_test

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/sequence/tension/strength"
)

// must is for valid names.
func must(name string) thread.Thread {
	t, err := thread.Parse(name)
	if err != nil {
		panic(err)
	}
	return t
}

// ISO 898-1: class 8.8 has a proof stress of 600 MPa over M16.
func ExampleParseClass() {
	m20, err := thread.Parse("M20")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := strength.ParseClass("8.8", m20)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: proof %v MPa, yield %v MPa, tensile %v MPa\n", s.Name, s.Proof, s.Yield, s.Tensile)
	// Output: 8.8: proof 600 MPa, yield 660 MPa, tensile 830 MPa
}

// Pinned from our own output: a soft tapped hole, and an insert in it.
func ExampleStrip() {
	class, err := strength.ParseClass("10.9", must("M8"))
	if err != nil {
		fmt.Println(err)
		return
	}
	e := strength.Engagement{Thread: must("M8"), Class: class, Length: 12, Material: "cast aluminium"}
	for _, insert := range []*strength.Insert{nil, {Outer: 10, PitchMm: 1.25}} {
		e.Insert = insert
		r, err := strength.Strip(e)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s; it would take %.1f mm\n", r.First, float64(r.ForBolt))
	}
	// Output:
	// part strips; it would take 20.5 mm
	// part strips; it would take 16.5 mm
}
