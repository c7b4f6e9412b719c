package cli_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/cmd/internal/cli"
)

type predicted struct {
	Fasteners   []string                 `json:"fasteners"`
	Order       []string                 `json:"order"`
	Compliance  [][]float64              `json:"compliance_mm_per_N"`
	Interaction [][]float64              `json:"interaction_matrix"`
	Leaves      float64                  `json:"repeat_leaves"`
	Bolt        map[string]float64       `json:"bolt_flexibility_mm_per_N"`
	Targets     map[string]predictedSpan `json:"target_range_N"`
	Passes      []struct {
		Fraction float64                  `json:"fraction"`
		Percent  map[string]float64       `json:"preload_percent"`
		Percents map[string]predictedSpan `json:"preload_range_percent"`
		Forces   map[string]predictedSpan `json:"preload_range_N"`
		Min      float64                  `json:"min"`
		Mean     float64                  `json:"mean"`
		Max      float64                  `json:"max"`
		SD       float64                  `json:"sd"`
		MinRange predictedSpan            `json:"min_range"`
		MaxRange predictedSpan            `json:"max_range"`
	} `json:"passes"`
}

// First principles: in the interaction matrix of one pass the last bolt keeps
// its newton, and every bolt has what it was given. Multiplied by the targets
// it gives the forces of one pass. The first bolt of two loses what the second
// takes.
func TestTheInteractionMatrixGivesOnePass(t *testing.T) {
	p := predict(t, "p4-manifold", "--passes", "100", "--target", "10kN")
	for i, id := range p.Order {
		sum := 0.0
		for k := range p.Order {
			sum += p.Interaction[i][k]
		}
		if got := p.Passes[0].Percent[id]; math.Abs(got-100*sum) > 1e-5 || p.Interaction[i][i] != 1 {
			t.Errorf("%s: %g %%, by the matrix %g %%", id, got, 100*sum)
		}
	}
	if !(p.Leaves > 0 && p.Leaves < 0.2) { // the design's heads and covers: 0.001 to 0.15
		t.Errorf("a repeat leaves %g", p.Leaves)
	}
}

type predictedSpan struct{ Low, Nominal, High float64 }

func predict(t *testing.T, args ...string) predicted {
	t.Helper()
	out, problems, status := run(append(append([]string{"predict"}, args...), "--json")...)
	var p predicted
	if err := json.Unmarshal([]byte(out), &p); err != nil || status != cli.Done || problems != "" {
		t.Fatalf("%q: status %d, %v\n%s", args, status, err, problems)
	}
	return p
}

// First principles: the joint is linear while bolts hold, so doubling the
// targets doubles the newtons and keeps the percentages. With slack bolts this
// holds too, because only forces and travels scale.
func TestScalingTheTargetsChangesNoPercentage(t *testing.T) {
	for _, args := range [][]string{
		{"p4-manifold", "--passes", "30,100"},
		{"p4-cover", "--passes", "100", "--gasket", "cork-rubber"}, // bolts go slack
	} {
		once := predict(t, append(args, "--target", "5kN")...)
		twice := predict(t, append(args, "--target", "10kN")...)
		for n, pass := range once.Passes {
			for id, percent := range pass.Percents {
				again := twice.Passes[n].Percents[id]
				if !near(percent.Low, again.Low) || !near(percent.Nominal, again.Nominal) || !near(percent.High, again.High) {
					t.Errorf("%q, pass %d, %s: %v %% and %v %%", args, n+1, id, percent, again)
				}
				if a, b := pass.Forces[id].Nominal, twice.Passes[n].Forces[id].Nominal; !near(2*a, b) {
					t.Errorf("%q, pass %d, %s: %g N and %g N", args, n+1, id, a, b)
				}
			}
		}
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Max(1, math.Abs(a)) }

// First principles: the passes follow from the compliance printed with them.
// Each nut is turned until its bolt has its share, while the others keep their
// travel: u = (diag(own) + C) F over the bolts turned so far.
func TestThePassesFollowFromTheComplianceBesideThem(t *testing.T) {
	p := predict(t, "p4-manifold", "--stages", "0.3,0.7,1", "--way", "row")
	n := len(p.Fasteners)
	travel := make([]float64, n)
	var turned []int
	for _, pass := range p.Passes {
		for _, id := range p.Order {
			i := slices.Index(p.Fasteners, id)
			if !slices.Contains(turned, i) {
				turned = append(turned, i)
			}
			stiffness := stiffnessOf(t, p, turned)
			at := slices.Index(turned, i)
			force := 0.0
			for k, j := range turned {
				force += stiffness.At(at, k) * travel[j]
			}
			if missing := pass.Fraction*p.Targets[id].Nominal - force; missing > 0 {
				travel[i] += missing / stiffness.At(at, at)
			}
		}
		stiffness := stiffnessOf(t, p, turned)
		var sum, squares float64
		for k, j := range turned {
			force := 0.0
			for l, m := range turned {
				force += stiffness.At(k, l) * travel[m]
			}
			id := p.Fasteners[j]
			if got := pass.Forces[id].Nominal; math.Abs(got-force) > 1e-6*force {
				t.Errorf("to %g, %s: %g N, from the compliance %g N", pass.Fraction, id, got, force)
			}
			percent := 100 * force / p.Targets[id].Nominal
			sum, squares = sum+percent, squares+percent*percent
		}
		mean := sum / float64(n)
		if sd := math.Sqrt(squares/float64(n) - mean*mean); !near(pass.Mean, mean) || math.Abs(pass.SD-sd) > 1e-4 {
			t.Errorf("to %g: mean %g, SD %g; from the compliance %g, %g", pass.Fraction, pass.Mean, pass.SD, mean, sd)
		}
	}
}

// First principles: the overall minimum over the band is the least of the
// minima, and the same for the maximum.
func TestTheSumsSpanTheFasteners(t *testing.T) {
	for n, pass := range predict(t, "p4-pump-flange").Passes {
		least, most := math.Inf(1), 0.0
		for id, percent := range pass.Percents {
			least, most = min(least, percent.Low), max(most, percent.High)
			if !(percent.Low <= percent.Nominal && percent.Nominal <= percent.High) || percent.Nominal != pass.Percent[id] {
				t.Errorf("pass %d, %s: %v beside %g", n+1, id, percent, pass.Percent[id])
			}
		}
		if pass.MinRange.Low != least || pass.MaxRange.High != most || pass.Min != pass.MinRange.Nominal || pass.Max != pass.MaxRange.Nominal {
			t.Errorf("pass %d: least %v, most %v; the fasteners reach from %g to %g", n+1, pass.MinRange, pass.MaxRange, least, most)
		}
	}
}

// stiffnessOf inverts the compliance of the bolts that have been turned.
func stiffnessOf(t *testing.T, p predicted, turned []int) *mat.Dense {
	t.Helper()
	whole := mat.NewDense(len(turned), len(turned), nil)
	for k, i := range turned {
		for l, j := range turned {
			whole.Set(k, l, p.Compliance[i][j])
		}
		whole.Set(k, k, whole.At(k, k)+p.Bolt[p.Fasteners[i]])
	}
	var inverse mat.Dense
	if err := inverse.Inverse(whole); err != nil {
		t.Fatal(err)
	}
	return &inverse
}

// Common sense, no source: a softer gasket, one pass fewer, a stiffer bolt or a
// part that spreads the load further leaves the lowest bolt worse off.
func TestWhatMakesAJointSensitive(t *testing.T) {
	lowest := func(args ...string) float64 {
		p := predict(t, append([]string{"p4-head"}, args...)...)
		return p.Passes[len(p.Passes)-1].Min
	}
	usual := lowest("--passes", "30,100")
	for _, worse := range [][]string{
		{"--passes", "30,100", "--gasket", "composite"},
		{"--passes", "100"},
		{"--passes", "30,100", "--bolt-flexibility", "2e-6 mm/N"},
		{"--passes", "30,100", "--thickness", "70mm"},
	} {
		if got := lowest(worse...); got >= usual {
			t.Errorf("%q: the lowest bolt has %.1f %%, without %.1f %%", worse, got, usual)
		}
	}
}
