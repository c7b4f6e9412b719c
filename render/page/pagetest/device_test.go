package pagetest

import (
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"

	"drawdown/sequence/run"
)

// The screen is kept awake when a run is opened, and again when the page
// becomes visible: a browser releases it when the page is hidden.
func TestScreenStaysAwake(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	one.spoiled = true
	call(one, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
		window.asked = [];
		Object.defineProperty(navigator, "wakeLock", { value: { request: async (what) => { window.asked.push(what); } } });`})
	openRun(one, b, id)
	if got := Evaluate[[]string](one, `asked`); strings.Join(got, ",") != "screen" {
		t.Errorf("asked for %q", got)
	}
	Evaluate[any](one, `document.dispatchEvent(new Event("visibilitychange")); null`)
	if got := Evaluate[[]string](one, `asked`); strings.Join(got, ",") != "screen,screen" {
		t.Errorf("in view again it asked for %q", got)
	}
	one.Quiet()
}

// A photo of a finding is sent first, and the entry has its name. If the server
// rejects it, the form stays open and says so.
func TestPhotoOfAFinding(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	one.Tap(`.runmain > [data-open="more"]`)
	one.Tap(`#more [data-open="finding"]`)
	one.Until(`document.getElementById("finding").open`)
	one.Tap("#finding input[value=crack]")
	one.Type("#finding textarea", "between two holes")
	Evaluate[any](one, `(() => {
		const chosen = new DataTransfer();
		chosen.items.add(new File(["\xff\xd8 a picture"], "crack.jpg", { type: "image/jpeg" }));
		document.querySelector("#finding input[type=file]").files = chosen.files;
	})(); null`)
	b.photos.Store(http.StatusUnprocessableEntity)
	one.Tap("#finding button[type=submit]")
	one.Until(`document.querySelector("#finding .problem").textContent !== ""`)
	if len(b.taken(id)) != 0 {
		t.Error("taken without its photo")
	}
	b.photos.Store(http.StatusCreated)
	one.Tap("#finding button[type=submit]")
	version(one, "1")
	b.mu.Lock()
	defer b.mu.Unlock()
	if e := b.runs[id].entries[0]; e.Act != run.Find || e.Photo != photoName || e.Found != run.Crack || e.Note != "between two holes" {
		t.Errorf("taken: %+v", e)
	}
	one.Quiet("Failed to load resource")
}
