package thread_test

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/render/words"
)

// ISO 724 and ISO 898-1, M10: d2 9.026 mm, d3 8.160 mm, As 58.0 mm².
func ExampleParse() {
	t, err := thread.Parse("m10 x 1,5")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(t.Name)
	fmt.Printf("d2 %.3f mm, d3 %.3f mm, As %.1f mm²\n", t.PitchDiameterMm(), t.MinorDiameterMm(), t.StressAreaMm2())
	// Output:
	// M10×1.5
	// d2 9.026 mm, d3 8.160 mm, As 58.0 mm²
}

// Shigley 9th ed., Table 8-2: 3/8-16 UNC has a stress area of 0.0775 in².
func ExampleThread_StressAreaMm2() {
	t, err := thread.Parse(`3/8" UNC`)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %.4f in²\n", t.Name, t.StressAreaMm2()/(25.4*25.4))
	// Output: 3/8-16 UNC: 0.0775 in²
}

func ExampleParse_unknownPitch() {
	_, err := thread.Parse("M10x1.3")
	fmt.Println(words.English().Error(err))
	// Output: thread "M10x1.3": pitch 1.3 does not exist for M10; allowed: 1.5 (coarse), 1.25, 1, 0.75
}
