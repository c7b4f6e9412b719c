package page_test

import (
	"bytes"
	"io/fs"
	"regexp"
	"strings"
	"testing"
	"time"

	"drawdown/patterns/patterntest"
	"drawdown/render/page"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

func frame(c *words.Catalogue, path string) page.Frame {
	return page.Frame{Words: c, Path: path, Now: time.Date(2026, 3, 14, 10, 42, 0, 0, time.UTC)}
}

// runView is the page of a run of a built-in pattern after some entries.
func runView(t testing.TB, name string, d run.Direction, c *words.Catalogue, entries ...run.Entry) page.RunView {
	t.Helper()
	p := patterntest.Plan(t, name)
	work := run.New(p, d, nil)
	joint, err := page.JointOf(p, d, c)
	if err != nil {
		t.Fatal(err)
	}
	f := frame(c, "/runs/R1")
	state := work.Start()
	for i, e := range entries {
		e.ID, e.Who, e.Time = "e"+string(rune('a'+i)), "RA", f.Now
		if r := state.Take(e); r != nil {
			t.Fatalf("%v: %v", e, r)
		}
		entries[i] = e
	}
	return page.RunView{Frame: f, ID: "R1", Run: state.At(f.Now), Joint: joint, Entries: entries}
}

func TestRunIsWritten(t *testing.T) {
	var b bytes.Buffer
	if err := page.Run(&b, runView(t, "p4-head", run.Tighten, words.English())); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`data-id="M3" data-state="next"`, `data-id="M8" data-state="todo"`, `20</b> <span>N·m`} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %s in %s", want, b.String())
		}
	}
}

func TestAssetsOpen(t *testing.T) {
	var b bytes.Buffer
	if err := page.Run(&b, runView(t, "p4-head", run.Loosen, words.English())); err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`/assets/([^"]+)`).FindAllStringSubmatch(b.String(), -1)
	for _, m := range found {
		if _, err := fs.Stat(page.Assets(), m[1]); err != nil {
			t.Error(err)
		}
	}
	if len(found) < 5 {
		t.Errorf("only %d assets", len(found))
	}
}
