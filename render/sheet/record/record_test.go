package record_test

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/record"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

var start = time.Date(2026, 11, 30, 7, 30, 0, 0, time.UTC)

// bench follows a run with made-up entries.
type bench struct {
	t     testing.TB
	plan  plan.Plan
	work  run.Work
	state *run.State
	now   time.Time
	who   string
	taken []record.Entry
}

func begin(t testing.TB, name string, d run.Direction) *bench {
	p := patterntest.Plan(t, name)
	_, open := p.Covered()
	w := run.New(p, d, open)
	return &bench{t: t, plan: p, work: w, state: w.Start(), now: start, who: "RA"}
}

func (b *bench) take(e run.Entry) string {
	b.t.Helper()
	b.now = b.now.Add(40 * time.Second)
	e.ID, e.Time = fmt.Sprint("e", len(b.taken)+1), b.now
	if e.Who == "" {
		e.Who = b.who
	}
	if r := b.state.Take(e); r != nil {
		b.t.Fatalf("%s %d: %s", e.Act, e.Step, words.English().Say(r.Finding))
	}
	b.taken = append(b.taken, record.Entry{Entry: e, N: int64(len(b.taken) + 3)})
	return e.ID
}

func (b *bench) next() run.Step {
	n := b.state.Next(b.now)
	for _, st := range b.state.At(b.now).Steps {
		if st.Number == n {
			return st
		}
	}
	return run.Step{}
}

var w7 = &run.WrenchFacts{Listed: true, FromNm: 12, ToNm: 60, Tolerance: 0.04, Calibrated: "2026-03-01"}

// steps does what comes next, so many times; until nothing does where it is −1.
func (b *bench) steps(n int) {
	b.t.Helper()
	for st := b.next(); n != 0 && st.Number > 0; st = b.next() {
		switch {
		case st.Do == plan.Wait && st.State == run.ToDo:
			b.take(run.Entry{Act: run.Begin, Step: st.Number})
		case st.Do == plan.Wait:
			b.now = b.now.Add(time.Duration(st.WaitMin) * time.Minute)
		default:
			b.take(run.Entry{Act: run.Done, Step: st.Number})
		}
		n--
	}
}

func (b *bench) record() record.Record {
	v := b.state.At(b.now)
	return record.Record{
		ID: "R12", Plan: b.plan, View: v, Entries: b.taken, Number: "P4-0117", Order: "A-31", Note: "coolant in cylinder 2",
		Who: "RA", Program: "v1.4.0", Started: start,
		Head: strings.Repeat("7c1e90b4", 8), HeadPlace: 480,
	}
}

// headWork loosens the head of the P4: one bolt seized, one broken, a crack seen,
// a shift handed over, sealed by two.
func headWork(t testing.TB) record.Record {
	b := begin(t, "p4-head", run.Loosen)
	b.steps(3)
	st := b.next()
	seized := b.take(run.Entry{Act: run.Report, Step: st.Number, Trouble: run.Seized, Note: "does not move at 160 N·m"})
	b.take(run.Entry{Act: run.Settle, Of: seized, Note: "penetrating oil, 20 min, came free", Who: "JK"})
	b.steps(4)
	b.take(run.Entry{Act: run.Find, Place: &run.Place{At: &[2]float64{60, 40}}, Note: "crack between bores 1 and 2", Photo: strings.Repeat("ab12", 16)})
	b.take(run.Entry{Act: run.HandOver, To: "MB", Note: "stub still in the block"})
	b.who = "MB"
	st = b.next()
	broken := b.take(run.Entry{Act: run.Report, Step: st.Number, Trouble: run.Broken, Note: "under the head"})
	b.take(run.Entry{Act: run.Settle, Of: broken, Note: "stub taken out with left-hand drill", Who: "JK"})
	b.steps(-1)
	b.take(run.Entry{Act: run.Remark, Note: "gasket kept for the insurer"})
	b.take(run.Entry{Act: run.Seal, Second: "JK"})
	b.take(run.Entry{Act: run.Correct, Of: broken, Note: "it broke 12 mm below the head"})
	return b.record()
}

// A step of which somebody decided says that in place of the angle, with who decided
// and who entered it. From first principles.
func TestDecidedAngle(t *testing.T) {
	t.Parallel()
	b := begin(t, "p4-head", run.Tighten)
	b.take(run.Entry{Act: run.Accept})
	b.take(run.Entry{Act: run.Ready})
	b.steps(20) // two torques of ten main bolts
	for _, settle := range []run.Entry{{Decided: run.CountsAsDone}, {Decided: run.TurnOn, Value: "40"}, {Decided: run.OtherDecision, Note: "mark set anew"}} {
		settle.Act, settle.DecidedBy = run.Settle, "LM"
		settle.Of = b.take(run.Entry{Act: run.Unsure, Step: b.next().Number})
		b.take(settle)
		if settle.Decided != run.CountsAsDone {
			b.steps(1)
		}
	}
	document, _ := record.Document(b.record(), record.Request{Request: sheettest.Requests(0)[0]})
	said := ""
	for _, text := range scenetest.Texts(document.Pages...) {
		said += text.Content + " "
	}
	for _, want := range []string{"counts as done", "turn on by 40°", "mark set anew", "decided by LM, entered by RA"} {
		if !strings.Contains(said, want) {
			t.Errorf("the record does not say %q: %s", want, said)
		}
	}
}

// What the lead asks of a record: a tap that was taken back stands in its order, a
// step out of order has its reason, a new fastener without a trouble its reason and
// mark, the answer about its neighbours the fastener and who decided, a value its
// bolt, a wrench that is not in the list its unknown calibration, and who only
// decided or signed second is counted no entry. From first principles.
func TestWhatTheLeadAsks(t *testing.T) {
	t.Parallel()
	b := begin(t, "p4-head", run.Tighten)
	b.take(run.Entry{Act: run.Accept})
	b.take(run.Entry{Act: run.Ready})
	wrong := b.take(run.Entry{Act: run.Done, Step: 1})
	b.take(run.Entry{Act: run.Undo, Of: wrong, Who: "KB"})
	b.take(run.Entry{Act: run.Done, Step: 2, Note: "number 2 is handy"})
	b.steps(5)
	b.take(run.Entry{Act: run.Measure, Step: 2, Value: "19.5", Unit: "N·m", Wrench: "TW-07", WrenchFacts: &run.WrenchFacts{}})
	id := b.next().IDs[0]
	fresh := b.take(run.Entry{Act: run.Replace, Step: b.next().Number, Note: "head rounded off", DecidedBy: "LM"})
	b.take(run.Entry{Act: run.Remark, Of: fresh, Note: "They stay as they are", DecidedBy: "LM"})
	r := b.record()
	var order []string
	for _, st := range r.View.AsDone()[:3] {
		order = append(order, fmt.Sprint(st.Number, st.Undone != nil, st.OutOfOrder))
	}
	if want := []string{"1 true false", "2 false true", "1 false false"}; !slices.Equal(order, want) {
		t.Errorf("the steps are %q, want %q", order, want)
	}
	document, notes := record.Document(r, record.Request{Request: sheettest.English(sheet.Papers[1])})
	said := strings.Join(strings.Fields(plainBlanks(scenetest.Said(document.Pages...))), " ")
	for _, want := range []string{
		"step done · undone", "undone: KB", "Out of order", "number 2 is handy", "▲A", "new fastener", "head rounded off", "calibration unknown",
		"on “new fastener · " + id, "They stay as they are · decided by LM, entered by RA",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not printed", want)
		}
	}
	if strings.Contains(said, "to entry") || !strings.Contains(said, "LM 0 ") || len(notes) > 0 {
		t.Errorf("%q: %s", notes, said)
	}
}

// All built-in patterns, both ways, done to the end or begun, on every paper in
// every language: no fault of the layout, nothing under 2 mm, and what was left
// out is said on the paper, as is that figures were worked out.
func TestBuiltinLayouts(t *testing.T) {
	t.Parallel()
	for n, name := range patterns.Builtin() {
		d := []run.Direction{run.Loosen, run.Tighten}[n%2]
		b := begin(t, name, d)
		if len(b.work.ToAccept) > 0 {
			b.take(run.Entry{Act: run.Accept})
		}
		if len(b.state.At(b.now).Needs) > 0 {
			b.take(run.Entry{Act: run.Ready})
		}
		b.steps(5)
		first := b.plan.Joint.Fasteners[0]
		b.take(run.Entry{Act: run.Find, Place: &run.Place{Fastener: first.ID}, Note: "corrosion"})
		b.take(run.Entry{Act: run.Find, Place: &run.Place{At: &[2]float64{first.At.X + 15, first.At.Y + 15}}, Note: "scored"})
		for _, s := range b.plan.Joint.Stations {
			b.take(run.Entry{Act: run.Find, Place: &run.Place{Station: s.ID}, Note: "worn"})
		}
		check(t, name, b.record(), n)
	}
}

func check(t *testing.T, name string, r record.Record, turn int) {
	t.Helper()
	for _, ask := range sheettest.Requests(turn) {
		document, notes := record.Document(r, record.Request{Request: ask})
		sheettest.Check(t, name, ask, document.Pages)
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.Size*font.CapHeight < 2 {
				t.Errorf("%s: %q is %.2f mm high", name, text.Content, text.Size*font.CapHeight)
			}
		}
		said := scenetest.Said(document.Pages...)
		worked := slices.ContainsFunc(r.View.Steps, func(st run.Step) bool { return st.WorkedOut })
		if got := strings.Contains(said, "≈ "+ask.Words.Page.Run.WorkedOut[:5]); got != worked {
			t.Errorf("%s: figures worked out: %v, said: %v", name, worked, got)
		}
		for _, note := range notes {
			if begin, _, _ := strings.Cut(note, " "); !strings.Contains(said, begin) {
				t.Errorf("%s on %s: %q does not stand on the paper", name, ask.Paper.Name, note)
			}
		}
	}
}

// Every fact of the record stands on the paper.
func TestEverythingIsPrinted(t *testing.T) {
	t.Parallel()
	r := headWork(t)
	check(t, "p4-head", r, 0)
	document, _ := record.Document(r, record.Request{Request: sheettest.English(sheet.Papers[1])})
	said := plainBlanks(scenetest.Said(document.Pages...))
	for _, want := range []string{
		"R12", "P4-0117", "A-31", "coolant in cylinder 2", "v1.4.0", "2026-11-30 07:30", "UTC+00:00",
		"Will not turn", "does not move at 160 N·m", "penetrating oil, 20 min, came free", "Broken", "do not use this bolt again",
		"crack between bores 1 and 2", "x 60, y 40 mm", "photo ab12ab12", "RA to MB", "stub still in the block",
		"gasket kept for the insurer", "it broke 12 mm below the head", "on “trouble",
		"Sealed by MB", "Second signature: JK, entered by MB", "7c1e 90b4 7c1e 90b4", "drawdown records verify --against 7c1e90b47c1e90b4", "480",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not printed", want)
		}
	}
	for _, st := range r.View.Steps {
		if at := st.At.Format("2006-01-02 15:04"); !strings.Contains(said, " "+fmt.Sprint(st.Number)+" ") || !strings.Contains(said, at) {
			t.Errorf("step %d at %s is not printed", st.Number, at)
		}
	}
}

// Each letter of the list (A and C are of one bolt) stands in the drawing, unless the paper says that it
// found no room.
func TestLettersStandInTheDrawing(t *testing.T) {
	t.Parallel()
	document, notes := record.Document(headWork(t), record.Request{Request: sheettest.English(sheet.Papers[1])})
	var drawn []string
	for _, text := range scenetest.Texts(document.Pages[0]) {
		if strings.HasPrefix(text.Content, "▲") && len(text.Content) < 6 && text.Content != "▲" {
			drawn = append(drawn, text.Content)
		}
	}
	slices.Sort(drawn)
	if len(notes) > 0 || !slices.Equal(drawn, []string{"▲AC", "▲B"}) {
		t.Errorf("%q, notes %q", drawn, notes)
	}
}

// Times are those of the workshop; a wrench
// that is not in the list, and one out of date, are flagged.
func TestTightening(t *testing.T) {
	t.Parallel()
	b := begin(t, "p4-head", run.Tighten)
	b.take(run.Entry{Act: run.Accept})
	b.take(run.Entry{Act: run.Ready})
	st := b.next()
	b.take(run.Entry{Act: run.Done, Step: st.Number, Wrench: "W7", WrenchFacts: w7})
	b.take(run.Entry{Act: run.Done, Step: b.next().Number, Wrench: "W99", WrenchFacts: &run.WrenchFacts{}})
	b.take(run.Entry{Act: run.Done, Step: b.next().Number})
	b.take(run.Entry{Act: run.Measure, Step: st.Number, Value: "47.5", Unit: "N·m", Wrench: "W7", WrenchFacts: w7})
	zone := time.FixedZone("workshop", 2*60*60)
	document, _ := record.Document(b.record(), record.Request{Request: sheettest.English(sheet.Papers[1]), Zone: zone})
	said := plainBlanks(scenetest.Said(document.Pages...))
	for _, want := range []string{"2026-11-30 09:30", "UTC+02:00", "Not sealed yet.", "Accepted before tightening: RA", "W99", "12–60", "1 × 20 N·m", "2026-03-01", "no wrench number recorded", "47.5 N·m", "RECORD, OPEN"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not printed", want)
		}
	}
	for _, f := range b.work.ToAccept {
		if want := words.English().Say(f); !strings.Contains(strings.ReplaceAll(said, "\n", " "), strings.Fields(want)[0]) {
			t.Errorf("%q is not printed", want)
		}
	}
}

// A run that nothing was done on has a record too.
func TestEmptyRecord(t *testing.T) {
	t.Parallel()
	b := begin(t, "p4-head", run.Loosen)
	check(t, "empty", b.record(), 1)
}

// A record of many troubles on every fastener keeps its layout.
func TestManyTroubles(t *testing.T) {
	t.Parallel()
	b := begin(t, "p4-head", run.Loosen)
	for round := range 3 {
		for _, f := range b.plan.Joint.Fasteners {
			b.take(run.Entry{Act: run.Find, Place: &run.Place{Fastener: f.ID}, Note: fmt.Sprintf("seen in round %d: a long remark that goes on over more than a line", round)})
		}
	}
	check(t, "many", b.record(), 2)
}

// A step from paper says so, with the day if the paper states one, and when it was
// entered. From first principles.
func TestStepsFromPaper(t *testing.T) {
	t.Parallel()
	b := begin(t, "p4-head", run.Loosen)
	b.take(run.Entry{Act: run.Done, Step: 1, Source: run.OnPaper, Day: "2026-11-29"})
	b.take(run.Entry{Act: run.Done, Step: 2, Source: run.OnPaper})
	b.take(run.Entry{Act: run.Done, Step: 3})
	document, _ := record.Document(b.record(), record.Request{Request: sheettest.English(sheet.Papers[1])})
	said := plainBlanks(strings.Join(strings.Fields(scenetest.Said(document.Pages...)), " "))
	if paper := strings.Count(said, "on paper,"); paper != 2 || strings.Count(said, "day not known") != 1 || !strings.Contains(said, "2026-11-29") || strings.Count(said, "entered 2026-11-30") != 2 {
		t.Errorf("%d from paper in %s", paper, said)
	}
}

// The golden scene is our own output, looked at by eye.
func TestGoldenScene(t *testing.T) {
	t.Parallel()
	document, _ := record.Document(headWork(t), record.Request{Request: sheettest.English(sheet.Papers[1])})
	scenetest.Golden(t, filepath.Join("testdata", "p4-head.scene"), document)
}

func plainBlanks(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// A job has an overview of its runs, what was entered on it, and each run behind.
func TestJob(t *testing.T) {
	t.Parallel()
	begun := begin(t, "p4-head", run.Tighten).record()
	begun.ID = "R13"
	j := record.Job{
		ID: "J3", Of: "fernhollow-p4", Title: "Fernhollow P4 pump engine", Number: "P4-0117", Order: "A-31", Note: "overheated",
		Who: "JK", Program: "v1.4.0", Started: start, Runs: []record.Record{headWork(t), begun}, Head: strings.Repeat("7c1e90b4", 8), HeadPlace: 480,
		Entries: []record.Entry{
			{Entry: run.Entry{ID: "j1", Act: run.Part, Step: 2, Who: "RA", Time: start}, N: 7},
			{Entry: run.Entry{ID: "j2", Act: run.Measure, Measure: "end float", Value: "0.15", Unit: "mm", Who: "MB", Time: start.Add(time.Hour)}, N: 9},
			{Entry: run.Entry{ID: "j3", Act: run.Correct, Of: "j2", Note: "read as 0.16 mm", Who: "MB", Time: start.Add(2 * time.Hour)}, N: 12},
		},
		Found: []record.Found{{Joint: "p4-head", Plan: begun.Plan, Findings: []run.Entry{
			{Act: run.Find, Joint: "p4-head", Found: run.BlownThrough, Place: &run.Place{At: &[2]float64{-95, 0}}, Note: "between cylinders 1 and 2", Who: "RA", Time: start},
		}}},
	}
	work := teardown.OfJoint("p4-head", begun.Plan, nil)
	work.Joints = append(work.Joints, teardown.Joint{Of: "p4-sump", Title: "Oil sump"})
	work.Teardown = append(work.Teardown, teardown.Line{Number: 2, Part: "cylinder head"})
	work.Rebuild = []teardown.Line{{Number: 3, Part: "cylinder head"}, {Number: 4, Joint: "p4-head", Title: "Cylinder head"}}
	work.Supplies = []teardown.Supply{{Sort: teardown.Gasket, What: "head gasket", Count: 1, Joints: []string{"p4-head"}}}
	state := work.Replay([]run.Entry{j.Entries[0].Entry, j.Entries[1].Entry, j.Entries[2].Entry, {ID: "j4", Act: run.Fitted, Kind: "head gasket", Who: "MB", Time: start.Add(3 * time.Hour)}})
	j.View = state.View([]teardown.RunFact{{Run: "R12", Of: "p4-head", Direction: run.Loosen, Status: run.Sealed}, {Run: "R13", Of: "p4-head", Direction: run.Tighten, Status: run.Open}}, nil)
	j.View.Findings = j.Found[0].Findings
	for _, r := range j.Runs {
		j.View.AddRun(r.ID, r.View)
	}
	state.AddPoints(&j.View)
	for _, ask := range sheettest.Requests(0) {
		document, _ := record.JobDocument(j, record.Request{Request: ask})
		sheettest.Check(t, "job", ask, document.Pages)
	}
	document, _ := record.JobDocument(j, record.Request{Request: sheettest.English(sheet.Papers[1])})
	said := plainBlanks(scenetest.Said(document.Pages...))
	for _, want := range []string{"▲A", "Gasket blown through; between cylinders 1 and 2", "J3", "P4-0117", "overheated", "R12", "R13", "end float", "0.15 mm", "on “value”", "read as 0.16 mm", "RECORD, OPEN",
		"The job is open.", "Cylinder head · between cyl 1 and cyl 2", "new head gasket fitted: MB", "nobody has recorded a new one", "Rebuild: 2 steps are not done"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not printed", want)
		}
	}
	if first := plainBlanks(scenetest.Said(document.Pages[0])); !strings.Contains(first, "Broken; under the head") || !strings.Contains(first, "no new one recorded") {
		t.Errorf("the first page does not tell of the broken bolt with what became of it: %s", first)
	}
}

// What was ready is printed; a step says which trouble was at it, and a hand over what
// waits to be settled.
func TestHandedOverWithAnAngleOpen(t *testing.T) {
	t.Parallel()
	b := begin(t, "p4-head", run.Tighten)
	b.take(run.Entry{Act: run.Accept})
	b.take(run.Entry{Act: run.Ready, Kind: "main"})
	b.take(run.Entry{Act: run.Ready, Kind: run.GasketKind, Who: "JK"})
	b.take(run.Entry{Act: run.Ready, Place: &run.Place{Fastener: "F4"}})
	b.steps(20) // two torques of ten main bolts
	cut := b.next()
	b.take(run.Entry{Act: run.Unsure, Step: cut.Number})
	b.take(run.Entry{Act: run.HandOver, To: "MB"})
	document, _ := record.Document(b.record(), record.Request{Request: sheettest.English(sheet.Papers[1])})
	said := strings.Join(strings.Fields(plainBlanks(scenetest.Said(document.Pages...))), " ")
	for _, want := range []string{"10 new main (10 ready) 10 / 10 RA", "1 new gasket: multi-layer steel (1 ready) 1 / 1 JK", "a new one for F4 1 / 1 RA", "Settle: " + cut.IDs[0] + ": Angle interrupted"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not printed in %s", want, said)
		}
	}
	if got := strings.Count(said, "▲A"); got != 2 {
		t.Errorf("▲A stands %d times, want at the bolt and at its step", got)
	}
}

// A photo is printed with what it shows, on the record of its run and of the job.
func TestPhotosArePrinted(t *testing.T) {
	t.Parallel()
	r := headWork(t)
	r.Photos = map[string]record.Photo{strings.Repeat("ab12", 16): {JPEG: []byte("jpeg"), Width: 480, Height: 360}}
	for _, ask := range sheettest.Requests(0) {
		document, _ := record.Document(r, record.Request{Request: ask})
		sheettest.Check(t, "photos", ask, document.Pages)
		count := 0
		for _, page := range document.Pages {
			count += len(page.Photos)
			for _, photo := range page.Photos {
				across, down := photo.Box.Right-photo.Box.Left, photo.Box.Bottom-photo.Box.Top
				if math.Abs(across/down-4.0/3) > 1e-9 || photo.Box.Right > page.Width-page.Margin || photo.Box.Bottom > page.Height-page.Margin {
					t.Errorf("a photo of 4:3 stands in %+v on %s", photo.Box, ask.Paper.Name)
				}
			}
		}
		if count != 1 {
			t.Errorf("%d photos on %s", count, ask.Paper.Name)
		}
	}
}
