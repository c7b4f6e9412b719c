package benchtest

import (
	"path"
	"testing"

	"drawdown/cmd/internal/record/servertest"
	"drawdown/render/page/pagetest"
)

// Two tablets follow one run at two processes that keep one record: what one taps
// the other shows. When the database goes away both say so, a tap is held and not
// shown as saved; when it is back the tap is sent, and the other tablet shows it.
func TestTwoWorkshops(t *testing.T) {
	t.Parallel()
	server := servertest.Start(t)
	store := server.Database(t)
	here, there := serveOn(t, store), serveOn(t, store)

	one, two := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Tablet), pagetest.NewTab(t, pagetest.Browser(t), pagetest.Tablet)
	one.Open(here.address)
	one.Open(base(here.address) + "/patterns/p4-head")
	one.Click(`button[value="loosen"]`)
	one.Until(`document.body.dataset.ready === "yes"`)
	run := pagetest.Evaluate[string](one, `location.pathname`)
	one.SignOn("RA", path.Base(run))
	one.Open(base(here.address) + run)
	two.Open(there.address)
	two.Open(base(there.address) + run)
	for _, tablet := range []*pagetest.Tab{one, two} {
		tablet.Until(`document.body.dataset.ready === "yes"`)
	}
	one.Tap("#bar")
	for _, tablet := range []*pagetest.Tab{one, two} {
		tablet.Until(`document.querySelectorAll('.mark[data-state="done"]').length === 1`)
	}

	server.Kill()
	one.Rest()
	one.Tap("#bar")
	one.Until(`document.body.dataset.held === "1"`)
	for _, tablet := range []*pagetest.Tab{one, two} {
		tablet.Until(`document.body.innerText.includes("the database of the record cannot be reached")`)
	}
	server.Again(t)
	one.Until(`document.body.dataset.held === "0"`)
	for _, tablet := range []*pagetest.Tab{one, two} {
		tablet.Until(`document.querySelectorAll('.mark[data-state="done"]').length === 2 && !document.body.innerText.includes("cannot be reached")`)
		tablet.Quiet("Failed to load resource", "ERR_")
	}
}
