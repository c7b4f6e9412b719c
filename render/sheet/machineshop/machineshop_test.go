package machineshop_test

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/machineshop"
	"drawdown/render/sheet/sheettest"
	"drawdown/sequence/measure"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

var sent = time.Date(2026, 11, 30, 15, 20, 0, 0, time.UTC)

// part is a part of a joint with its findings and readings.
func part(t testing.TB, joint, name, to string, findings, read []run.Entry) machineshop.Part {
	p := machineshop.Part{SentOut: teardown.SentOut{Part: name, Joint: joint, To: to}, Plan: patterntest.Plan(t, joint), Findings: findings}
	p.By, p.At = "RA", sent
	for _, e := range read {
		result, _, err := measure.Take(p.Plan.Measures, e.Written())
		if err != nil {
			t.Fatal(err)
		}
		p.Measured = append(p.Measured, teardown.Measured{Entry: e, Result: result})
	}
	return p
}

func entry(act run.Act, at run.Place, more run.Entry) run.Entry {
	more.Act, more.Who, more.Time, more.Place = act, "RA", sent.Add(-time.Hour), &at
	if at == (run.Place{}) {
		more.Place = nil
	}
	return more
}

// engine sends the head to one machine shop, and the camshaft with its tappets to
// another.
func engine(t testing.TB) machineshop.Order {
	head := part(t, "p4-head", "cylinder head", "Milltown Grinding", []run.Entry{
		entry(run.Find, run.Place{At: &[2]float64{-95, 20}}, run.Entry{Found: run.BlownThrough, Note: "between cylinders 1 and 2"}),
		entry(run.Find, run.Place{Label: "cyl 3"}, run.Entry{Found: run.Crack, Note: "from the seat to the edge", Photo: strings.Repeat("ab12", 16)}),
		entry(run.Report, run.Place{Fastener: "M4"}, run.Entry{Trouble: run.HoleThread}),
	}, []run.Entry{
		entry(run.Measure, run.Place{}, run.Entry{Measure: "warp of the head face", Value: "0.12", Unit: "mm"}),
		entry(run.Measure, run.Place{Label: "cyl 2"}, run.Entry{Measure: "valve seat leak", Value: "3", Unit: "percent"}),
		entry(run.Measure, run.Place{}, run.Entry{Measure: "height of the head", Value: "131.4", Unit: "mm"}),
	})
	head.Note, head.Kept = "Skim the face, 0.2 mm at most; test for cracks; thread insert at M4", "valves in tray 3, one place for each; dowels in bag 7"
	cam := part(t, "p4-cam-caps", "camshaft and tappets", "Weir Bearings", nil, nil)
	cam.Note = "Measure the cams"
	return machineshop.Order{ID: "J3", Title: "Strip and rebuild of the P4", Machine: "Fernhollow P4 pump engine", Number: "P4-0117", Order: "A-31", Parts: []machineshop.Part{head, cam}}
}

// On every paper in every language: no fault of the layout, no note, no text
// under 2 mm; requests, findings and what is kept are printed, and each machine
// shop has its own pages.
func TestLayouts(t *testing.T) {
	t.Parallel()
	for _, ask := range sheettest.Requests(0) {
		document, notes := machineshop.Document(engine(t), machineshop.Request{Request: ask})
		sheettest.Check(t, "machine shop", ask, document.Pages)
		if len(notes) > 0 {
			t.Errorf("on %s: %q", ask.Paper.Name, notes)
		}
		said := scenetest.Said(document.Pages...)
		for _, want := range []string{"Milltown", "Weir", "0.12", "131.4", "▲A", "T8"} {
			if !strings.Contains(said, ask.Words.Figure(want)) {
				t.Errorf("on %s in %s the sheet does not say %q", ask.Paper.Name, ask.Words.Language, want)
			}
		}
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.Size*font.CapHeight < 2 {
				t.Errorf("%q is %.2f mm high", text.Content, text.Size*font.CapHeight)
			}
		}
	}
}

// A reading outside its limits is marked, the latest reading counts, and a
// value without a reading has its row. From first principles.
func TestLatestReading(t *testing.T) {
	t.Parallel()
	o := engine(t)
	o.Parts = o.Parts[:1]
	again := o.Parts[0].Measured[0]
	again.Value, again.Time = "0.04", sent
	o.Parts[0].Measured = append(o.Parts[0].Measured, again)
	document, _ := machineshop.Document(o, machineshop.Request{Request: sheettest.English(sheet.Papers[1])})
	said := scenetest.Said(document.Pages...)
	if strings.Contains(said, "0.12") || !strings.Contains(said, "0.04 mm") || !strings.Contains(said, "cyl 4") {
		t.Error(said)
	}
}

// The golden scene is our own output, checked by eye.
func TestGoldenScene(t *testing.T) {
	document, _ := machineshop.Document(engine(t), machineshop.Request{Request: sheettest.English(sheet.Papers[1])})
	scenetest.Golden(t, filepath.Join("testdata", "p4-head.scene"), document)
}
