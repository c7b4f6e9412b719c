package card_test

import (
	"bytes"
	"fmt"
	"math"
	"math/cmplx"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/pdf"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Finished PDFs, read by an independent program: on each drawing, the number at
// each position is that of the fastener there, and the figures of the stages
// are in their order. The test knows only the plan, not the layout.
func TestReadBack(t *testing.T) {
	t.Parallel()
	program := testkit.Program(t, "pdftotext")
	var all readBack
	for k, name := range patterns.Builtin() {
		requests := sheettest.Requests(k)
		if !testkit.Full() {
			requests = requests[k/2%len(requests):][:1]
		}
		for _, ask := range requests {
			all.card(t, program, name, planOf(t, name), ask)
		}
	}
	t.Logf("%+v", all)
	if all.unseen > 0 || all.figures < all.files {
		t.Error("too few are read back")
	}
}

// The same for generated joints. If a joint is so crowded that the numbers are
// far from their positions, the drawing may not be found; those are counted.
func TestReadBackOfMadeUpJoints(t *testing.T) {
	t.Parallel()
	program := testkit.Program(t, "pdftotext")
	var all readBack
	for seed := range testkit.Samples(6, 500) {
		requests := sheettest.Requests(seed)
		all.card(t, program, fmt.Sprint("joint ", seed), planOf(t, patterntest.Generated(uint64(seed))), requests[seed/2%len(requests)])
	}
	t.Logf("%+v", all)
	if all.unseen*4 > all.files || all.figures < all.files {
		t.Error("too few are read back")
	}
}

// A number at the wrong position and a changed figure are found.
func TestReadBackNoticesFaults(t *testing.T) {
	t.Parallel()
	program := testkit.Program(t, "pdftotext")
	p := planOf(t, "p4-head")
	ask := sheettest.English(sheettest.Paper(t, "a4"))
	document, _ := card.Document(p, card.TightenSide, ask)
	pages := wordsOf(t, program, document)
	swapped := p
	swapped.Tighten.Order = slices.Clone(p.Tighten.Order)
	order := swapped.Tighten.Order
	order[3], order[8] = order[8], order[3]
	changed := p
	changed.Tighten.Stages = slices.Clone(p.Tighten.Stages)
	changed.Tighten.Stages[1].Torque.Value = 41
	for what, other := range map[string]plan.Plan{"swapped numbers": swapped, "a changed figure": changed} {
		if faults := new(readBack).side(pages, other, other.Tighten, true); len(faults) == 0 {
			t.Errorf("%s: no fault", what)
		}
	}
	if faults := new(readBack).side(pages, p, p.Tighten, true); len(faults) > 0 {
		t.Errorf("as it is: %q", faults)
	}
}

// readBack counts what was read. In crowded drawings only numbers that are well
// apart are compared; unseen counts files whose drawing was not found.
type readBack struct{ files, drawings, crowded, numbers, figures, unseen int }

func (r *readBack) card(t *testing.T, program, what string, p plan.Plan, ask sheet.Request) {
	t.Helper()
	for which, side := range map[card.Sides]plan.Side{card.TightenSide: p.Tighten, card.LoosenSide: p.Loosen} {
		document, notes := card.Document(p, which, ask)
		r.files++
		for _, fault := range r.side(wordsOf(t, program, document), p, side, len(notes) == 0) {
			t.Errorf("%s, %s, on %s (%g wide) in %s: %s", what, which, ask.Paper.Name, ask.Paper.Width, ask.Words.Language, fault)
		}
	}
}

// word is a word on a page, by its middle, width and height, in points.
type word struct {
	text          string
	at            complex128 // up is positive
	width, height float64
}

// off is the distance from a position to the digits of a word, which take up
// half of its line height.
func (w word) off(place complex128) float64 {
	d := place - w.at
	return math.Hypot(max(0, math.Abs(real(d))-w.width/2), max(0, math.Abs(imag(d))-w.height/4))
}

var wordLine = regexp.MustCompile(`<word xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="([0-9.]+)" yMax="([0-9.]+)">([^<]*)</word>`)

// wordsOf returns the words of each page of a document.
func wordsOf(t *testing.T, program string, document scene.Document) (pages [][]word) {
	t.Helper()
	var file, complaints bytes.Buffer
	if err := pdf.Write(&file, document, time.Time{}); err != nil {
		t.Fatal(err)
	}
	command := exec.Command(program, "-bbox", "-", "-")
	command.Stdin, command.Stderr = &file, &complaints
	out, err := command.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("%v: %s", err, complaints.String())
	}
	for _, page := range strings.Split(string(out), "<page ")[1:] {
		var words []word
		for _, m := range wordLine.FindAllStringSubmatch(page, -1) {
			var x [4]float64
			for i := range x {
				if x[i], err = strconv.ParseFloat(m[i+1], 64); err != nil {
					t.Fatal(err)
				}
			}
			words = append(words, word{m[5], complex((x[0]+x[2])/2, -(x[1]+x[3])/2), x[2] - x[0], x[3] - x[1]})
		}
		pages = append(pages, words)
	}
	return pages
}

// side compares the pages of a side with the plan. Every number must be there
// unless the card says that some are missing.
func (r *readBack) side(pages [][]word, p plan.Plan, side plan.Side, whole bool) (faults []string) {
	order := side.Order
	if slices.ContainsFunc(p.Groups, func(g plan.Group) bool { return g.Way == sequence.Cast }) {
		order = p.Tighten.Order // the numbers are those on the part, on both sides
	}
	places := make([]complex128, len(order)) // by number, from 0
	for k, i := range order {
		at := p.Joint.Fasteners[i].At
		places[k] = complex(at.X, at.Y)
	}
	before, seen := r.drawings, make([]bool, len(places))
	var rest []word // in reading order
	for n, words := range pages {
		drawing, found := findDrawing(words, places)
		if found {
			r.drawings++
			if drawing.crowded {
				r.crowded++
			}
			for _, fault := range r.drawing(words, places, drawing, seen) {
				faults = append(faults, fmt.Sprintf("page %d: %s", n+1, fault))
			}
		}
		rest = append(rest, inReadingOrder(slices.DeleteFunc(slices.Clone(words), func(w word) bool { return found && drawing.holds(w) }))...)
	}
	if r.drawings == before && len(places) >= fewestNumbers {
		r.unseen++
	}
	if k := slices.Index(seen, false); k >= 0 && whole && r.drawings > before {
		faults = append(faults, fmt.Sprintf("%d stands on no drawing", k+1))
	}
	return append(faults, r.stages(rest, side.Stages)...)
}

// drawing is the position of the part on a page: point p of the part is at from
// + turn·p.
type drawing struct {
	from, turn complex128
	near       float64 // half the least distance between two positions, or the height of a number, in points
	height     float64 // of the numbers
	crowded    bool    // some numbers are away from their positions, on leader lines
	low, high  complex128
}

func (d drawing) of(place complex128) complex128 { return d.from + d.turn*place }

// holds reports whether a word is one of the numbers, by its height and
// position.
func (d drawing) holds(w word) bool {
	return math.Abs(w.height-d.height) < 0.1 && real(w.at) > real(d.low) && real(w.at) < real(d.high) && imag(w.at) > imag(d.low) && imag(w.at) < imag(d.high)
}

// crowdedReach is the least distance between two positions of a crowded
// drawing, in heights of a number, for their numbers to be compared.
const crowdedReach = 5

// fewestNumbers is the number of positions needed to locate a drawing.
const fewestNumbers = 3

// findDrawing locates the drawing by its numbers: the shift, rotation and scale
// at which most numbers of one height are at their positions. If several match,
// as in a row of tick boxes, the largest numbers win.
func findDrawing(words []word, places []complex128) (best drawing, found bool) {
	byHeight := map[int][]word{}
	for _, w := range words {
		if n, err := strconv.Atoi(w.text); err == nil && n >= 1 && n <= len(places) {
			tenth := int(math.Round(10 * w.height))
			byHeight[tenth] = append(byHeight[tenth], w)
		}
	}
	least := leastDistance(places)
	for tenth, numbers := range byHeight {
		if found && float64(tenth)/10 < best.height {
			continue
		}
		if d, ok := fit(numbers, places, least); ok && !listed(numbers) {
			d.height = float64(tenth) / 10
			d.crowded = least*cmplx.Abs(d.turn) < 1.5*d.height
			best, found = d, true
		}
	}
	return best, found
}

// listed reports whether numbers belong to a list, or to boxes to tick: one
// appears twice, or most follow each other in reading order.
func listed(numbers []word) bool {
	seen, following := map[string]bool{}, 0
	inOrder := inReadingOrder(slices.Clone(numbers))
	for k, w := range inOrder {
		if seen[w.text] {
			return true
		}
		seen[w.text] = true
		if k > 0 && max(index(w)-index(inOrder[k-1]), index(inOrder[k-1])-index(w)) == 1 {
			following++
		}
	}
	return 10*following > 7*len(numbers)
}

func leastDistance(places []complex128) float64 {
	least := math.Inf(1)
	for i, p := range places {
		for _, q := range places[:i] {
			least = min(least, cmplx.Abs(p-q))
		}
	}
	return least
}

// fit tries pairs of the first and last few numbers as two that are at their
// positions.
func fit(numbers []word, places []complex128, least float64) (best drawing, ok bool) {
	most, leastOff := 0, 0.0
	for a, first := range numbers {
		for _, second := range numbers[a+1:] {
			i, j := index(first), index(second)
			if i == j || cmplx.Abs(places[i]-places[j]) < least || a > 40 {
				continue
			}
			turn := (first.at - second.at) / (places[i] - places[j])
			if quarters := cmplx.Phase(turn) / (math.Pi / 2); math.Abs(quarters-math.Round(quarters)) > 0.02 {
				continue // a part is drawn level or turned by a quarter
			}
			d := drawing{from: first.at - turn*places[i], turn: turn, near: max(least*cmplx.Abs(turn)/2, first.height)}
			if hits, off := d.hits(numbers, places); hits > most || hits == most && off < leastOff {
				best, most, leastOff = d, hits, off
			}
		}
	}
	if most < fewestNumbers || 2*most < len(places) {
		return drawing{}, false
	}
	for range 2 { // adds numbers on the other side of their positions
		best.refine(numbers, places)
	}
	wide := best
	wide.near *= 2
	if hits, _ := wide.hits(numbers, places); 10*hits < 8*len(numbers) {
		return drawing{}, false
	}
	reach := best.near + 3*numbers[0].height
	air := complex(reach, reach)
	for k, place := range places {
		at := best.of(place)
		if k == 0 {
			best.low, best.high = at-air, at+air
		}
		best.low = complex(min(real(best.low), real(at-air)), min(imag(best.low), imag(at-air)))
		best.high = complex(max(real(best.high), real(at+air)), max(imag(best.high), imag(at+air)))
	}
	return best, true
}

func index(w word) int {
	n, _ := strconv.Atoi(w.text) // parsed before
	return n - 1
}

// refine shifts the drawing so that the numbers are evenly distributed around
// their positions. Each is on some side of its own.
func (d *drawing) refine(numbers []word, places []complex128) {
	var n, p, w, pp, pw complex128
	for _, number := range numbers {
		if place := places[index(number)]; cmplx.Abs(number.at-d.of(place)) < 2*d.near {
			n, p, w = n+1, p+place, w+number.at
			pp += place * cmplx.Conj(place)
			pw += cmplx.Conj(place) * number.at
		}
	}
	if spread := pp - p*cmplx.Conj(p)/n; spread != 0 {
		d.turn = (pw - cmplx.Conj(p)*w/n) / spread
		d.from = (w - d.turn*p) / n
	}
}

// hits counts the numbers that are at their positions, and adds up their
// distances.
func (d drawing) hits(numbers []word, places []complex128) (hits int, off float64) {
	for _, w := range numbers {
		if by := cmplx.Abs(w.at - d.of(places[index(w)])); by < d.near {
			hits, off = hits+1, off+by
		}
	}
	return hits, off
}

// drawing checks the numbers of a drawing. A number may be on any side of its
// position, and in a crowded drawing closer to another one. So numbers are
// compared in pairs: the direction from one to the other must match that of
// their positions, not the reverse, as it would if they were exchanged.
func (r *readBack) drawing(words []word, places []complex128, d drawing, seen []bool) (faults []string) {
	at := make([][]word, len(places))
	for _, w := range words {
		n, err := strconv.Atoi(w.text)
		if err != nil || !d.holds(w) {
			continue
		}
		if n < 1 || n > len(places) {
			if !d.crowded { // in crowded drawings the program joins neighbouring numbers
				faults = append(faults, fmt.Sprintf("%d is among the numbers, of which there are %d", n, len(places)))
			}
			continue
		}
		r.numbers++
		at[n-1] = append(at[n-1], w)
		if off := w.off(d.of(places[n-1])); off > d.near+3*d.height && !d.crowded {
			faults = append(faults, fmt.Sprintf("%d stands %.0f points off its place", n, off))
		}
	}
	for k, of := range at {
		seen[k] = seen[k] || len(of) > 0 || d.crowded
		if len(of) > 1 {
			faults = append(faults, fmt.Sprintf("%d stands %d times", k+1, len(of)))
		}
		for j := range k {
			apart := d.turn * (places[k] - places[j])
			judged := len(of) > 0 && len(at[j]) > 0 && (!d.crowded || cmplx.Abs(apart) > crowdedReach*d.height)
			if judged && real((of[0].at-at[j][0].at)*cmplx.Conj(apart)) <= 0 {
				faults = append(faults, fmt.Sprintf("%d and %d are exchanged", j+1, k+1))
			}
		}
	}
	return faults
}

func inReadingOrder(words []word) []word {
	const line = 3 // points
	slices.SortStableFunc(words, func(a, b word) int {
		if math.Abs(imag(a.at)-imag(b.at)) > line {
			return int(math.Copysign(1, imag(b.at)-imag(a.at)))
		}
		return int(math.Copysign(1, real(a.at)-real(b.at)))
	})
	return words
}

// stages looks for the figures of the stages: the numbers among the words of
// one height must be these and no others, in their order.
func (r *readBack) stages(words []word, stages []plan.Stage) []string {
	var want [][]float64 // each figure in all its possible units
	for _, s := range stages {
		switch s.Do {
		case plan.Tighten:
			want = append(want, []float64{s.Torque.Value})
		case plan.Advance:
			want = append(want, []float64{float64(s.Angle)})
		case plan.BackOff, plan.TurnBack:
			want = append(want, []float64{-float64(s.Angle)})
		case plan.Wait:
			minutes := float64(s.Wait)
			want = append(want, []float64{60 * minutes, minutes, minutes / 60})
		}
	}
	if len(want) == 0 {
		return nil
	}
	byHeight := map[int][]float64{}
	for _, w := range words {
		if v, ok := figure(w.text); ok {
			tenth := int(math.Round(10 * w.height))
			byHeight[tenth] = append(byHeight[tenth], v)
		}
	}
	for _, got := range byHeight {
		if slices.EqualFunc(got, want, func(v float64, in []float64) bool { return slices.Contains(in, v) }) {
			r.figures += len(want)
			return nil
		}
	}
	return []string{fmt.Sprintf("figures of the stages: want %v, found by their height %v", want, byHeight)}
}

// figure parses 20, 22,5 and −90°.
func figure(text string) (float64, bool) {
	v, err := strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(strings.TrimSuffix(text, "°")), 64)
	return v, err == nil
}
