package pagetest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns/patterntest"
	"drawdown/render/page"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// policy is the content policy of the bench: nothing inline, nothing from other
// sites.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// bench is a bench in memory, with the rules of sequence/run.
type bench struct {
	*httptest.Server
	t     testing.TB
	mu    sync.Mutex
	runs  map[string]*kept
	clock func() time.Time
	light page.Scheme // of all its pages, overriding that of the device
	posts int         // entries that reached it
	cut   atomic.Bool // the network is cut
	deaf  atomic.Bool // no entry reaches it

	photos atomic.Int32 // status of its answer to a photo
}

// photoName is the name under which it stores a photo.
const photoName = "9f86d081884c7d65"

type kept struct {
	plan    plan.Plan
	work    run.Work
	state   *run.State
	entries []run.Entry
	changed chan struct{}
	refused map[string]*run.Refusal // by the id of the entry, which gets the same answer again
}

func TestMain(m *testing.M) { os.Exit(Main(m)) }

func newBench(t testing.TB) *bench {
	b := &bench{t: t, runs: map[string]*kept{}, clock: time.Now}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", b.shows(b.home))
	mux.HandleFunc("GET /patterns/{name}", b.shows(b.pattern))
	mux.HandleFunc("GET /runs/{id}", b.shows(b.run))
	mux.HandleFunc("GET /runs/{id}/live", b.shows(b.live))
	mux.HandleFunc("GET /jobs/{id}", b.shows(b.job))
	mux.HandleFunc("GET /jobs/{id}/places/{joint}", b.shows(b.places))
	mux.HandleFunc("GET /records", b.shows(b.records))
	mux.HandleFunc("GET /records/{id}", b.shows(b.record))
	mux.HandleFunc("GET /share", b.shows(b.share))
	mux.HandleFunc("GET /join", b.shows(func(w http.ResponseWriter, f page.Frame, r *http.Request) error {
		return page.Join(w, page.JoinView{Frame: f, Wrong: r.URL.Query().Has("wrong")})
	}))
	mux.HandleFunc("GET /settings", b.shows(func(w http.ResponseWriter, f page.Frame, r *http.Request) error {
		return page.Settings(w, page.SettingsView{Frame: f})
	}))
	mux.HandleFunc("GET /message/{problem}", b.shows(func(w http.ResponseWriter, f page.Frame, r *http.Request) error {
		return page.Message(w, page.MessageView{Frame: f, Problem: page.Problem(r.PathValue("problem"))})
	}))
	mux.HandleFunc("POST /api/photos", func(w http.ResponseWriter, r *http.Request) {
		w.WriteHeader(int(b.photos.Load()))
		fmt.Fprintf(w, `{"photo":%q}`, photoName)
	})
	mux.HandleFunc("POST /api/runs", b.start)
	mux.HandleFunc("POST /api/jobs", func(w http.ResponseWriter, r *http.Request) { w.WriteHeader(201); fmt.Fprint(w, `{"job":"J1"}`) })
	mux.HandleFunc("POST /api/runs/{id}/entries", b.entry)
	mux.HandleFunc("GET /api/runs/{id}/events", b.events)
	mux.HandleFunc("GET /api/time", func(w http.ResponseWriter, r *http.Request) { fmt.Fprint(w, "{}") })
	mux.HandleFunc("GET /api/wrenches", func(w http.ResponseWriter, r *http.Request) { fmt.Fprint(w, `[{"number":"W-07","name":"half inch"}]`) })
	mux.Handle("GET /assets/", http.StripPrefix("/assets/", http.FileServerFS(page.Assets())))
	b.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if b.cut.Load() || b.deaf.Load() && r.Method == http.MethodPost {
			panic(http.ErrAbortHandler)
		}
		mux.ServeHTTP(w, r)
	}))
	t.Cleanup(func() {
		b.CloseClientConnections()
		b.Close()
	})
	return b
}

// open starts a run and returns its name.
func (b *bench) open(of string, d run.Direction, toAccept ...finding.Finding) string {
	b.mu.Lock()
	defer b.mu.Unlock()
	p := patterntest.Plan(b.t, of)
	id := "R" + strconv.Itoa(len(b.runs)+1)
	work := run.New(p, d, toAccept)
	b.runs[id] = &kept{plan: p, work: work, state: work.Start(), changed: make(chan struct{}), refused: map[string]*run.Refusal{}}
	return id
}

// take accepts entries as if from another tablet.
func (b *bench) take(id string, entries ...run.Entry) {
	b.t.Helper()
	for _, e := range entries {
		if e.Who == "" {
			e.Who = "KL"
		}
		if r := b.judge(id, e); r != nil {
			b.t.Fatalf("%+v: %v", e, r)
		}
	}
}

// taken lists the accepted acts with their steps.
func (b *bench) taken(id string) []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	var all []string
	for _, e := range b.runs[id].entries {
		all = append(all, strings.TrimSpace(fmt.Sprint(e.Act, " ", e.Step, " ", e.Who)))
	}
	return all
}

// entries are the accepted entries.
func (b *bench) entries(id string) []run.Entry {
	b.mu.Lock()
	defer b.mu.Unlock()
	return slices.Clone(b.runs[id].entries)
}

// steps is how many steps a run has, as planned.
func (b *bench) steps(id string) int {
	b.mu.Lock()
	defer b.mu.Unlock()
	return len(b.runs[id].work.Steps)
}

// step is a step of a run as planned.
func (b *bench) step(id string, number int) run.Step {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.runs[id].work.Steps[number-1]
}

func (b *bench) judge(id string, e run.Entry) *run.Refusal {
	b.mu.Lock()
	defer b.mu.Unlock()
	k := b.runs[id]
	if e.ID == "" {
		e.ID = "other" + strconv.Itoa(len(k.entries))
	}
	if r := k.refused[e.ID]; r != nil {
		return r
	}
	e.Time = b.clock()
	before := k.state.Version()
	if r := k.state.Take(e); r != nil {
		k.refused[e.ID] = r
		return r
	}
	if k.state.Version() > before {
		k.entries = append(k.entries, e)
		close(k.changed)
		k.changed = make(chan struct{})
	}
	return nil
}

func (b *bench) entry(w http.ResponseWriter, r *http.Request) {
	var e run.Entry
	if err := json.NewDecoder(r.Body).Decode(&e); err != nil {
		http.Error(w, `{"reason":"unreadable"}`, http.StatusBadRequest)
		return
	}
	b.mu.Lock()
	b.posts++
	b.mu.Unlock()
	w.Header().Set("Content-Type", "application/json")
	refused := b.judge(r.PathValue("id"), e)
	if refused == nil {
		b.mu.Lock()
		defer b.mu.Unlock()
		json.NewEncoder(w).Encode(map[string]int{"version": b.runs[r.PathValue("id")].state.Version()})
		return
	}
	status := http.StatusConflict
	if refused.Malformed {
		status = http.StatusBadRequest
	}
	w.WriteHeader(status)
	json.NewEncoder(w).Encode(map[string]any{"reason": b.words(r).Say(refused.Finding), "code": refused.Finding.Code, "by": refused.By, "at": refused.At})
}

func (b *bench) events(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	last, _ := strconv.Atoi(r.URL.Query().Get("after"))
	for {
		b.mu.Lock()
		k := b.runs[r.PathValue("id")]
		version, changed := len(k.entries), k.changed
		b.mu.Unlock()
		for ; last < version; last++ {
			fmt.Fprintf(w, "id: %d\nevent: entry\ndata: {}\n\n", last+1)
		}
		http.NewResponseController(w).Flush()
		select {
		case <-changed:
		case <-r.Context().Done():
			return
		}
	}
}

func (b *bench) start(w http.ResponseWriter, r *http.Request) {
	var ask struct {
		Of   string
		Work run.Direction
	}
	if err := json.NewDecoder(r.Body).Decode(&ask); err != nil {
		http.Error(w, `{"reason":"unreadable"}`, http.StatusBadRequest)
		return
	}
	w.WriteHeader(http.StatusCreated)
	fmt.Fprintf(w, `{"run":%q}`, b.open(ask.Of, ask.Work))
}

func (b *bench) words(r *http.Request) *words.Catalogue {
	for _, tag := range []string{r.URL.Query().Get("lang"), strings.Split(r.Header.Get("Accept-Language"), ",")[0]} {
		if c, err := words.Find(tag); err == nil {
			return c
		}
	}
	return words.English()
}

// shows serves a page in its frame.
func (b *bench) shows(write func(w http.ResponseWriter, f page.Frame, r *http.Request) error) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Security-Policy", policy)
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		f := page.Frame{Words: b.words(r), Path: r.URL.Path, Now: b.clock()}
		b.mu.Lock()
		defer b.mu.Unlock()
		if c, err := r.Cookie(page.SchemeCookie); err == nil {
			f.Scheme = page.Scheme(c.Value)
		}
		if b.light != page.BySystem {
			f.Scheme = b.light
		}
		var page answer
		page.head = w.Header()
		if err := write(&page, f, r); err != nil {
			b.t.Errorf("%s: %v", r.URL, err)
		}
		w.Write(page.Bytes()) // the client may have gone
	}
}

// answer buffers a page until it is complete.
type answer struct {
	bytes.Buffer
	head http.Header
}

func (a *answer) Header() http.Header { return a.head }
func (a *answer) WriteHeader(int)     {}

func (b *bench) lines() (open, over []page.RunLine) {
	for id, k := range b.runs {
		v := k.state.At(b.clock())
		line := page.RunLine{Run: id, Title: v.Title, Machine: v.Machine, Number: "P4-0117", Order: "2214", Direction: v.Direction, Status: v.Status, Done: v.Now.Done.Steps, Of: len(v.Steps), By: "RA", At: b.clock()}
		if v.Status == run.Open {
			open = append(open, line)
		} else {
			over = append(over, line)
		}
	}
	return open, over
}

func (b *bench) patterns() []page.PatternLine {
	var all []page.PatternLine
	for _, name := range []string{"p4-head", "p4-sump", "p4-cam-caps", "p4-flywheel"} {
		p := patterntest.Plan(b.t, name)
		all = append(all, page.PatternLine{Name: name, Title: p.Title, Machine: p.Machine, Fasteners: len(p.Joint.Fasteners), Builtin: true, Sound: true})
	}
	return all
}

func (b *bench) home(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	v := page.HomeView{Frame: f, Folder: "/home/ra/Documents/drawdown", Patterns: b.patterns()}
	v.Open, v.Recent = b.lines()
	return page.Home(w, v)
}

func (b *bench) prints(name string) []page.Print {
	return []page.Print{
		{Sheet: "card", Address: "/print/" + name + "/card.pdf", At: b.clock().Add(-time.Hour), Stale: true},
		{Sheet: "tray", Address: "/print/" + name + "/tray.pdf"},
		{Sheet: "condition", Address: "/print/" + name + "/condition.pdf"},
	}
}

func (b *bench) pattern(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	p := patterntest.Plan(b.t, r.PathValue("name"))
	joint, err := b.joint(p, run.Tighten, f)
	if err != nil {
		return err
	}
	return page.Pattern(w, page.PatternView{
		Frame: f, Joint: joint, Prints: b.prints(p.Name),
		PatternLine: page.PatternLine{Name: p.Name, Title: p.Title, Machine: p.Machine, Fasteners: len(p.Joint.Fasteners), Builtin: true, Sound: true},
		Findings:    f.Words.SayAll(p.Figures),
	})
}

// drawn are the joints of all benches, drawn once per direction and language.
var drawn = struct {
	sync.Mutex
	all map[string]page.Joint
}{all: map[string]page.Joint{}}

func (b *bench) joint(p plan.Plan, d run.Direction, f page.Frame) (page.Joint, error) {
	name := p.Name + string(d) + f.Words.Language
	drawn.Lock()
	defer drawn.Unlock()
	if j, is := drawn.all[name]; is && p.Name != "" {
		return j, nil
	}
	j, err := page.JointOf(p, d, f.Words)
	drawn.all[name] = j
	return j, err
}

func (b *bench) runView(f page.Frame, r *http.Request) (page.RunView, error) {
	id := r.PathValue("id")
	k := b.runs[id]
	joint, err := b.joint(k.plan, k.work.Direction, f)
	f.Path = "/runs/" + id
	return page.RunView{
		Frame: f, ID: id, Run: k.state.At(b.clock()), Joint: joint, Entries: k.entries, Number: "P4-0117", Order: "2214", Prints: b.prints(k.plan.Name),
	}, err
}

func (b *bench) run(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	v, err := b.runView(f, r)
	if err != nil {
		return err
	}
	return page.Run(w, v)
}

func (b *bench) live(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	v, err := b.runView(f, r)
	if err != nil {
		return err
	}
	return page.RunLive(w, v)
}

func (b *bench) records(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	open, over := b.lines()
	q := r.URL.Query()
	return page.Records(w, page.RecordsView{Frame: f, Runs: append(over, open...), Asked: page.RecordsAsked{Machine: q.Get("machine"), Joint: q.Get("joint"), Person: q.Get("person")}})
}

// job is a job in which the head is removed and refitted.
func (b *bench) job(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	work := teardown.OfJoint("p4-head", patterntest.Plan(b.t, "p4-head"), nil)
	state := work.Start()
	runs := []teardown.RunFact{{Run: "R1", Of: "p4-head", Direction: run.Loosen, Status: run.Sealed}}
	var open, over []page.RunLine
	open, over = b.lines()
	return page.Job(w, page.JobView{
		Frame: f, ID: "J1", Number: "P4-0117", Order: "2214", By: "RA", Started: b.clock(), Runs: append(open, over...)[:2],
		Job:   state.View(runs, work.JointNeeds("p4-head", []run.Condemned{{ID: "M3", Kind: "main", Trouble: run.Broken}}, nil)),
		Newer: []run.Difference{{What: run.ChangedFile, Before: "3b5d5c37", After: "9f86d081"}, {Joint: "p4-head", What: run.ChangedRevision, Before: "A", After: "B"}},
	})
}

// places is the picture on which a finding of a job is placed.
func (b *bench) places(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	joint, err := b.joint(patterntest.Plan(b.t, r.PathValue("joint")), run.Tighten, f)
	if err != nil {
		return err
	}
	return page.Placing(w, page.PlacingView{Frame: f, Joint: joint})
}

func (b *bench) record(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	v, err := b.runView(f, r)
	if err != nil {
		return err
	}
	return page.Record(w, page.RecordView{RunView: v, Head: "3b5d5c3712955042212316173ccf37be8a3f2a9c"})
}

func (b *bench) share(w http.ResponseWriter, f page.Frame, r *http.Request) error {
	if r.URL.Query().Has("off") {
		return page.Share(w, page.ShareView{Frame: f})
	}
	var qr [][]bool
	for y := range 33 {
		row := make([]bool, 33)
		for x := range row {
			row[x] = (x*7+y*5+x*y)%3 == 0
		}
		qr = append(qr, row)
	}
	return page.Share(w, page.ShareView{
		Frame: f, On: true, Addresses: []string{"https://192.168.4.20:8471/", "https://bench.local:8471/"}, Code: "K7M2QX", Ends: b.clock().Add(5 * time.Minute), QR: qr,
		Certificate: "/drawdown.crt", Fingerprint: "9F:86:D0:81:88:4C:7D:65:9A:2F:EA:A0:C5:5A:D0:15:A3:BF:4F:1B:2B:0B:82:2C:D1:5D:6C:15:B0:F0:0A:08",
		Devices: []page.Device{{ID: "d1", Name: "Tablet, Chrome", Address: "192.168.4.31", Since: b.clock().Add(-2 * time.Hour)}},
	})
}
