package ways

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/plan"
)

func to(force float64, order ...int) (pass contact.Pass) {
	for _, i := range order {
		pass = append(pass, contact.Action{Fastener: i, ForceN: force})
	}
	return pass
}

func turn(order ...int) (pass contact.Pass) {
	for _, i := range order {
		pass = append(pass, contact.Action{Fastener: i, Do: contact.ByTravel, TravelMm: 1})
	}
	return pass
}

func equal(a, b []contact.Pass) bool { return slices.EqualFunc(a, b, slices.Equal[contact.Pass]) }

// The recipe: a snug pass if the first stage uses more than a fifth of the
// last, the stages from the centre outwards, the last torque once around and
// again; nothing is repeated on bolts that end on an angle.
func TestRecipeByHand(t *testing.T) {
	t.Parallel()
	centreOut, round := []int{1, 0, 2}, []int{0, 1, 2}
	for _, c := range []struct {
		name   string
		passes []contact.Pass
		want   []contact.Pass
	}{
		{"one torque", []contact.Pass{to(100, 2, 1, 0)}, []contact.Pass{to(10, 1, 0, 2), to(100, 0, 1, 2), to(100, 0, 1, 2)}},
		{"a small first stage", []contact.Pass{to(20, 2, 1, 0), to(100, 2, 1, 0)}, []contact.Pass{to(20, 1, 0, 2), to(100, 0, 1, 2), to(100, 0, 1, 2)}},
		{"a larger first stage", []contact.Pass{to(21, 2, 1, 0), to(100, 2, 1, 0)}, []contact.Pass{to(10, 1, 0, 2), to(21, 1, 0, 2), to(100, 0, 1, 2), to(100, 0, 1, 2)}},
		{"its own repeats", []contact.Pass{to(20, 2, 1, 0), to(100, 2, 1, 0), to(100, 0, 1, 2)}, []contact.Pass{to(20, 1, 0, 2), to(100, 0, 1, 2), to(100, 0, 1, 2)}},
		{"an angle", []contact.Pass{to(20, 2, 1, 0), to(100, 2, 1, 0), turn(2, 1, 0)}, []contact.Pass{to(20, 1, 0, 2), to(100, 0, 1, 2), turn(1, 0, 2)}},
		{"angles alone", []contact.Pass{turn(2, 1, 0)}, []contact.Pass{turn(1, 0, 2)}},
		{"two sets of bolts", []contact.Pass{to(100, 1, 0), to(50, 2)}, []contact.Pass{to(10, 1, 0), to(100, 0, 1), to(100, 0, 1), to(5, 2), to(50, 2), to(50, 2)}},
	} {
		tr := &trier{work: procedure.Work{Passes: c.passes}}
		if got := tr.recipe(centreOut, round); !equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	own := to(100, 2, 1, 0)
	if scaled(own, 0.1); own[0].ForceN != 100 {
		t.Error("the pass itself is changed")
	}
	if arranged(own, round); own[0].Fastener != 2 {
		t.Error("the pass itself is put into another order")
	}
}

// The work in another order: each pass keeps its figures, a check pass its way;
// slackening goes from the outside in.
func TestInAnotherOrder(t *testing.T) {
	t.Parallel()
	tr := &trier{work: procedure.Work{Passes: []contact.Pass{to(20, 2, 1, 0), turn(2, 1, 0), to(30, 0, 1, 2), to(40, 1, 2)}, Stages: []int{0, 1, 2}}}
	tr.plan.Tighten.Stages = []plan.Stage{{Do: plan.Tighten}, {Do: plan.BackOff}, {Do: plan.Tighten, Way: "circular"}}
	if got, want := tr.inOrder([]int{1, 2, 0}), []contact.Pass{to(20, 1, 2, 0), turn(0, 2, 1), to(30, 0, 1, 2), to(40, 1, 2)}; !equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if got := len(tr.parts()); got != 2 {
		t.Errorf("%d sets of bolts", got)
	}
	at := []geometry.Point{{}, {X: 300}, {X: 300, Y: 400}}
	if got := travelM(slices.Concat(to(1, 0, 1, 2), to(1, 0)), at); math.Abs(got-(0.3+0.4+0.5)) > 1e-12 {
		t.Errorf("travel %g m", got)
	}
	tr.model.At = []geometry.Point{{X: 50}, {X: 0}, {X: 120}, {X: 20}}
	if got := tr.endToEnd([]int{0, 1, 2, 3}); !slices.Equal(got, []int{1, 3, 0, 2}) {
		t.Errorf("end to end %v", got)
	}
}

// Before its own repeats, the file's lowest bolt has what it had after the
// first of the equal passes.
func TestBeforeRepeats(t *testing.T) {
	t.Parallel()
	made := func(lowest ...float64) (p prediction.Prediction) {
		for k, run := range p.Runs() {
			run.TargetsN = []float64{100, 100}
			for _, v := range lowest {
				run.Passes = append(run.Passes, contact.AfterPass{ForcesN: []float64{v + float64(k), 100}})
			}
		}
		return p
	}
	for _, c := range []struct {
		name   string
		passes []contact.Pass
		want   float64
	}{
		{"no repeat", []contact.Pass{to(50, 0, 1), to(100, 0, 1)}, 0}, {"one pass", []contact.Pass{to(100, 0, 1)}, 0}, {"one repeat", []contact.Pass{to(50, 0, 1), to(100, 0, 1), to(100, 1, 0)}, 70},
		{"two repeats", []contact.Pass{to(100, 0, 1), to(100, 1, 0), to(100, 0, 1)}, 60}, {"an angle", []contact.Pass{to(100, 0, 1), turn(0, 1)}, 0}, {"another between", []contact.Pass{to(100, 0, 1), to(90, 0, 1), to(100, 0, 1)}, 0},
	} {
		if got := beforeRepeats(made(60, 70, 80), procedure.Work{Passes: c.passes}); got != c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// A search may not separate a group or a cap.
func TestAllowedOrders(t *testing.T) {
	t.Parallel()
	tr := &trier{}
	tr.model.At = make([]geometry.Point, 5)
	for _, id := range []string{"A", "B", "C", "D", "E"} {
		tr.plan.Joint.Fasteners = append(tr.plan.Joint.Fasteners, geometry.Fastener{ID: id})
	}
	tr.plan.Joint.Clusters = []geometry.Cluster{{Of: []string{"A", "B"}}}
	tr.plan.Groups = []plan.Group{{Members: []int{0, 1, 2}}, {Members: []int{3, 4}}}
	cost := tr.allowed(func([]int) float64 { return 7 })
	for _, c := range []struct {
		order []int
		want  bool
	}{
		{[]int{0, 1, 2, 3, 4}, true}, {[]int{2, 1, 0, 4, 3}, true}, {[]int{0, 2, 1, 3, 4}, false}, {[]int{0, 1, 3, 2, 4}, false}, {[]int{3, 4, 0, 1, 2}, false}, {[]int{1, 0, 2, 4, 3}, true}, {[]int{1, 2, 0, 3, 4}, false},
	} {
		for range 2 { // a cost is evaluated many times
			if got := cost(c.order); (got == 7) != c.want || !c.want && !math.IsInf(got, 1) {
				t.Errorf("%v costs %g", c.order, got)
			}
		}
	}
}

// Which trials are reported: the recipe if it was tried, under any name; the
// orders that are not clear from their names.
func TestWhatIsTold(t *testing.T) {
	t.Parallel()
	made := func(way advice.Way, lowest float64, own bool, also ...advice.Way) Trial {
		return Trial{Trial: advice.Trial{Way: way, Lowest: bounds.Band{Low: lowest}, OwnOrder: own}, Also: also}
	}
	c := Comparison{Trials: []Trial{made(advice.OwnWay, 80, true), made("spiral", 84, false, advice.Recipe), made(advice.LeastScatter, 86, false), made(advice.LeastTilt, 86, true), made("cross", 87, false)}}
	if got := c.OnRecipe(); len(got) != 1 || got[0].Values["than"] != "better" {
		t.Errorf("recipe: %v", got)
	}
	c.Trials[1].Also = nil
	if got := c.OnRecipe(); got != nil {
		t.Errorf("no recipe: %v", got)
	}
	ways := func() (list []advice.Way) {
		for _, t := range c.Orders() {
			list = append(list, t.Way)
		}
		return list
	}
	if got := ways(); !slices.Equal(got, []advice.Way{advice.LeastScatter}) {
		t.Errorf("orders %v", got)
	}
	c.Advice.Best = 4
	if got := ways(); !slices.Equal(got, []advice.Way{advice.LeastScatter, "cross"}) {
		t.Errorf("orders with the best %v", got)
	}
}

// Orders are searched up to 24 bolts.
func TestMostSearched(t *testing.T) {
	t.Parallel()
	for bolts, want := range map[int]bool{24: true, 25: false} {
		tr := &trier{work: procedure.Work{Passes: []contact.Pass{turn(0)}}} // ends any search
		tr.model.At = make([]geometry.Point, bolts)
		if err := tr.search(); err != nil {
			t.Fatal(err)
		}
		if len(tr.Notes) != 1 || (tr.Notes[0].Code != TooManyToSearch) != want || !want && (tr.Notes[0].Values["most"] != 24 || tr.Notes[0].Values["bolts"] != bolts) {
			t.Errorf("%d bolts: %v", bolts, tr.Notes)
		}
	}
}
