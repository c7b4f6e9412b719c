package judge_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/sequence"
	"drawdown/sequence/judge"
	"drawdown/sequence/way"
)

// First principles: an order by a way that suits the layout is sound, in either
// direction and however the part is placed, listed or measured. A plain run
// changes the part in one of these ways at a time, in turn.
func TestOwnOrdersAreSound(t *testing.T) {
	t.Parallel()
	r, turns := rand.New(rand.NewPCG(3, 1)), 0
	for _, p := range parts() {
		for _, by := range p.ways {
			for _, turn := range sequence.Turns {
				turns++
				inTurn := func(k int) bool { return testkit.Full() || turns%3 == k }
				order := way.Places(p.points, by, turn)
				name := p.name + " " + string(by) + " " + string(turn)
				wantVerdict(t, name, judged(p.points, order), judge.Sound)
				// If places tie, another picture of the part gives another
				// order.
				tipped := 360 * r.Float64()
				if by != sequence.RowWay && inTurn(0) {
					wantVerdict(t, fmt.Sprintf("%s ordered at %.0f°", name, tipped), judged(p.points, way.Places(rotated(p.points, tipped), by, turn)), judge.Sound)
				}
				if inTurn(1) {
					wantVerdict(t, name+" measured", judged(measuredOff(p.points, r), order), judge.Sound)
				}
				if inTurn(2) {
					wantVerdict(t, name+" turned", judged(rotated(p.points, 360*r.Float64()), order), judge.Sound)
				}
			}
		}
	}
}

// First principles: a circle has no first bolt. A right order is right from
// every other bolt and in the other direction, even if the bolts are uneven, as
// the four of a cover are.
func TestACircleHasNoFirstBolt(t *testing.T) {
	t.Parallel()
	cover := []geometry.Point{{X: -58, Y: 92}, {X: 58, Y: 92}, {X: 84, Y: -40}, {X: -84, Y: -40}} // in order along the edge
	for name, round := range map[string][]geometry.Point{
		"cover": cover, "6": geometry.Circle(6, 200, geometry.Point{}, 90, true), "16": geometry.Circle(16, 320, geometry.Point{}, 79, true),
	} {
		n := len(round)
		right := way.Places(round, sequence.Auto, sequence.TurnDefault)
		wantVerdict(t, name, judged(round, right), judge.Sound)
		for first := range n {
			for _, sense := range []int{1, -1} {
				order := make([]int, n)
				for k, at := range right {
					order[k] = ((sense*at+first)%n + n) % n
				}
				wantVerdict(t, fmt.Sprintf("%s from %d, sense %d", name, first, sense), judged(round, order), judge.Sound)
			}
		}
		if once := judged(round, inOrder(n)); once.Verdict != judge.Departs {
			t.Errorf("%s once round is %s", name, once.Verdict)
		}
	}
}

// First principles: a verdict depends on the part and the order, not on the
// picture, the listing, or a tenth of a millimetre.
func TestVerdictBelongsToThePart(t *testing.T) {
	t.Parallel()
	all := parts()
	rapid.Check(t, func(t *rapid.T) {
		p := all[rapid.IntRange(0, len(all)-1).Draw(t, "part")]
		n := len(p.points)
		order := rapid.Permutation(inOrder(n)).Draw(t, "order")
		if rapid.Bool().Draw(t, "a trade's order with two swapped") {
			order = p.auto()
			k := rapid.IntRange(0, n-2).Draw(t, "swapped")
			order[k], order[k+1] = order[k+1], order[k]
		}
		want := judged(p.points, order)
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 5))
		same := func(name string, got judge.Report) {
			if diff := cmp.Diff(words(want), words(got)); diff != "" || got.Verdict != want.Verdict {
				t.Fatalf("%s, %s, order %v: %q and %q\n%s", p.name, name, order, want.Verdict, got.Verdict, diff)
			}
		}
		off := judged(measuredOff(p.points, r), order)
		if diff := cmp.Diff(countedWords(want), countedWords(off)); diff != "" {
			t.Fatalf("%s, measured, order %v\n%s", p.name, order, diff)
		}
		samePull(t, want, off)
		same("turned", judged(rotated(p.points, rapid.Float64Range(0, 360).Draw(t, "turned by")), order))
		same("mirrored", judged(moved(p.points, func(q geometry.Point) geometry.Point { return geometry.Point{X: -q.X, Y: q.Y} }), order))
		same("moved and scaled", judged(moved(p.points, func(q geometry.Point) geometry.Point { return q.Scale(0.37).Add(geometry.Point{X: 412, Y: 93}) }), order))
		listing := r.Perm(n)
		shuffled, place := make([]geometry.Point, n), make([]int, n)
		for k, i := range listing {
			shuffled[k], place[i] = p.points[i], k
		}
		again := make([]int, n)
		for k, i := range order {
			again[k] = place[i]
		}
		same("shuffled", judged(shuffled, again))
	})
}

// countedWords are the findings based on counts. Pull and saddle are figures,
// not counts, and so is the deviation of places from their turn in a layout
// without rings. Each can be so close to its limit that a tenth of a millimetre
// decides.
func countedWords(r judge.Report) []string {
	r.Findings = slices.DeleteFunc(slices.Clone(r.Findings), func(f judge.Finding) bool {
		inTurn := f.Rule == judge.Outwards && f.Allowed > 0 // with rings, no step back inwards is allowed
		return f.Rule == judge.Balance || f.Rule == judge.Saddle || inTurn
	})
	return words(r)
}

// samePull compares the figures of places measured 1 % of a spacing off with
// those of the exact places: n fasteners add up to at most n such errors.
func samePull(t *rapid.T, want, got judge.Report) {
	for k, g := range want.Groups {
		most := 0.01 * float64(len(g.IDs))
		for _, pair := range [][2]float64{
			{g.Order.Pull, got.Groups[k].Order.Pull},
			{g.Own.Pull, got.Groups[k].Own.Pull},
		} {
			if math.Abs(pair[0]-pair[1]) > most {
				t.Fatalf("the pull is %.3f, and %.3f where measured", pair[0], pair[1])
			}
		}
	}
}

// First principles: outside in is wrong wherever there is an inside, and the
// same order is right for loosening.
func TestOutsideInIsFound(t *testing.T) {
	t.Parallel()
	for _, p := range parts() {
		j, back := jointOf(p.points), reversed(p.auto())
		loosen := judge.Order(judge.Input{Joint: j, Order: idsOf(j, back), Side: judge.Loosen})
		wantVerdict(t, p.name+" loosened outside in", loosen, judge.Sound)
		if slices.Contains(p.ways, sequence.Star) {
			continue
		}
		r := judged(p.points, back)
		wantVerdict(t, p.name+" outside in", r, judge.Departs)
		if !has(r, judge.Middle) || !has(r, judge.Outwards) {
			t.Errorf("%s outside in: %q", p.name, words(r))
		}
	}
}

// First principles: by rows from one corner starts at an end and stays on one
// side.
func TestRasterIsFound(t *testing.T) {
	t.Parallel()
	for _, p := range parts() {
		if len(p.points) < 5 {
			continue
		}
		raster := inOrder(len(p.points))
		slices.SortStableFunc(raster, func(a, b int) int {
			return int(p.points[b].Y-p.points[a].Y)*1000 + int(p.points[a].X-p.points[b].X)
		})
		wantVerdict(t, p.name+" by rows", judged(p.points, raster), judge.Departs)
	}
}

// First principles: once around a circle, half of its bolts follow each other
// on one side, neighbour after neighbour. The same holds around a cover from
// the middle of its long side.
func TestOnceRoundIsFound(t *testing.T) {
	t.Parallel()
	for _, p := range parts() {
		circle := slices.Contains(p.ways, sequence.Star)
		if !circle && !strings.HasPrefix(p.name, "perimeter") || len(p.points) < 4 {
			continue
		}
		r := judged(p.points, way.Places(p.points, sequence.Circular, sequence.TurnRight))
		wantVerdict(t, p.name+" once round", r, judge.Departs)
		if !has(r, judge.Neighbours) && circle || !has(r, judge.OneSide) && len(p.points) >= 8 {
			t.Errorf("%s once round: %q", p.name, words(r))
		}
	}
}

// Pinned from our own output: the share of random orders without a finding.
func TestRandomOrdersGetFindings(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(11, 4))
	sound, right, of := 0, 0, 0
	for _, p := range parts() {
		if len(p.points) < 8 {
			continue
		}
		for range testkit.Samples(4, 8) {
			report := judged(p.points, r.Perm(len(p.points)))
			of++
			if report.Verdict == judge.Sound {
				sound++
			}
			if report.Verdict.Right() {
				right++
			}
		}
	}
	t.Logf("of %d random orders %d are sound and %d can be used", of, sound, right)
	if sound*100 > of || right*20 > of {
		t.Errorf("of %d random orders %d are sound and %d can be used", of, sound, right)
	}
}

// Common practice, no source: two swapped steps are a slip, on which an
// instructor remarks. At the very beginning it may be more. A plain run tries
// every third step.
func TestOneSlipIsNoMoreThanARemark(t *testing.T) {
	t.Parallel()
	for turn, p := range parts() {
		if n := len(p.points); n < 8 || n > 20 {
			continue
		}
		for k := 1; k < len(p.points)-1; k++ {
			if !testkit.Full() && (k+turn)%3 != 0 {
				continue
			}
			order := p.auto()
			order[k], order[k+1] = order[k+1], order[k]
			if r := judged(p.points, order); !r.Verdict.Right() {
				t.Errorf("%s with steps %d and %d swapped: %q", p.name, k+1, k+2, words(r))
			}
		}
	}
}
