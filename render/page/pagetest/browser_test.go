package pagetest

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"drawdown/geometry/testkit"
)

// device is a screen with what points at it.
type device struct {
	name          string
	width, height int64
	touch         bool
}

var (
	phone   = device{"phone", 360, 740, true}
	tablet  = device{"tablet", 1024, 768, true}
	desktop = device{"desktop", 1440, 900, false}
	devices = []device{phone, tablet, desktop}
)

// tab is a page in the browser, with what went wrong in it.
type tab struct {
	t        *testing.T
	ctx      context.Context
	mu       sync.Mutex
	problems []string
	requests []string
}

// shared is the one browser of all tests: each bench has an address of its own, so
// that nothing that a page keeps is met by another.
var shared struct {
	sync.Mutex
	ctx  context.Context
	stop []context.CancelFunc
}

func TestMain(m *testing.M) {
	code := m.Run()
	for _, stop := range shared.stop {
		stop()
	}
	os.Exit(code)
}

// browser gives the browser; where there is none the test is skipped.
func browser(t *testing.T) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes long to start")
	}
	path := testkit.Program(t, "chromium", "chromium-browser", "google-chrome", "chrome", "headless-shell")
	shared.Lock()
	defer shared.Unlock()
	if shared.ctx != nil {
		return shared.ctx
	}
	folder, err := os.MkdirTemp("", "pagetest")
	if err != nil {
		t.Fatal(err)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.UserDataDir(folder),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	ctx, end := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, stop := chromedp.NewContext(ctx)
	if err := chromedp.Do(ctx); err != nil { // starts it
		t.Fatal(err)
	}
	shared.ctx, shared.stop = ctx, []context.CancelFunc{stop, end, func() { os.RemoveAll(folder) }}
	return ctx
}

// newTab opens a tab on a device.
func newTab(t *testing.T, ctx context.Context, d device) *tab {
	t.Helper()
	ctx, cancel := chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	one := &tab{t: t, ctx: ctx}
	err := chromedp.Listen(ctx, func(event any) {
		one.mu.Lock()
		defer one.mu.Unlock()
		switch e := event.(type) {
		case *runtime.EventExceptionThrown:
			one.problems = append(one.problems, fmt.Sprint(e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
		case *log.EventEntryAdded:
			one.problems = append(one.problems, e.Entry.Text+" "+e.Entry.URL)
		case *network.EventRequestWillBeSent:
			one.requests = append(one.requests, e.Request.URL)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	call(one, network.Enable, network.EnableParams{})
	call(one, log.Enable, cdp.Empty{})
	call(one, runtime.Enable, cdp.Empty{})
	var options []chromedp.EmulateViewportOption
	if d.touch {
		options = append(options, chromedp.EmulateTouch, chromedp.EmulateMobile)
	}
	one.do(chromedp.EmulateViewport(d.width, d.height, options...))
	return one
}

func call[P, R any](one *tab, command cdp.Command[P, R], params P) {
	one.t.Helper()
	one.do(func(ctx context.Context, target *chromedp.Target) (chromedp.Void, error) {
		_, err := cdp.Call(ctx, target, command, params)
		return chromedp.Void{}, err
	})
}

func (one *tab) do(actions ...chromedp.Action[chromedp.Void]) {
	one.t.Helper()
	if err := chromedp.Do(one.ctx, actions...); err != nil {
		one.t.Fatal(err)
	}
}

func (one *tab) open(address string) {
	one.t.Helper()
	one.do(chromedp.Navigate(address))
}

// openRun opens the page of a run and waits until its script is ready.
func (one *tab) openRun(b *bench, id string) {
	one.t.Helper()
	one.open(b.URL + "/runs/" + id)
	one.until(`document.body.dataset.ready === "yes"`)
}

// until waits for what an expression says.
func (one *tab) until(expression string) {
	one.t.Helper()
	for range 200 {
		if evaluate[bool](one, expression) {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	one.t.Fatalf("never: %s\nproblems: %q\n%s", expression, one.problems, one.state())
}

func evaluate[T any](one *tab, expression string) T {
	one.t.Helper()
	value, err := chromedp.Run(one.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		one.t.Fatalf("%s: %v", expression, err)
	}
	return value
}

func (one *tab) click(selector string) {
	one.t.Helper()
	one.do(chromedp.Click(chromedp.CSS(selector)))
}

// tap touches the middle of what a selector finds.
func (one *tab) tap(selector string) {
	one.t.Helper()
	at := evaluate[[]float64](one, fmt.Sprintf(`(() => { const b = document.querySelector(%q).getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; })()`, selector))
	call(one, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: "touchStart", TouchPoints: []*input.TouchPoint{{X: at[0], Y: at[1]}}})
	call(one, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: "touchEnd", TouchPoints: []*input.TouchPoint{}})
}

func (one *tab) text(selector string) string {
	one.t.Helper()
	return evaluate[string](one, fmt.Sprintf(`(document.querySelector(%q)?.textContent || "").trim().replace(/\s+/g, " ")`, selector))
}

// scheme has the browser say how light the system is.
func (one *tab) scheme(value string) {
	one.t.Helper()
	call(one, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: value}}})
}

// language has the browser ask for a language.
func (one *tab) language(tag string) {
	one.t.Helper()
	call(one, network.SetExtraHTTPHeaders, network.SetExtraHTTPHeadersParams{Headers: network.Headers{"Accept-Language": []byte(`"` + tag + `"`)}})
}

// quiet fails where something went wrong in the page.
func (one *tab) quiet(but ...string) {
	one.t.Helper()
	one.mu.Lock()
	defer one.mu.Unlock()
	for _, problem := range one.problems {
		known := false
		for _, part := range but {
			known = known || strings.Contains(problem, part)
		}
		if !known {
			one.t.Errorf("the page says: %s", problem)
		}
	}
	one.problems = nil
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// pinch moves two fingers apart about a place.
func (one *tab) pinch(x, y, from, to float64) {
	one.t.Helper()
	fingers := func(apart float64) []*input.TouchPoint {
		return []*input.TouchPoint{{X: x - apart, Y: y, ID: pointer(1)}, {X: x + apart, Y: y, ID: pointer(2)}}
	}
	call(one, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: "touchStart", TouchPoints: fingers(from)})
	for step := range 5 {
		call(one, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: "touchMove", TouchPoints: fingers(from + (to-from)*float64(step+1)/5)})
	}
	call(one, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: "touchEnd", TouchPoints: []*input.TouchPoint{}})
}

func pointer(id float64) *float64 { return &id }

// state describes a page for whom a test fails.
func (one *tab) state() string {
	one.t.Helper()
	return evaluate[string](one, `JSON.stringify([[...document.querySelectorAll("dialog[open]")].map((d) => d.id), {...document.getElementById("bar")?.dataset}, document.getElementById("bar")?.disabled, document.activeElement.id, {...document.body.dataset}, document.getElementById("panel")?.textContent])`)
}
