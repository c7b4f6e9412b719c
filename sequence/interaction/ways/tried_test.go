package ways_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/interaction/ways"
	"drawdown/sequence/plan"
)

// planned plans a built-in pattern with a text of it replaced by another.
func planned(t testing.TB, name string, changes ...string) plan.Plan {
	t.Helper()
	file, _ := patterns.BuiltinText(name)
	text := string(file)
	for k := 0; k < len(changes); k += 2 {
		if !strings.Contains(text, changes[k]) {
			t.Fatalf("%s has no %q", name, changes[k])
		}
		text = strings.Replace(text, changes[k], changes[k+1], 1)
	}
	input, problems := patterns.Read(patterns.FromBytes(name, []byte(text)))
	if problems.Stops() {
		t.Fatal(problems.Detail())
	}
	p, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// manifold is eight studs in two rows with these stages of tightening.
func manifold(t testing.TB, stages string) plan.Plan {
	t.Helper()
	return planned(t, "p4-manifold", "    - {torque: 10 N·m}\n    - {torque: 22 N·m}\n    - {torque: 22 N·m, way: circular, note: check pass}\n", stages)
}

func tried(c ways.Comparison) string {
	var names []string
	for _, trial := range c.Trials {
		name := string(trial.Way)
		for _, also := range trial.Also {
			name += " = " + string(also)
		}
		if trial.Less {
			name += " (less)"
		}
		names = append(names, name)
	}
	return strings.Join(names, ", ")
}

// The rules of this package: every usual order for such a part; the work
// without its first stage if a torque over the same bolts follows; a snug pass
// if the first torque is more than a fifth of the last; one more pass and the
// recipe if no torque is lower than an earlier one. Equal work is listed once,
// with both names.
func TestWhatIsTried(t *testing.T) {
	t.Parallel()
	const round = "the file's own, spiral, cross, row, circular = once round"
	for _, c := range []struct{ stages, want string }{
		{"    - {torque: 10 N·m}\n    - {torque: 22 N·m}\n", round + ", no first stage (less), 10 % snug pass first, one more pass, recipe"},
		{"    - {torque: 4.3 N·m}\n    - {torque: 22 N·m}\n", round + ", no first stage (less), one more pass, recipe"},
		{"    - {torque: 4.5 N·m}\n    - {torque: 22 N·m}\n", round + ", no first stage (less), 10 % snug pass first, one more pass, recipe"},
		{"    - {torque: 22 N·m}\n", round + ", 10 % snug pass first, one more pass, recipe"},
		{"    - {torque: 22 N·m, way: circular}\n", strings.ReplaceAll(round, ", ", " = ") + ", 10 % snug pass first, one more pass, recipe"},
		{"    - {torque: 20 N·m}\n    - {angle: 90°}\n", round + ", 10 % snug pass first, recipe"},
		{"    - {angle: 90°}\n    - {angle: 90°}\n", "the file's own, spiral = recipe, cross, row, circular = once round"},
		{"    - {angle: 30°}\n    - {torque: 22 N·m}\n", round + ", no first stage (less), one more pass, recipe"},
		{"    - {torque: 22 N·m}\n    - {torque: 12 N·m}\n", round},
		{"    - {torque: 22 N·m}\n    - {back off: 180°}\n    - {torque: 22 N·m}\n", round + ", 10 % snug pass first, one more pass, recipe"},
	} {
		got := compared(t, manifold(t, c.stages), setup.Setup{})
		if said := tried(got); said != c.want {
			t.Errorf("%s%s, want\n%s", c.stages, said, c.want)
		}
		if told := len(got.Snug) > 0; told != strings.Contains(c.want, string(advice.NoFirstStage)) {
			t.Errorf("%sof the first stage: %v", c.stages, got.Snug)
		}
	}
}

// A star is only for a circle of bolts. Bolts that end on an angle are not
// turned again; the side bolts of the head are.
func TestWhatSuitsThePart(t *testing.T) {
	t.Parallel()
	six := planned(t, "p4-pump-flange", "count: 16", "count: 6", "first: 78.75°", "first: 60°")
	if c := compared(t, six, setup.Setup{}); !strings.Contains(tried(c), "star") {
		t.Errorf("six bolts of a circle: %s", tried(c))
	}
	head := compared(t, builtin(t, "p4-head"), setup.Setup{})
	again := trial(t, head, advice.LastTwice)
	own := head.Trials[0].Passes
	if len(again.Passes) != len(own)+1 || !slices.Equal(again.Passes[len(own)], own[len(own)-1]) {
		t.Errorf("the last torque again: %d passes, of its own %d", len(again.Passes), len(own))
	}
	if strings.Contains(tried(head), string(advice.OneMorePass)) {
		t.Errorf("the head: %s", tried(head))
	}
}

// Work whose last torques compensate for the loss is neither repeated nor used
// in the recipe: its figures apply only to its own order.
func TestCompensatedWorkIsNotRepeated(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"p4-manifold", "p4-head"} {
		p := builtin(t, name)
		m, err := prediction.ModelOf(p, setup.Setup{})
		if err != nil {
			t.Fatal(err)
		}
		runs, work, err := m.PredictPlan(p)
		if err != nil {
			t.Fatal(err)
		}
		f, err := m.Forecast(p, runs, work)
		if err != nil {
			t.Fatal(err)
		}
		work.Compensated = true
		c, err := ways.Compare(m, p, runs, work, f, false)
		if err != nil {
			t.Fatal(err)
		}
		for _, never := range []advice.Way{advice.OneMorePass, advice.LastTwice, advice.Recipe} {
			if strings.Contains(tried(c), string(never)) {
				t.Errorf("%s: %s", name, tried(c))
			}
		}
	}
}

// The figures of a trial match its passes: the worst over all passes, the state
// after the last, the number of steps and the path of the wrench.
func TestWhatATrialSays(t *testing.T) {
	t.Parallel()
	p := builtin(t, "p4-manifold")
	m, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	c, f := comparedOn(t, m, p, false)
	own := c.Trials[0]
	var tilt, warp bounds.Band
	for _, pass := range f.Passes {
		tilt = worse(tilt, pass.TiltMm)
		warp = worse(warp, pass.WarpMm)
	}
	if own.TiltMm != tilt || own.WarpMm != warp || tilt == own.WarpMm {
		t.Errorf("tilt %v, warp %v; forecast %v, %v", own.TiltMm, own.WarpMm, tilt, warp)
	}
	if own.Steps != 3*8 || own.Lowest != own.End.Min || own.Class != advice.ClassOf(own.End.Min.Low) || !own.OwnOrder || len(own.Passes) != 3 {
		t.Errorf("its own: %+v", own)
	}
	for _, trial := range c.Trials {
		if trial.OwnOrder != slices.Equal(trial.Order, p.Tighten.Order) || trial.Steps != len(slices.Concat(trial.Passes...)) {
			t.Errorf("%s: own order %v, %d steps", trial.Way, trial.OwnOrder, trial.Steps)
		}
	}
	first := trial(t, c, advice.NoFirstStage).Passes
	if !slices.EqualFunc(first, own.Passes[1:], slices.Equal[contact.Pass]) {
		t.Errorf("without the first stage: %v", first)
	}
	more := trial(t, c, advice.OneMorePass).Passes
	if len(more) != 4 || !slices.Equal(more[3], own.Passes[2]) {
		t.Errorf("one more pass: %v", more)
	}
	snug := trial(t, c, advice.SnugFirst).Passes
	if len(snug) != 4 || len(snug[0]) != 8 || math.Abs(snug[0][0].ForceN-0.1*own.Passes[2][0].ForceN) > 1e-9 || snug[0][0].Fastener != p.Tighten.Order[0] || !slices.Equal(snug[1], own.Passes[0]) {
		t.Errorf("a snug pass: %v", snug)
	}
}

func worse(a, b bounds.Band) bounds.Band {
	return bounds.Band{Low: max(a.Low, b.Low), Nominal: max(a.Nominal, b.Nominal), High: max(a.High, b.High)}
}

// First principles: for four bolts all 24 orders can be tried, and the search
// finds the least cost. Orders with the same result are equivalent.
func TestSearchFindsTheLeast(t *testing.T) {
	t.Parallel()
	p := planned(t, "p4-manifold", "columns: 4", "columns: 2", "    - {torque: 22 N·m, way: circular, note: check pass}\n", "")
	m, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	runs, work, err := m.PredictPlan(p)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := comparedOn(t, m, p, true)
	leastSD, leastUneven := math.Inf(1), math.Inf(1)
	for _, order := range permutations(4) {
		passes := make([]contact.Pass, len(work.Passes))
		for n, pass := range work.Passes {
			for _, i := range order {
				passes[n] = append(passes[n], contact.Action{Fastener: i, ForceN: pass[0].ForceN})
			}
		}
		again, err := m.Again(runs, passes)
		if err != nil {
			t.Fatal(err)
		}
		leastSD = min(leastSD, again.Nominal.Spread(1).SD)
		leastUneven = min(leastUneven, max(again.Nominal.Passes[0].LargestUnevenMm, again.Nominal.Passes[1].LargestUnevenMm))
	}
	if got := trial(t, c, advice.LeastScatter).End.SD.Nominal; math.Abs(got-leastSD) > 1e-6*leastSD {
		t.Errorf("the search scatters by %g %%, the best of all by %g %%", got, leastSD)
	}
	if got := trial(t, c, advice.LeastTilt).UnevenMm.Nominal; math.Abs(got-leastUneven) > 1e-6*leastUneven {
		t.Errorf("the search is uneven by %g mm, the best of all by %g mm", got, leastUneven)
	}
	if got := trial(t, c, advice.LeastOfBoth); len(c.Notes) > 0 || got.End.SD.Nominal < leastSD-1e-9 {
		t.Errorf("notes %v, both %v", c.Notes, got.End.SD)
	}
}

// Reasons why no order is searched for.
func TestWhatIsNotSearched(t *testing.T) {
	t.Parallel()
	c, _ := searched(t, manifold(t, "    - {angle: 90°}\n"))
	if strings.Contains(tried(c), "search") || len(c.Notes) != 1 || c.Notes[0].Code != ways.AnglesAlone {
		t.Errorf("angles alone: %s, %v", tried(c), c.Notes)
	}
	c, _ = searched(t, manifold(t, "    - {torque: 22 N·m}\n    - {angle: 90°}\n"))
	if !strings.Contains(tried(c), "search") || len(c.Notes) != 0 {
		t.Errorf("a torque before an angle: %s, %v", tried(c), c.Notes)
	}
}

func searched(t testing.TB, p plan.Plan) (ways.Comparison, prediction.Forecast) {
	t.Helper()
	m, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	return comparedOn(t, m, p, true)
}

func permutations(n int) (all [][]int) {
	if n == 0 {
		return [][]int{{}}
	}
	for _, shorter := range permutations(n - 1) {
		for k := range n {
			all = append(all, slices.Insert(slices.Clone(shorter), k, n-1))
		}
	}
	return all
}
