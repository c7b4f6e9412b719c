// Package pagetest has the browser for the tests of pages: devices, taps, keys,
// and the errors of a page. Only tests import it.
package pagetest

import (
	"context"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
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

// Device is a screen with its pointing device.
type Device struct {
	Name          string
	Width, Height int64 // CSS px
	Touch         bool
}

// The devices on which pages are tested.
var (
	Phone   = Device{"phone", 360, 740, true}
	Tablet  = Device{"tablet", 1024, 768, true}
	Upright = Device{"upright", 820, 1180, true} // a tablet held upright
	Desktop = Device{"desktop", 1440, 900, false}
	Devices = []Device{Phone, Tablet, Desktop, Upright}
)

// Tab is a page in the browser, with its errors.
type Tab struct {
	T        *testing.T
	Ctx      context.Context
	spoiled  bool // what was set here would last: no other test gets it
	mu       sync.Mutex
	problems []string
	requests []string
}

// shared is the one browser of all tests. Each bench has its own address, so
// that pages do not share stored data.
var shared struct {
	sync.Mutex
	ctx  context.Context
	stop []context.CancelFunc
}

// atOnce is how many pages are tried at the same time: most of the time each waits
// for its own pauses.
const atOnce = "6"

// Main runs the tests of a package and ends the browser after them.
func Main(m *testing.M) int {
	if err := flag.Set("test.parallel", atOnce); err != nil { // -parallel counts before it
		panic(err)
	}
	code := m.Run()
	for _, stop := range shared.stop {
		stop()
	}
	return code
}

// Browser returns the browser, or skips the test if there is none.
func Browser(t *testing.T) context.Context {
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
		chromedp.WSURLReadTimeout(time.Hour), // its first start reads much from the disk
		// Software rendering, and no process or page kept for later.
		chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-software-rasterizer", true),
		chromedp.Flag("disable-features", "SpareRendererForSitePerProcess,BackForwardCache,ProcessPerSiteUpToMainFrameThreshold,Translate"),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	ctx, end := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, stop := chromedp.NewContext(ctx)
	if err := chromedp.Do(ctx); err != nil { // starts it
		t.Fatal(err)
	}
	shared.ctx, shared.stop = ctx, []context.CancelFunc{stop, end, func() { os.RemoveAll(folder) }}
	return ctx
}

// idle are tabs that tests have left empty: to start one takes most of a second of the
// processor's time.
var idle struct {
	sync.Mutex
	tabs []*window
}

// window is a tab for one test after another.
type window struct {
	ctx    context.Context
	cancel context.CancelFunc
	of     atomic.Pointer[Tab] // who has it now
}

// NewTab opens a tab on a device, or one that another test has left.
func NewTab(t *testing.T, ctx context.Context, d Device) *Tab {
	t.Helper()
	idle.Lock()
	var w *window
	if last := len(idle.tabs) - 1; last >= 0 {
		w, idle.tabs = idle.tabs[last], idle.tabs[:last]
	}
	idle.Unlock()
	one := &Tab{T: t}
	if w == nil {
		w = &window{}
		w.ctx, w.cancel = chromedp.NewContext(ctx)
	}
	one.Ctx = w.ctx
	if isNew := w.of.Swap(one) == nil; isNew {
		one.watch(w)
	}
	t.Cleanup(func() { one.leave(w) })
	var options []chromedp.EmulateViewportOption
	if d.Touch {
		options = append(options, chromedp.EmulateTouch, chromedp.EmulateMobile)
	}
	one.Do(chromedp.EmulateViewport(d.Width, d.Height, options...))
	return one
}

// leave leaves a tab empty for another test, or closes it.
func (one *Tab) leave(w *window) {
	if one.spoiled || one.T.Failed() || chromedp.Do(w.ctx, chromedp.Navigate("about:blank")) != nil {
		w.cancel()
		return
	}
	idle.Lock()
	defer idle.Unlock()
	idle.tabs = append(idle.tabs, w)
}

// watch has the tab tell what goes wrong in it, to whoever has it.
func (one *Tab) watch(w *window) {
	one.T.Helper()
	err := chromedp.Listen(w.ctx, func(event any) {
		one := w.of.Load()
		one.mu.Lock()
		defer one.mu.Unlock()
		switch e := event.(type) {
		case *runtime.EventExceptionThrown:
			one.problems = append(one.problems, fmt.Sprint(e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
		case *runtime.EventConsoleAPICalled:
			one.problems = append(one.problems, fmt.Sprintf("console: %s", e.Type))
		case *log.EventEntryAdded:
			one.problems = append(one.problems, e.Entry.Text+" "+e.Entry.URL)
		case *network.EventRequestWillBeSent:
			one.requests = append(one.requests, e.Request.URL)
		}
	})
	if err != nil {
		one.T.Fatal(err)
	}
	call(one, network.Enable, network.EnableParams{})
	call(one, log.Enable, cdp.Empty{})
	call(one, runtime.Enable, cdp.Empty{})
}

func call[P, R any](one *Tab, command cdp.Command[P, R], params P) {
	one.T.Helper()
	one.Do(func(ctx context.Context, target *chromedp.Target) (chromedp.Void, error) {
		_, err := cdp.Call(ctx, target, command, params)
		return chromedp.Void{}, err
	})
}

// Do runs actions.
func (one *Tab) Do(actions ...chromedp.Action[chromedp.Void]) {
	one.T.Helper()
	if err := chromedp.Do(one.Ctx, actions...); err != nil {
		one.T.Fatal(err)
	}
}

// Open goes to an address.
func (one *Tab) Open(address string) {
	one.T.Helper()
	one.Do(chromedp.Navigate(address))
}

// Until waits until an expression is true on a fully loaded page, as long as
// the test may take: a busy machine must not fail a test.
func (one *Tab) Until(expression string) {
	one.T.Helper()
	for pause := 5 * time.Millisecond; one.mayWait(); pause = min(2*pause, 80*time.Millisecond) {
		// Between two pages there is no document.
		if holds, err := chromedp.Run(one.Ctx, chromedp.Evaluate[bool](`document.readyState === "complete" && (`+expression+`)`)); err == nil && holds {
			return
		}
		time.Sleep(pause)
	}
	one.T.Fatalf("never: %s\nproblems: %q\n%s", expression, one.problems, one.state())
}

// mayWait reports whether there is time left, with a reserve for reporting the
// failure.
func (one *Tab) mayWait() bool {
	ends, limited := one.T.Deadline()
	return !limited || time.Until(ends) > 20*time.Second
}

// Evaluate returns the value of an expression in the page.
func Evaluate[T any](one *Tab, expression string) T {
	one.T.Helper()
	value, err := chromedp.Run(one.Ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		one.T.Fatalf("%s: %v", expression, err)
	}
	return value
}

// middle is the middle of what a selector finds, once visible.
func (one *Tab) middle(selector string) (x, y float64) {
	one.T.Helper()
	one.Until(fmt.Sprintf(`document.querySelector(%q)?.getBoundingClientRect().width > 0`, selector))
	at := Evaluate[[]float64](one, fmt.Sprintf(`(() => {
		const e = document.querySelector(%q);
		e.scrollIntoView({ block: "nearest" });
		const b = e.getBoundingClientRect();
		return [b.x + b.width / 2, b.y + b.height / 2]; })()`, selector))
	return at[0], at[1]
}

// Click clicks the middle of what a selector finds.
func (one *Tab) Click(selector string) {
	one.T.Helper()
	one.Do(chromedp.MouseClickXY(one.middle(selector)))
}

// Type types into what a selector finds.
func (one *Tab) Type(selector, text string) {
	one.T.Helper()
	one.Until(fmt.Sprintf(`document.querySelector(%q) !== null`, selector))
	Evaluate[any](one, fmt.Sprintf(`document.querySelector(%q).focus(); null`, selector))
	one.Do(chromedp.KeyEvent(text))
}

// Tap touches the middle of what a selector finds.
func (one *Tab) Tap(selector string) {
	one.T.Helper()
	x, y := one.middle(selector)
	call(one, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: "touchStart", TouchPoints: []*input.TouchPoint{{X: x, Y: y}}})
	call(one, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: "touchEnd", TouchPoints: []*input.TouchPoint{}})
}

// Text returns the text of what a selector finds.
func (one *Tab) Text(selector string) string {
	one.T.Helper()
	return Evaluate[string](one, fmt.Sprintf(`(document.querySelector(%q)?.textContent || "").trim().replace(/\s+/g, " ")`, selector))
}

// Scheme sets the colour scheme of the system: light, dark, or forced, where
// the system sets all colours, light on dark.
func (one *Tab) Scheme(value string) {
	one.T.Helper()
	one.spoiled = true
	forced := "none"
	if value == "forced" {
		value, forced = "dark", "active"
	}
	call(one, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: "prefers-color-scheme", Value: value}, {Name: "forced-colors", Value: forced},
	}})
}

// Motion sets the user's preference for motion.
func (one *Tab) Motion(value string) {
	one.T.Helper()
	one.spoiled = true
	call(one, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: value}}})
}

// Language sets the language of the browser.
func (one *Tab) Language(tag string) {
	one.T.Helper()
	one.spoiled = true
	call(one, emulation.SetUserAgentOverride, emulation.SetUserAgentOverrideParams{
		UserAgent: Evaluate[string](one, `navigator.userAgent`), AcceptLanguage: tag,
	})
}

// Problems returns the errors in the page so far.
func (one *Tab) Problems() []string {
	one.mu.Lock()
	defer one.mu.Unlock()
	return slices.Clone(one.problems)
}

// Requests returns the addresses that the page has requested.
func (one *Tab) Requests() []string {
	one.mu.Lock()
	defer one.mu.Unlock()
	return slices.Clone(one.requests)
}

// Quiet fails the test if there were errors in the page.
func (one *Tab) Quiet(but ...string) {
	one.T.Helper()
	one.mu.Lock()
	defer one.mu.Unlock()
	for _, problem := range one.problems {
		known := false
		for _, part := range but {
			known = known || strings.Contains(problem, part)
		}
		if !known {
			one.T.Errorf("the page says: %s", problem)
		}
	}
	one.problems = nil
}

// Pinch moves two fingers apart around a point.
func (one *Tab) Pinch(x, y, from, to float64) {
	one.T.Helper()
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

// state describes a page for a failing test.
func (one *Tab) state() string {
	one.T.Helper()
	return Evaluate[string](one, `JSON.stringify([[...document.querySelectorAll("dialog[open]")].map((d) => d.id), {...document.getElementById("bar")?.dataset}, document.getElementById("bar")?.disabled, document.activeElement.id, {...document.body.dataset}, document.getElementById("panel")?.textContent])`)
}

// SignOn sets the initials on the device, of a person who gave no wrench for a run.
func (one *Tab) SignOn(who, run string) {
	one.T.Helper()
	Evaluate[any](one, `localStorage.setItem("drawdown-who", "`+who+`"); localStorage.setItem("drawdown-wrench-asked", "`+who+` `+run+`"); null`)
}

// Rest waits until the bar accepts a tap again.
func (one *Tab) Rest() {
	one.T.Helper()
	one.Until(`!("resting" in document.getElementById("bar").dataset)`)
}

// Key presses a key where the focus is.
func (one *Tab) Key(keys string) {
	one.T.Helper()
	one.Do(chromedp.KeyEvent(keys))
}

// Mouse sends an event of the mouse at a point, with its left button.
func (one *Tab) Mouse(kind input.DispatchMouseEventType, x, y float64) {
	one.T.Helper()
	call(one, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Button: "left", Buttons: 1, ClickCount: 1})
}
