package forecast_test

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/forecast"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/interaction/ways"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/strength"
)

// forecastOf plans a built-in pattern and works its forecast out.
func forecastOf(t testing.TB, name string) (plan.Plan, prediction.Forecast) {
	t.Helper()
	p, f, _ := comparedOf(t, name)
	return p, f
}

// compared is a forecast with the plan beside other ways.
type compared struct {
	plan     plan.Plan
	forecast prediction.Forecast
	ways     ways.Comparison
}

var (
	known   = map[string]compared{} // of the built-in patterns
	knownBy sync.Mutex
)

// comparedOf does the same and puts the plan beside other ways. Tests share the
// answer: they only read it.
func comparedOf(t testing.TB, name string) (plan.Plan, prediction.Forecast, *ways.Comparison) {
	t.Helper()
	knownBy.Lock()
	defer knownBy.Unlock()
	c, there := known[name]
	if !there {
		c = workedOut(t, name)
		known[name] = c
	}
	return c.plan, c.forecast, &c.ways
}

func workedOut(t testing.TB, name string) compared {
	t.Helper()
	text, ok := patterns.BuiltinText(name)
	if !ok {
		t.Fatalf("no pattern %s", name)
	}
	input, problems := patterns.Read(patterns.FromBytes(name, text))
	if problems.Stops() {
		t.Fatal(problems.Error())
	}
	p, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
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
	c, err := ways.Compare(m, p, runs, work, f, false)
	if err != nil {
		t.Fatal(err)
	}
	return compared{p, f, c}
}

func said(pages []scene.Page) string {
	var all strings.Builder
	for _, page := range pages {
		for _, text := range scenetest.Texts(page) {
			all.WriteString(text.Content + " ")
		}
	}
	return all.String()
}

// No fault on any paper, upright and on its side, in any language. A plain run takes
// some, by turns.
func TestLayout(t *testing.T) {
	t.Parallel()
	for n, name := range patterns.Builtin() {
		p, f, c := comparedOf(t, name)
		for k, on := range sheettest.Requests(n) {
			ask := forecast.Request{Request: sheet.Request{Paper: on.Paper, Words: on.Words}, Advice: c.Advice, Others: c}
			doc, _ := forecast.Document(p, f, ask)
			sheettest.Check(t, name, on, doc.Pages)
			if !testkit.Full() && (k+n)%2 != 0 {
				continue
			}
			class := forecast.ClassPages(p, f, ask)
			if words := said(class); !strings.Contains(words, fmt.Sprintf(ask.Words.Forecast.Pass, 1, "")[:4]) || !strings.Contains(words, ask.Words.Forecast.Charts) {
				t.Errorf("%s, %s: the class sees no pass or no chart", name, ask.Words.Language)
			}
			sheettest.Check(t, name, on, class)
		}
	}
}

// Each bolt's mark carries the least percent that the forecast gives it, with a
// thick edge or black where the printed figure is low; and its id stands beside it.
func TestMarksCarryTheForecast(t *testing.T) {
	t.Parallel()
	p, f := forecastOf(t, "p4-head")
	doc, notes := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: words.English()}})
	if len(notes) > 0 {
		t.Error(notes)
	}
	shown := map[string]int{}
	for _, text := range scenetest.Texts(doc.Pages[0]) {
		if text.Tag.Role == scene.Number {
			shown[text.Content]++
		}
	}
	edges := edgesOf(doc.Pages[0])
	low := 0
	for i, b := range f.Last().Percent {
		words, want := strconv.Itoa(int(b.Low+0.5)), plainEdge
		if advice.ClassOf(b.Low) == advice.Noticeable {
			want *= 3
			low++
		}
		id := p.Joint.Fasteners[i].ID
		if shown[words] == 0 {
			t.Errorf("bolt %s: no mark says %s", id, words)
		}
		if edges[id] != want {
			t.Errorf("bolt %s at %s %% has an edge of %g mm, want %g", id, words, edges[id], want)
		}
		if shown[id] == 0 {
			t.Errorf("%s is missing", id)
		}
	}
	if low == 0 {
		t.Error("no bolt of the head ends low: the check of the edges is idle")
	}
	for id, edge := range edgesOf(doc.Pages[1]) {
		if edge > plainEdge {
			t.Errorf("%s: on the way nothing is low yet", id)
		}
	}
}

// fillsOf returns the fill of each mark on a page by its name.
func fillsOf(page scene.Page) map[string]scene.Ink {
	fills := map[string]scene.Ink{}
	for _, it := range page.Items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
			fills[s.Tag.Name] = s.Fill
		}
	}
	return fills
}

// plainEdge is the width of the edge of a mark that holds a figure.
const plainEdge = 0.6

// edgesOf returns the width of each mark's edge on a page by its name.
func edgesOf(page scene.Page) map[string]float64 {
	edges := map[string]float64{}
	for _, it := range page.Items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
			edges[s.Tag.Name] = s.Width
		}
	}
	return edges
}

// The bolt that is being turned is black, and no other.
func TestFramesMarkTheBoltBeingTurned(t *testing.T) {
	t.Parallel()
	p, f := forecastOf(t, "p4-head")
	for k, page := range forecast.Frames(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: words.English()}})[:10] {
		for id, fill := range fillsOf(page) {
			if turned := id == p.Joint.Fasteners[f.Passes[0].Frames[k].Fastener].ID; turned != (fill == scene.Black) {
				t.Errorf("step %d: %s is turned: %v, and filled with %v", k+1, id, turned, fill)
			}
		}
	}
}

// A heading is what to do, the class comes after it, and what must not be turned
// again stands before the class.
func TestTheHeadingIsTheDecision(t *testing.T) {
	t.Parallel()
	p, f, c := comparedOf(t, "p4-head")
	doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: words.English()}, Advice: c.Advice, Others: c})
	inOrder(t, said(doc.Pages[:1]), "Worth asking the maker for: 24 N·m side once more.", "from 85 to 97 %, nominally from 94 to 99 %", "Until then", "noticeable.", "100 %", "Not in the model")
	for want, of := range map[string]advice.Case{
		"Worth asking the maker for: recipe (a snug pass": {Class: advice.Noticeable, Trials: []advice.Trial{trial(advice.OwnWay, 88), trial(advice.Recipe, 99)}},
		"Go round at the last torque":                     {Class: advice.Strong, Trials: []advice.Trial{trial(advice.OwnWay, 60)}},
		"Fix the file first":                              {Class: advice.Noticeable, Falls: true},
		"One repeat pass is worth it.":                    {Class: advice.Noticeable},
	} {
		of.Hundreds = f.Hundreds
		doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a3"), Words: words.English()}, Advice: advice.Decide(of)})
		inOrder(t, said(doc.Pages[:1]), want, "Never turn main again", "noticeable.")
	}
}

// trial ends its lowest bolt at some percent.
func trial(way advice.Way, lowest float64) advice.Trial {
	return advice.Trial{Way: way, Lowest: bounds.Band{Low: lowest, Nominal: lowest, High: lowest}, Class: advice.ClassOf(lowest), OwnOrder: true}
}

func inOrder(t *testing.T, all string, parts ...string) {
	t.Helper()
	rest := all
	for _, part := range parts {
		at := strings.Index(rest, part)
		if at < 0 {
			t.Fatalf("%q is missing, or stands too early, in\n%s", part, all)
		}
		rest = rest[at+len(part):]
	}
}

// Caps are separate, and their faces meet; a head with a gasket is neither.
func TestWhatIsAssumedOfCaps(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]bool{"p4-cam-caps": true, "p4-rod-caps": true, "p4-head": false} {
		p, f := forecastOf(t, name)
		doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a3"), Words: words.English()}})
		all := said(doc.Pages)
		for _, words := range []string{"what connects them", "within a factor of 2"} {
			if strings.Contains(all, words) != want {
				t.Errorf("%s says %q: %v, want %v", name, words, !want, want)
			}
		}
	}
	p, _ := forecastOf(t, "p4-cam-caps")
	f, err := prediction.ForecastOf(p, setup.Setup{Preview: true})
	if err != nil {
		t.Fatal(err)
	}
	flat, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a3"), Words: words.English()}})
	if strings.Contains(said(flat.Pages), "what connects them") {
		t.Error("a part that is not in pieces is called separate")
	}
}

// A last pass to a target for each bolt is called so, and lists the targets: what
// a bolt ends with, over what that is of its target, is the target.
func TestTargetsOfTheirOwn(t *testing.T) {
	t.Parallel()
	own := workedOut(t, "p4-cover")
	p, f := own.plan, own.forecast
	last := &f.Passes[len(f.Passes)-1]
	last.Stage, last.Share = nil, 0
	for i := range last.Percent {
		f.TargetsN[i] = bounds.Band{Low: 6000, Nominal: 6000, High: 6000}
		last.Percent[i] = bounds.Band{Low: 90, Nominal: 99, High: 101}
		last.OfAim[i] = bounds.Band{Low: 80, Nominal: 90, High: 95}
	}
	doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: words.English()}})
	all := said(doc.Pages)
	inOrder(t, all, "for measured stretch only", "1 110 6.6 ", "Pass 2: to the targets")
	if strings.Contains(all, "Pass 2: 0") {
		t.Error("the pass is called one to 0 %")
	}
	for _, tag := range words.Languages() {
		w, _ := words.Find(tag)
		for _, on := range []string{"a4", "a5"} {
			doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, on), Words: w}})
			for _, page := range doc.Pages {
				for _, fault := range scenetest.CheckLayout(page) {
					t.Errorf("%s, %s: %s", on, tag, fault)
				}
			}
		}
	}
}

// Orders found by search are written out below the table.
func TestSearchedOrdersAreWrittenOut(t *testing.T) {
	t.Parallel()
	p, f, c := comparedOf(t, "p4-manifold")
	order := slices.Clone(c.Trials[0].Order)
	slices.Reverse(order)
	c.Trials = append(slices.Clone(c.Trials), ways.Trial{Trial: advice.Trial{Way: advice.LeastTilt}, Order: order})
	doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: words.English()}, Advice: c.Advice, Others: c})
	inOrder(t, said(doc.Pages), "rules (order only)", "Order of “searched: least tilt”: "+strings.Join(p.IDs(order), " "))
}

// No heading stands at the foot of a page with nothing below it.
func TestNoHeadingStandsAlone(t *testing.T) {
	t.Parallel()
	for n, name := range patterns.Builtin() {
		p, f, c := comparedOf(t, name)
		for k, tag := range words.Languages() {
			if !testkit.Full() && k != n%len(words.Languages()) {
				continue
			}
			w, _ := words.Find(tag)
			for m, on := range []string{"a4", "a5"} {
				if !testkit.Full() && m != n/2%2 {
					continue
				}
				doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, on), Words: w}, Advice: c.Advice, Others: c})
				for _, page := range doc.Pages {
					lines := scenetest.Texts(page)
					end := slices.IndexFunc(lines, func(l scene.Text) bool {
						return strings.HasPrefix(w.Forecast.Guidance, l.Content)
					})
					if end < 1 {
						t.Fatalf("%s on %s, %s: page %s has no foot", name, on, tag, page.Name)
					}
					if last := lines[end-1]; last.Size == sheettest.Paper(t, on).HeadEm && last.Weight == scene.Bold {
						t.Errorf("%s on %s, %s: %q stands alone on page %s", name, on, tag, last.Content, page.Name)
					}
				}
			}
		}
	}
}

// The help promises so many pages behind those that tell why.
func TestPagesForAClass(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p, f := forecastOf(t, name)
		for paper, most := range map[string]int{"a4": 2, "a5": 4} {
			pages := forecast.ClassPages(p, f, forecast.Request{Request: sheettest.English(sheettest.Paper(t, paper))})
			if len(pages) > most {
				t.Errorf("%s on %s: %d pages, want %d at the most", name, paper, len(pages), most)
			}
		}
	}
}

// A frame a step; the last shows what the first page shows.
func TestFrames(t *testing.T) {
	t.Parallel()
	p, f := forecastOf(t, "p4-head")
	frames := forecast.Frames(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: words.English()}})
	// 4 stages over 10 main bolts and one over 4 side bolts.
	if len(frames) != 44 {
		t.Errorf("%d frames, want 44", len(frames))
	}
	for _, page := range frames {
		for _, fault := range scenetest.CheckLayout(page) {
			t.Error(fault)
		}
	}
	if name := frames[43].Name; name != "step-044" {
		t.Errorf("the last frame is called %s", name)
	}
	first := strings.Builder{}
	for _, text := range scenetest.Texts(frames[0]) {
		first.WriteString(text.Content + "\n")
	}
	if !strings.Contains(first.String(), "Pass 1, 20 N·m main: bolt M3") {
		t.Errorf("the first frame says\n%s", first.String())
	}
}

// The golden scene is our own output, looked at by eye.
func TestGoldenScene(t *testing.T) {
	t.Parallel()
	p, f, c := comparedOf(t, "p4-manifold")
	doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: words.English()}, Advice: c.Advice, Others: c})
	scenetest.Golden(t, filepath.Join("testdata", "p4-manifold.scene"), doc)
}

// Every gasket, material and trial has its word in every language.
func TestEveryTermHasItsWord(t *testing.T) {
	t.Parallel()
	terms := []string{"no gasket"}
	for _, g := range compliance.Gaskets() {
		if g != compliance.NoGasket {
			terms = append(terms, string(g))
		}
	}
	for _, w := range []advice.Way{advice.OwnWay, advice.Recipe, advice.OnceRound, advice.NoFirstStage, advice.SnugFirst, advice.OneMorePass, advice.LastTwice, advice.LeastScatter, advice.LeastTilt, advice.LeastOfBoth} {
		terms = append(terms, string(w))
	}
	for _, w := range wordstest.All() {
		for _, term := range append(terms, strength.Materials()...) {
			if w.Terms[term] == "" {
				t.Errorf("%s has no word for %q", w.Language, term)
			}
		}
	}
}

// No English is left on a sheet in another language.
func TestAllIsSaidInTheLanguage(t *testing.T) {
	t.Parallel()
	p, f, c := comparedOf(t, "p4-head")
	for _, w := range wordstest.All()[1:] {
		doc, _ := forecast.Document(p, f, forecast.Request{Request: sheet.Request{Paper: sheettest.Paper(t, "a3"), Words: w}, Advice: c.Advice, Others: c})
		all := said(doc.Pages)
		for _, english := range []string{" the ", " bolt", "gasket", "assumed", "mm instead", "twice", "0.25", "12.5", "%!"} {
			if strings.Contains(all, english) {
				t.Errorf("%s: the sheet says %q", w.Language, english)
			}
		}
	}
}

// First principles: the same part after each pass is compared at a look only where
// its marks are of one size, with the figures in all of them or beside all.
func TestPassesAreDrawnAlike(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		p, f := forecastOf(t, name)
		pages := forecast.ClassPages(p, f, forecast.Request{Request: sheettest.English(sheettest.Paper(t, "a4"))})
		widths, inside, outside := map[string][]float64{}, 0, 0
		for _, it := range pages[0].Items {
			switch it := it.(type) {
			case scene.Shape:
				if it.Tag.Role == scene.Mark && it.Tag.Core {
					id, _, _ := strings.Cut(it.Tag.Name, " after")
					widths[id] = append(widths[id], it.Path.Bounds().Width())
				}
			case scene.Text:
				switch {
				case it.Tag.Role != scene.Number:
				case it.Tag.Core:
					inside++
				default:
					outside++
				}
			}
		}
		if inside+outside < len(widths) || inside > 0 && outside > 0 {
			t.Errorf("%s: %d figures stand in marks, %d beside them", name, inside, outside)
		}
		for id, of := range widths {
			if slices.Max(of)-slices.Min(of) > 0.05 {
				t.Errorf("%s: the marks of %s are %.1f to %.1f mm wide", name, id, slices.Min(of), slices.Max(of))
			}
		}
	}
}

// First principles: what is explained but not there is looked for in vain.
func TestLooksAreExplainedWhereTheyAre(t *testing.T) {
	t.Parallel()
	explained := 0
	for _, name := range patterns.Builtin() {
		p, f := forecastOf(t, name)
		ask := forecast.Request{Request: sheettest.English(sheettest.Paper(t, "a4"))}
		thick, black := false, false
		for _, b := range f.Last().Percent {
			class := advice.ClassOf(math.Round(b.Low))
			thick, black = thick || class == advice.Noticeable, black || class == advice.Strong
		}
		words := said(forecast.ClassPages(p, f, ask))
		if got := strings.Contains(words, ask.Words.Forecast.ThickEdge); got != thick {
			t.Errorf("%s: the thick edge is explained: %v, want %v", name, got, thick)
		}
		if got := strings.Contains(words, ask.Words.Forecast.BlackMark); got != black {
			t.Errorf("%s: the black mark is explained: %v, want %v", name, got, black)
		}
		if thick || black {
			explained++
		}
	}
	if explained == 0 {
		t.Error("no built-in pattern has a low bolt")
	}
}

// First principles: figures with dashes between them read as one range, so that a
// bolt that is not turned yet has a dash only within its mark.
func TestNoDashBetweenFigures(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		p, f := forecastOf(t, name)
		for _, page := range forecast.ClassPages(p, f, forecast.Request{Request: sheettest.English(sheettest.Paper(t, "a5"))}) {
			for _, text := range scenetest.Texts(page) {
				if text.Content == "–" && !text.Tag.Core {
					t.Errorf("%s: a dash stands beside the mark %s", name, text.Tag.Name)
				}
			}
		}
	}
}
