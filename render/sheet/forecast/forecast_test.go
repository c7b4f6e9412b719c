package forecast_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/patterns"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/forecast"
	"drawdown/render/words"
	"drawdown/sequence/interaction"
	"drawdown/sequence/plan"
)

var update = flag.Bool("update", false, "write the golden files anew")

// forecastOf plans a built-in pattern and works its forecast out.
func forecastOf(t testing.TB, name string) (plan.Plan, interaction.Forecast) {
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
	f, err := interaction.ForecastOf(p, interaction.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	return p, f
}

func paper(t testing.TB, name string) sheet.Paper {
	t.Helper()
	p, err := sheet.FindPaper(name)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func texts(page scene.Page) []scene.Text {
	var all []scene.Text
	for _, it := range page.Items {
		if text, ok := it.(scene.Text); ok {
			all = append(all, text)
		}
	}
	return all
}

// No fault on any paper, upright and on its side, and in every language on the
// paper with the least room.
func TestLayout(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p, f := forecastOf(t, name)
		var asks []forecast.Request
		for _, upright := range sheet.Papers {
			asks = append(asks, forecast.Request{Paper: upright, Words: words.English()}, forecast.Request{Paper: upright.Landscape(), Words: words.English()})
		}
		for _, tag := range words.Languages() {
			w, _ := words.Find(tag)
			asks = append(asks, forecast.Request{Paper: paper(t, "a5"), Words: w})
		}
		for _, ask := range asks {
			doc, _ := forecast.Document(p, f, ask)
			for _, page := range doc.Pages {
				for _, fault := range scene.CheckLayout(page) {
					t.Errorf("%s on %s %g wide, %s: %s", name, ask.Paper.Name, ask.Paper.Width, ask.Words.Language, fault)
				}
			}
		}
	}
}

// Each bolt's mark carries the least percent that the forecast gives it, with a
// sign where that is low; and its number stands beside it.
func TestMarksCarryTheForecast(t *testing.T) {
	p, f := forecastOf(t, "p4-head")
	doc, notes := forecast.Document(p, f, forecast.Request{Paper: paper(t, "a4"), Words: words.English()})
	if len(notes) > 0 {
		t.Error(notes)
	}
	shown := map[string]int{}
	for _, text := range texts(doc.Pages[0]) {
		if text.Tag.Role == scene.Number {
			shown[text.Content]++
		}
	}
	low := 0
	for i, b := range f.Last().Percent {
		words := strconv.Itoa(int(b.Low + 0.5))
		if interaction.ClassOf(b.Low) == interaction.Noticeable {
			words = "↓" + words
			low++
		}
		if shown[words] == 0 {
			t.Errorf("bolt %s: no mark says %s", p.Joint.Fasteners[i].ID, words)
		}
		if shown[strconv.Itoa(i+1)] == 0 {
			t.Errorf("number %d is missing", i+1)
		}
	}
	if low == 0 {
		t.Error("no bolt of the head ends low: the check of the sign is idle")
	}
}

// A frame a step; the last shows what the first page shows.
func TestFrames(t *testing.T) {
	p, f := forecastOf(t, "p4-head")
	frames := forecast.Frames(p, f, forecast.Request{Paper: paper(t, "a4"), Words: words.English()})
	// 4 stages over 10 main bolts and one over 4 side bolts.
	if len(frames) != 44 {
		t.Errorf("%d frames, want 44", len(frames))
	}
	for _, page := range frames {
		for _, fault := range scene.CheckLayout(page) {
			t.Error(fault)
		}
	}
	if name := frames[43].Name; name != "step-044" {
		t.Errorf("the last frame is called %s", name)
	}
	first := strings.Builder{}
	for _, text := range texts(frames[0]) {
		first.WriteString(text.Content + "\n")
	}
	if !strings.Contains(first.String(), "Pass 1, 20 N·m main: bolt 1 (M3)") {
		t.Errorf("the first frame says\n%s", first.String())
	}
}

// The golden scene is our own output, looked at by eye.
func TestGoldenScene(t *testing.T) {
	p, f := forecastOf(t, "p4-manifold")
	doc, _ := forecast.Document(p, f, forecast.Request{Paper: paper(t, "a4"), Words: words.English()})
	var got bytes.Buffer
	if err := scene.Dump(&got, doc); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join("testdata", "p4-manifold.scene")
	if *update {
		if err := os.WriteFile(path, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got.String(), "\n")); diff != "" {
		t.Errorf("(-golden +got; go test ./render/sheet/forecast -update writes it anew):\n%s", diff)
	}
}
