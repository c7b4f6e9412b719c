package sheet_test

import (
	"testing"

	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

// A run of pages: each page has the heading, the count and, on the last, the
// fields to sign; nothing overlaps on any paper, in portrait or landscape.
func TestRun(t *testing.T) {
	for _, upright := range sheet.Papers {
		for _, paper := range []sheet.Paper{upright, upright.Landscape()} {
			heading := sheet.Heading{Title: "A part with a title that runs over more than a single line of type", Badge: "TIGHTEN", Subtitle: "machine", Identity: "card 1234"}
			foot := sheet.Foot{Lines: []string{"first line"}, Sign: []string{"Done by", "Wrench no.", "Date", "Checked by"}}
			run := sheet.NewRun(paper, words.English(), heading, foot)
			for range 90 {
				run.Room(paper.Line)
				run.Pen.Text(run.Pen.Left(), run.Y+3, "a line")
				run.Y += paper.Line
			}
			pages := run.Pages("sheet")
			sheet.Count(pages)
			if len(pages) < 2 || pages[1].Name != "sheet-2" {
				t.Errorf("%s: %d pages", paper.Name, len(pages))
			}
			lines, signed := 0, 0
			for k, page := range pages {
				for _, fault := range scenetest.CheckLayout(page) {
					t.Errorf("%s %g wide: %s", paper.Name, paper.Width, fault)
				}
				for _, item := range page.Items {
					if text, ok := item.(scene.Text); ok {
						switch text.Content {
						case "a line":
							lines++
						case "Checked by":
							signed += k + 1
						}
					}
				}
			}
			if lines != 90 || signed != len(pages) {
				t.Errorf("%s: %d lines, signed on page %d of %d", paper.Name, lines, signed, len(pages))
			}
		}
	}
}
